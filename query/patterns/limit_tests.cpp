#include "query/patterns/limit_tests.hpp"

#include <algorithm>
#include <optional>

#include "indexer/case_keys.hpp"
#include "indexer/contradictions.hpp"

namespace shoplore {
namespace {

constexpr std::string_view kRepair = "earlier_repair:", kCheck = "check:";

// Cases of one scope by item and cause.
class ScopeCounts {
 public:
  ScopeCounts(const CaseRows& rows, const ScopeRows& scope)
      : causes_(rows.row_cause.number_count()), counts_(rows.items.size() * causes_) {
    for (const std::uint32_t row : scope.rows) {
      const std::uint32_t cause = rows.row_cause.row(row).front();
      for (const std::uint32_t item : rows.row_items.row(row)) ++counts_[item * causes_ + cause];
    }
  }
  [[nodiscard]] std::uint32_t of(std::size_t item, CauseNumber cause) const {
    return counts_[item * causes_ + cause];
  }

 private:
  std::size_t causes_;
  std::vector<std::uint32_t> counts_;
};

struct Limited {
  PatternKind kind;
  double limit;
};

// Counts the test, and keeps it when the share is above the limit.
void test(const Limited& limited, std::uint32_t scope, std::uint32_t item, std::uint32_t outcome,
          const DiagnosticTable& table, const ExactTests& exact, PatternTests& out) {
  ++out.tested;
  const std::uint32_t wrong = table.true_positive, all = table.cases();
  if (wrong < kFewestCases || wrong <= limited.limit * all) return;
  out.met.push_back({limited.kind,
                     scope,
                     outcome,
                     {item, kNoItem, kNoItem},
                     table,
                     exact.binomial_more(wrong, all, limited.limit)});
}

// Position of the item; nothing when it is in too few cases to be there.
std::optional<std::uint32_t> find(const CaseRows& rows, const EvidenceItem& item) {
  const auto at = std::lower_bound(rows.items.begin(), rows.items.end(), item);
  if (at == rows.items.end() || *at != item) return std::nullopt;
  return static_cast<std::uint32_t>(at - rows.items.begin());
}

// A check by its verdicts, and the causes on parts it tells about.
struct TellingCheck {
  std::uint32_t pass = 0;
  std::optional<std::uint32_t> fail;
  std::vector<CauseNumber> causes;
};

std::vector<TellingCheck> telling_checks(const CaseRows& rows, const CauseTable& causes,
                                         const Vocabulary& vocabulary) {
  std::vector<TellingCheck> checks;
  for (std::uint32_t item = 0; item < rows.items.size(); ++item) {
    const std::string& attribute = rows.items[item].attribute;
    if (!attribute.starts_with(kCheck) || rows.items[item].value != "pass") continue;
    TellingCheck check{item, find(rows, {attribute, "fail"}), {}};
    const auto parts = components_told_about(id_of_attribute(attribute), vocabulary);
    for (CauseNumber cause = 0; cause < causes.size(); ++cause) {
      const std::string part = cause_parts(causes.key(cause)).component;
      if (std::find(parts.begin(), parts.end(), part) != parts.end()) check.causes.push_back(cause);
    }
    checks.push_back(std::move(check));
  }
  return checks;
}

}  // namespace

std::string repaired_part(std::string_view attribute) {
  return fix_parts(id_of_attribute(attribute)).component;
}

PatternTests tests_of_repairs(const CaseRows& rows, const CauseTable& causes,
                              const ExactTests& exact) {
  PatternTests out;
  for (std::uint32_t number = 0; number < rows.scopes.size(); ++number) {
    const ScopeCounts counts(rows, rows.scopes[number]);
    for (std::uint32_t item = 0; item < rows.items.size(); ++item) {
      const std::string& attribute = rows.items[item].attribute;
      if (!attribute.starts_with(kRepair)) continue;
      DiagnosticTable table;
      for (CauseNumber cause = 0; cause < causes.size(); ++cause) {
        const bool on_it = cause_parts(causes.key(cause)).component == repaired_part(attribute);
        (on_it ? table.false_positive : table.true_positive) += counts.of(item, cause);
      }
      if (table.cases() < fewest_in(rows.scopes[number].rows.size())) continue;
      test({PatternKind::kInVain, kInVainLimit}, number, item, 0, table, exact, out);
    }
  }
  return out;
}

PatternTests tests_of_passes(const CaseRows& rows, const CauseTable& causes,
                             const Vocabulary& vocabulary, const ExactTests& exact) {
  PatternTests out;
  const auto checks = telling_checks(rows, causes, vocabulary);
  for (std::uint32_t number = 0; number < rows.scopes.size(); ++number) {
    const ScopeCounts counts(rows, rows.scopes[number]);
    for (const TellingCheck& check : checks) {
      for (const CauseNumber cause : check.causes) {
        const DiagnosticTable table{counts.of(check.pass, cause),
                                    check.fail ? counts.of(*check.fail, cause) : 0, 0, 0};
        if (table.cases() < fewest_in(rows.scopes[number].rows.size())) continue;
        test({PatternKind::kPassed, kPassedLimit}, number, check.pass, cause, table, exact, out);
      }
    }
  }
  return out;
}

}  // namespace shoplore
