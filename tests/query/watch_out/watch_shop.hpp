// A shop of plain cases and what one kind of warning says of a question to it.
#pragma once

#include "query/fix_counts.hpp"
#include "query/watch_out/watch_question.hpp"
#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {

inline const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

class WatchShop {
 public:
  explicit WatchShop(std::vector<PlainCase> cases, WorkFigures figures = {})
      : counter_(std::move(cases)),
        basis_(watch_basis(counter_, words()).value()),
        figures_(std::move(figures)) {}

  using Kind = Result<std::vector<Warning>> (*)(const WatchQuestion&);

  // Asked with these items, the causes likely with .6 each.
  std::vector<Warning> warned(Kind kind, const std::vector<EvidenceItem>& items,
                              const std::vector<std::string>& causes,
                              const std::vector<std::string>& known = {}, double probability = 0.6,
                              const Filter& filter = {}) const {
    std::vector<LikelyCause> rows;
    for (const std::string& cause : causes) rows.push_back(row(cause, probability));
    return kind({items, known, rows, filter, counter_, words(), basis_, figures_}).value();
  }

  // A row as an answer shows it, with its fixes counted from the shop.
  LikelyCause row(const std::string& key, double probability = 0.6) const {
    LikelyCause cause;
    cause.component = key.substr(0, key.find(':'));
    cause.failure = key.substr(key.find(':') + 1);
    cause.probability = probability;
    const auto all = counter_.tally({});
    cause.fixes = single_fixes(all->profiles, key);
    cause.fixes_together = fixes_together(all->profiles, key);
    return cause;
  }

  const PlainCounter& counter() const { return counter_; }
  const WatchBasis& basis() const { return basis_; }
  const WorkFigures& figures() const { return figures_; }

 private:
  PlainCounter counter_;
  WatchBasis basis_;
  WorkFigures figures_;
};

inline std::vector<std::uint32_t> ids(const Warning& warning) {
  std::vector<std::uint32_t> out;
  for (const CaseId id : warning.cases) out.push_back(id.value);
  return out;
}

}  // namespace shoplore::testing
