#include "query/practice/subject_turn.hpp"

#include <algorithm>
#include <map>

#include "query/practice/drawing.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kOneInTwo = 2;

// Keys that are due, the next at the end.
std::vector<std::string> due_subjects(const std::vector<Subject>& subjects, PracticeKind kind,
                                      const ApprenticeRecord& record, Date today) {
  std::map<std::string, Date> due;
  for (const PractisedSubject& each : record.subjects) {
    if (each.kind == kind) due[each.subject] = each.repetition.due;
  }
  std::vector<std::string> keys;
  for (const Subject& each : subjects) {
    const auto found = due.find(each.key);
    if (found != due.end() && found->second <= today) keys.push_back(each.key);
  }
  std::stable_sort(keys.begin(), keys.end(),
                   [&](const auto& a, const auto& b) { return due[a] > due[b]; });
  const auto last = std::find_if(record.results.rbegin(), record.results.rend(),
                                 [&](const PracticeResult& each) { return each.kind == kind; });
  if (last == record.results.rend()) return keys;
  std::stable_partition(keys.begin(), keys.end(),
                        [&](const std::string& each) { return each == last->subject; });
  return keys;
}

// By their weights. Requires: there are some.
std::size_t drawn_by_weight(const std::vector<Subject>& subjects, std::mt19937_64& random) {
  std::size_t all = 0;
  for (const Subject& each : subjects) all += each.weight;
  std::size_t drawn = drawn_below(all, random);
  std::size_t i = 0;
  for (; drawn >= subjects[i].weight; ++i) drawn -= subjects[i].weight;
  return i;
}

}  // namespace

std::vector<Turn> subjects_in_turn(std::vector<Subject> subjects, PracticeKind kind,
                                   const ApprenticeRecord& record, Date today,
                                   std::mt19937_64& random) {
  std::vector<std::string> due = due_subjects(subjects, kind, record, today);
  std::vector<Turn> turns;
  while (!subjects.empty()) {
    const bool of_due = !due.empty() && drawn_below(kOneInTwo, random) == 0;
    const std::string key = of_due ? due.back() : subjects[drawn_by_weight(subjects, random)].key;
    turns.push_back({key, of_due ? Drawn::kDue : Drawn::kByChance});
    std::erase(due, key);
    std::erase_if(subjects, [&](const Subject& each) { return each.key == key; });
  }
  return turns;
}

}  // namespace shoplore
