#include "query/repair_plan/plan_cases.hpp"

#include <set>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"

namespace shoplore {

Result<std::vector<PlanCase>> plan_cases(const CaseCounter& counter, const Store& store,
                                         Revision as_of, const Vocabulary& vocabulary,
                                         std::string_view cause_key) {
  std::vector<PlanCase> found;
  const auto number = counter.causes().find(cause_key);
  if (!number) return found;
  const auto counted = counter.cases({});
  if (!counted) return fail(counted.error());
  for (const CaseCause& each : *counted) {
    if (each.cause != *number) continue;
    auto stored = store.read(each.id, as_of);
    if (!stored) return fail(stored.error());
    PlanCase& one = found.emplace_back();
    one.record = std::move(stored->record);
    one.ref = one.record.ref;
    one.make = lower_case(one.record.vehicle.make);
    one.engine_family = lower_case(one.record.vehicle.engine_family);
    one.fixes = fix_keys(one.record, vocabulary);
  }
  return found;
}

std::vector<const PlanCase*> with_fixes(std::span<const PlanCase> cases,
                                        const std::vector<std::string>& fixes) {
  std::vector<const PlanCase*> found;
  for (const PlanCase& each : cases) {
    if (each.fixes == fixes) found.push_back(&each);
  }
  return found;
}

std::uint32_t vehicles_among(std::span<const PlanCase> cases) {
  std::set<std::string> tokens;
  std::uint32_t nameless = 0;
  for (const PlanCase& each : cases) {
    const std::string& token = each.record.vehicle.token;
    if (token.empty()) {
      ++nameless;
    } else {
      tokens.insert(token);
    }
  }
  return nameless + static_cast<std::uint32_t>(tokens.size());
}

}  // namespace shoplore
