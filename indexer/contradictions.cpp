#include "indexer/contradictions.hpp"

#include <algorithm>
#include <set>

namespace shoplore {
namespace {

bool holds_any(const std::vector<std::string>& components, const std::set<std::string>& wanted) {
  return std::any_of(components.begin(), components.end(),
                     [&](const std::string& each) { return wanted.contains(each); });
}

}  // namespace

std::vector<std::string> components_told_about(std::string_view check,
                                               const Vocabulary& vocabulary) {
  const Entry* entry =
      vocabulary.find(EntryKind::kCheck, vocabulary.canonical(EntryKind::kCheck, check));
  std::vector<std::string> components;
  if (entry == nullptr) return components;
  for (const std::string& component : entry->components) {
    components.push_back(vocabulary.canonical(EntryKind::kComponent, component));
  }
  return components;
}

std::vector<Contradiction> contradictions(const Case& record, const Vocabulary& vocabulary) {
  std::vector<Contradiction> found;
  if (!record.cause) return found;
  const auto component_of = [&](const Cause& cause) {
    return vocabulary.canonical(EntryKind::kComponent, cause.component);
  };
  const std::set<std::string> main{component_of(*record.cause)};
  std::set<std::string> all = main;
  for (const Cause& cause : record.contributing) all.insert(component_of(cause));
  for (const Cause& cause : record.also_found) all.insert(component_of(cause));
  for (std::size_t i = 0; i < record.checks.size(); ++i) {
    const Check& check = record.checks[i];
    const auto components = components_told_about(check.id, vocabulary);
    if (components.empty()) continue;
    const bool against = check.verdict == Verdict::kPass   ? holds_any(components, main)
                         : check.verdict == Verdict::kFail ? !holds_any(components, all)
                                                           : false;
    if (against) found.push_back({i, check.id, check.verdict, check.later});
  }
  return found;
}

std::vector<Contradiction> unanswered_contradictions(const Case& record,
                                                     const Vocabulary& vocabulary) {
  auto found = contradictions(record, vocabulary);
  std::erase_if(found, [](const Contradiction& each) { return each.later.has_value(); });
  return found;
}

}  // namespace shoplore
