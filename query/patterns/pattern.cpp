#include "query/patterns/pattern.hpp"

#include "query/patterns/limit_tests.hpp"

namespace shoplore {
namespace {

bool counts(const Pattern& pattern, std::string_view cause) {
  if (pattern.kind == PatternKind::kWorkSign) return true;
  if (pattern.kind != PatternKind::kInVain) return cause == pattern.cause;
  return part_of_cause(cause) != repaired_part(pattern.items.front().attribute);
}

}  // namespace

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
