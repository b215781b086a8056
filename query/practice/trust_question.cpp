#include "query/practice/trust_question.hpp"

#include <algorithm>

#include "query/checks/check_trust.hpp"

namespace shoplore {

Result<std::vector<TrustQuestion>> trust_questions(const CaseCounter& counter,
                                                   const Vocabulary& vocabulary) {
  const auto checks = trust_in_checks(counter, vocabulary);
  if (!checks) return fail(checks.error());
  std::vector<TrustQuestion> questions;
  for (const CheckTrust& trust : *checks) {
    for (const auto& [verdict, became] :
         {std::pair("pass", &trust.pass), std::pair("fail", &trust.fail)}) {
      if (became->misled_us.out_of < kFewestVerdicts) continue;
      questions.push_back({trust.check + "=" + verdict, became->misled_us});
    }
  }
  std::sort(questions.begin(), questions.end(),
            [](const auto& a, const auto& b) { return a.subject < b.subject; });
  return questions;
}

double points_of_trust(double percent, const Share& misled) {
  const double low = 100 * misled.interval.low, high = 100 * misled.interval.high;
  const double outside = std::max({0.0, low - percent, percent - high});
  return std::max(0.0, 100 - kPointsPerPercent * outside);
}

}  // namespace shoplore
