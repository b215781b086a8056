#include "query/repair_plan/around_the_fix.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"
#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

constexpr std::array<std::string_view, 6> kTeaching{"relearn", "calibrate", "bleed",
                                                    "code_in", "reprogram", "align"};

// Canonical, each once, in the order written.
std::vector<std::string> removals_in(const Case& record, const Vocabulary& vocabulary) {
  std::vector<std::string> ids;
  if (!record.correction) return ids;
  for (const std::string& each : record.correction->removals) {
    std::string id = vocabulary.canonical(EntryKind::kRemoval, each);
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(std::move(id));
  }
  return ids;
}

std::string plain_words(const std::string& text) {
  std::vector<std::string> words;
  for (const Word& word : words_of(text)) words.push_back(word.text);
  return fmt::format("{}", fmt::join(words, " "));
}

}  // namespace

RemovalPlan removals_for(std::span<const PlanCase* const> cases, const std::set<std::string>& open,
                         const Vocabulary& vocabulary) {
  RemovalPlan plan;
  std::map<std::vector<std::string>, std::uint32_t> lists;
  std::map<std::string, std::uint32_t> counts;
  for (const PlanCase* each : cases) {
    const auto ids = removals_in(each->record, vocabulary);
    if (ids.empty()) continue;
    ++plan.out_of;
    ++lists[ids];
    for (const std::string& id : ids) ++counts[id];
  }
  if (lists.empty()) return plan;
  const auto planned = [&](const std::string& id) {
    const Entry* entry = vocabulary.find(EntryKind::kRemoval, id);
    return PlannedRemoval{id, entry == nullptr ? std::nullopt : entry->minutes, counts.at(id),
                          open.contains(id) ? RemovalNow::kOffAlready : RemovalNow::kToTakeOff};
  };
  const auto usual = std::max_element(lists.begin(), lists.end(),
                                      [](auto& a, auto& b) { return a.second < b.second; });
  for (const std::string& id : usual->first) {
    plan.in_order.push_back(planned(id));
    const PlannedRemoval& added = plan.in_order.back();
    if (added.now == RemovalNow::kToTakeOff) plan.minutes += added.minutes.value_or(0);
    counts.erase(counts.find(id));
  }
  for (const auto& [id, count] : counts) plan.also_found.push_back(planned(id));
  std::stable_sort(
      plan.also_found.begin(), plan.also_found.end(),
      [](const PlannedRemoval& a, const PlannedRemoval& b) { return a.cases > b.cases; });
  return plan;
}

AfterwardsNeeds afterwards_of(std::span<const PlanCase> cases,
                              const std::vector<std::string>& fixes, const Vocabulary& vocabulary) {
  AfterwardsNeeds needs;
  std::set<std::string> components, said;
  for (const std::string& fix : fixes) {
    const std::string component = fix_parts(fix).component;
    const Entry* entry = vocabulary.find(EntryKind::kComponent, component);
    if (entry == nullptr || !components.insert(component).second) continue;
    for (const std::string& text : entry->afterwards) {
      if (said.insert(text).second) needs.common.push_back({component, text});
    }
  }
  std::map<std::string, std::uint32_t> done;
  for (const PlanCase& each : cases) {
    if (each.fixes.empty()) continue;
    ++needs.out_of;
    if (each.fixes.size() == 1) continue;
    for (const std::string& fix : each.fixes) {
      const std::string action = fix_parts(fix).action;
      if (std::find(kTeaching.begin(), kTeaching.end(), action) != kTeaching.end()) ++done[fix];
    }
  }
  for (const auto& [fix, count] : done) needs.done.push_back({fix, count});
  std::stable_sort(needs.done.begin(), needs.done.end(),
                   [](const FixInCases& a, const FixInCases& b) { return a.cases > b.cases; });
  return needs;
}

std::vector<Trap> traps_of(std::span<const PlanCase> cases) {
  struct Alike {
    std::map<std::string, std::uint32_t> spellings;
    std::vector<std::string> refs;
  };
  std::map<std::string, std::size_t> places;
  std::vector<Alike> groups;
  for (const PlanCase& each : cases) {
    if (!each.record.correction) continue;
    for (const std::string& text : each.record.correction->traps) {
      const auto [at, is_new] = places.emplace(plain_words(text), groups.size());
      if (is_new) groups.emplace_back();
      Alike& alike = groups[at->second];
      ++alike.spellings[text];
      if (alike.refs.empty() || alike.refs.back() != each.ref) alike.refs.push_back(each.ref);
    }
  }
  std::vector<Trap> traps;
  for (Alike& each : groups) {
    const auto usual = std::max_element(each.spellings.begin(), each.spellings.end(),
                                        [](auto& a, auto& b) { return a.second < b.second; });
    traps.push_back({usual->first, std::move(each.refs)});
  }
  std::stable_sort(traps.begin(), traps.end(),
                   [](const Trap& a, const Trap& b) { return a.refs.size() > b.refs.size(); });
  return traps;
}

namespace {

// Standing still before moving, in the yard before the road: what may be unsafe is not driven to
// find out.
enum class ProofTurn { kStanding, kYard, kRoad };

ProofTurn turn_of(std::string_view step, const Vocabulary& vocabulary) {
  const Entry* entry = vocabulary.find(EntryKind::kVerification, step);
  if (entry == nullptr) return ProofTurn::kStanding;
  const auto has = [&](const char* caution) {
    return std::find(entry->cautions.begin(), entry->cautions.end(), caution) !=
           entry->cautions.end();
  };
  if (!has("road_test_passenger_records")) return ProofTurn::kStanding;
  return has("unsafe_to_drive") ? ProofTurn::kYard : ProofTurn::kRoad;
}

}  // namespace

std::vector<ProofStep> proof_steps(std::span<const PlanCase> cases, const Vocabulary& vocabulary) {
  struct Done {
    std::uint32_t cases = 0, caught = 0;
  };
  std::map<std::string, Done> counts;
  for (const PlanCase& each : cases) {
    std::map<std::string, bool> here;  // whether it caught something
    for (const Verification& step : each.record.verification) {
      bool& caught = here[vocabulary.canonical(EntryKind::kVerification, step.id)];
      caught = caught || step.verdict == Verdict::kFail;
    }
    for (const auto& [id, caught] : here) {
      ++counts[id].cases;
      counts[id].caught += caught ? 1 : 0;
    }
  }
  std::vector<ProofStep> steps;
  for (const auto& [id, done] : counts) steps.push_back({id, share_of(done.caught, done.cases)});
  std::stable_sort(steps.begin(), steps.end(), [&](const ProofStep& a, const ProofStep& b) {
    const auto turn_a = turn_of(a.id, vocabulary), turn_b = turn_of(b.id, vocabulary);
    return turn_a != turn_b ? turn_a < turn_b : a.caught.out_of > b.caught.out_of;
  });
  return steps;
}

}  // namespace shoplore
