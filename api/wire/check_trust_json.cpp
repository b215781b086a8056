#include "api/wire/check_trust_json.hpp"

#include "api/wire/ratio_form.hpp"
#include "api/wire/share_form.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

Json verdict_form(const VerdictTrust& verdict) {
  return {{"given", verdict.given},     {"borne_out", verdict.borne_out},
          {"right", verdict.right},     {"misled", verdict.misled},
          {"unknown", verdict.unknown}, {"misled_us", share_form(verdict.misled_us)}};
}

Json accuracy_form(const CheckTrust& trust) {
  if (!trust.tells_about_components) return nullptr;
  const DiagnosticTable& table = trust.table;
  const DiagnosticAccuracy accuracy = trust.accuracy();
  return {{"true_positive", table.true_positive},
          {"false_positive", table.false_positive},
          {"false_negative", table.false_negative},
          {"true_negative", table.true_negative},
          {"sensitivity", share_form(accuracy.sensitivity)},
          {"specificity", share_form(accuracy.specificity)},
          {"positive_predictive_value", share_form(accuracy.positive_value)},
          {"negative_predictive_value", share_form(accuracy.negative_value)},
          {"positive_likelihood_ratio", ratio_form(accuracy.positive_ratio)},
          {"negative_likelihood_ratio", ratio_form(accuracy.negative_ratio)},
          {"diagnostic_odds_ratio", ratio_form(accuracy.odds_ratio)}};
}

Json causes_form(const std::vector<CauseTrust>& causes) {
  Json list = Json::array();
  for (const CauseTrust& each : causes) {
    const CauseParts parts = cause_parts(each.cause);
    list.push_back({{"component", parts.component},
                    {"failure", parts.failure},
                    {"told_about", each.told_about},
                    {"pass", each.pass},
                    {"fail", each.fail},
                    {"misled", each.misled},
                    {"against", share_form(each.against)}});
  }
  return list;
}

Json conditions_form(const std::string& check, const std::vector<ConditionTrust>& conditions) {
  Json list = Json::array();
  for (const ConditionTrust& each : conditions) {
    if (each.check != check) continue;
    list.push_back({{"condition", each.condition},
                    {"pass", verdict_form(each.pass)},
                    {"fail", verdict_form(each.fail)},
                    {"unclear", each.unclear}});
  }
  return list;
}

}  // namespace

std::string check_trust_json(const std::vector<CheckTrust>& checks,
                             const std::vector<ConditionTrust>& conditions) {
  Json list = Json::array();
  for (const CheckTrust& trust : checks) {
    list.push_back({{"check", trust.check},
                    {"done", trust.done},
                    {"unclear", trust.unclear},
                    {"mixed", trust.mixed},
                    {"pass", verdict_form(trust.pass)},
                    {"fail", verdict_form(trust.fail)},
                    {"tells_about_components", trust.tells_about_components},
                    {"fail_against_cause", accuracy_form(trust)},
                    {"by_cause", causes_form(trust.by_cause)},
                    {"by_condition", conditions_form(trust.check, conditions)}});
  }
  return Json{{"checks", list}}.dump();
}

}  // namespace shoplore
