// How far a check can be trusted: what became of its verdicts, and how well "fail" tells a cause.
//
// Two views of the same closed cases, both by counts alone:
// - against what was said later. A verdict that agrees with the main cause was borne out: nobody is
//   asked. One that the cause contradicts (contradictions.hpp) is asked about; `later` says right
//   or misled, whatever the cause. Contradicted and nothing said is unknown, never right. An index
//   knows main causes only: a fail explained by a contributing cause and not spoken of is unknown
//   here.
// - against the cause. Condition: the main cause is on a component the check tells about; positive:
//   fail. Only cases in which the check was done can tell, and the check may itself have proved the
//   cause, so sensitivity and specificity flatter (verification bias; Begg & Greenes, Biometrics
//   39, 1983). Presumed causes count too: filter by proof to leave them out.
// Of a check that tells about no component ("look round") only what was said later is known.
// A case counts once. One in which the verdicts differ is `mixed`, and an unclear verdict is
// neither; both stay out of the rest. A verdict of which both was said misled.
// Conditions of a check are not indexed: trust_by_condition.hpp.
// Cost: up to ten counts a check, each as long as a list of its cases. Threads, errors: the
// counter's.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"
#include "query/checks/diagnostic_table.hpp"

namespace shoplore {

// Checks done in fewer cases than this say too little to be shown in a list.
inline constexpr std::uint32_t kEnoughToTrust = 5;

// What became of one verdict. given = borne_out + right + misled + unknown.
struct VerdictTrust {
  std::uint32_t given = 0;
  std::uint32_t borne_out = 0;  // the cause agrees, nothing was said
  std::uint32_t right = 0;      // said to have been right
  std::uint32_t misled = 0;     // said to have misled us
  std::uint32_t unknown = 0;    // nothing said, and the cause does not bear it out
  Share misled_us;              // misled of those that are known
};

// Its clear verdicts where one cause was the main one.
struct CauseTrust {
  std::string cause;        // cause key
  bool told_about = false;  // on a component the check tells about: fail is the right verdict
  std::uint32_t pass = 0, fail = 0, misled = 0;
  Share against;  // verdicts against the cause, of pass + fail; of no use where it tells of nothing
};

struct CheckTrust {
  std::string check;       // canonical id
  std::uint32_t done = 0;  // cases with any verdict: pass.given + fail.given + unclear + mixed
  VerdictTrust pass, fail;
  std::uint32_t unclear = 0, mixed = 0;
  bool tells_about_components = false;
  DiagnosticTable table;             // all 0 where it tells about none
  std::vector<CauseTrust> by_cause;  // most clear verdicts first, then by key
  [[nodiscard]] DiagnosticAccuracy accuracy() const { return accuracy_of(table); }
};

// One check by its id or alias; all 0 when it was never done.
[[nodiscard]] Result<CheckTrust> trust_of(const CaseCounter& counter, std::string_view check,
                                          const Vocabulary& vocabulary, const Filter& filter = {});

// Every check that was ever done, most often done first, then by id.
[[nodiscard]] Result<std::vector<CheckTrust>> trust_in_checks(const CaseCounter& counter,
                                                              const Vocabulary& vocabulary,
                                                              const Filter& filter = {});

}  // namespace shoplore
