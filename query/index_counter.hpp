// Counting through the index alone: slower than the ledger, but the same unchanged over several
// or remote indexes. The ledger's oracle, and it the ledger's.
//
// Boolean query plus value counts over all matches. Lifetime: refers to the database and the
// cause table. Threads: one at a time. Xapian's exceptions become kDamagedIndex, or kBusy when
// the index moved on underneath.
#pragma once

#include "query/case_counter.hpp"

namespace Xapian {
class Database;
}

namespace shoplore {

class IndexCounter final : public CaseCounter {
 public:
  // Causes are numbered by `causes`; one it lacks is an assertion: pass the snapshot's own.
  IndexCounter(const Xapian::Database& index, const CauseTable& causes);

  [[nodiscard]] Result<Tally> tally(const CountQuestion& question) const override;
  [[nodiscard]] Result<std::vector<std::uint32_t>> by_cause(
      const CountQuestion& question) const override;
  [[nodiscard]] Result<std::vector<CaseCause>> cases(const CountQuestion& question) const override;
  [[nodiscard]] Result<std::vector<EvidenceItem>> items_beginning(
      std::string_view attribute) const override;
  [[nodiscard]] Result<std::uint32_t> value_count(std::string_view attribute) const override;
  [[nodiscard]] const CauseTable& causes() const override;

 private:
  const Xapian::Database& index_;
  const CauseTable& causes_;
};

}  // namespace shoplore
