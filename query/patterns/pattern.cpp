#include "query/patterns/pattern.hpp"

#include <set>
#include <unordered_map>

#include "indexer/case_keys.hpp"
#include "query/patterns/limit_tests.hpp"

namespace shoplore {
namespace {

bool counts(const Pattern& pattern, std::string_view cause) {
  if (pattern.kind == PatternKind::kWorkSign) return true;
  if (pattern.kind != PatternKind::kInVain) return cause == pattern.cause;
  return cause_parts(cause).component != repaired_part(pattern.items.front().attribute);
}

struct RefAndVehicle {
  std::string ref, vehicle;
};

// What is shown of a case, read from the store when first asked for.
class ShownCases {
 public:
  explicit ShownCases(const Store& store) : store_(store) {}

  Result<RefAndVehicle> of(CaseId id) {
    const auto known = shown_.find(id.value);
    if (known != shown_.end()) return known->second;
    const auto stored = store_.read(id);
    if (!stored) return fail(stored.error());
    const std::string& token = stored->record.vehicle.token;
    RefAndVehicle shown{stored->record.ref, token.empty() ? "case:" + stored->record.ref : token};
    return shown_.emplace(id.value, std::move(shown)).first->second;
  }

 private:
  const Store& store_;
  std::unordered_map<std::uint32_t, RefAndVehicle> shown_;
};

}  // namespace

Result<std::vector<OpenedPattern>> opened(const std::vector<Pattern>& patterns,
                                          const CaseCounter& counter, const Store& store) {
  ShownCases shown(store);
  std::vector<OpenedPattern> out;
  for (const Pattern& pattern : patterns) {
    const auto ids = cases_of(pattern, counter);
    if (!ids) return fail(ids.error());
    OpenedPattern open{pattern, {}, 0};
    std::set<std::string> vehicles;
    for (const CaseId id : *ids) {
      auto each = shown.of(id);
      if (!each) return fail(each.error());
      open.refs.push_back(std::move(each->ref));
      vehicles.insert(std::move(each->vehicle));
    }
    open.vehicles = static_cast<std::uint32_t>(vehicles.size());
    out.push_back(std::move(open));
  }
  return out;
}

Result<std::vector<CaseId>> cases_of(const Pattern& pattern, const CaseCounter& counter) {
  CountQuestion question{pattern.items, {}, {}};
  if (!pattern.scope.attribute.empty()) question.all_of.push_back(pattern.scope);
  if (pattern.kind == PatternKind::kWorkSign) {
    question.all_of.push_back({pattern.sign, "present"});
  }
  const auto cases = counter.cases(question);
  if (!cases) return fail(cases.error());
  std::vector<CaseId> ids;
  for (const CaseCause& each : *cases) {
    if (counts(pattern, counter.causes().key(each.cause))) ids.push_back(each.id);
  }
  return ids;
}

}  // namespace shoplore
