#include "query/practice/subject_turn.hpp"

#include <algorithm>
#include <map>

#include "query/practice/drawing.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kOneInTwo = 2;

// Those that are due, the next first.
std::vector<std::string> due_subjects(const std::vector<std::string>& subjects, PracticeKind kind,
                                      const ApprenticeRecord& record, Date today) {
  std::map<std::string, Date> due;
  for (const PractisedSubject& each : record.subjects) {
    if (each.kind == kind) due[each.subject] = each.repetition.due;
  }
  std::vector<std::string> keys;
  for (const std::string& each : subjects) {
    const auto found = due.find(each);
    if (found != due.end() && found->second <= today) keys.push_back(each);
  }
  std::stable_sort(keys.begin(), keys.end(),
                   [&](const auto& a, const auto& b) { return due[a] < due[b]; });
  const auto last = std::find_if(record.results.rbegin(), record.results.rend(),
                                 [&](const PracticeResult& each) { return each.kind == kind; });
  if (last == record.results.rend()) return keys;
  std::stable_partition(keys.begin(), keys.end(),
                        [&](const std::string& each) { return each != last->subject; });
  return keys;
}

}  // namespace

Turn next_turn(const std::vector<std::string>& subjects, PracticeKind kind,
               const ApprenticeRecord& record, Date today, std::mt19937_64& random) {
  const auto due = due_subjects(subjects, kind, record, today);
  if (!due.empty() && drawn_below(kOneInTwo, random) == 0) return {due.front(), Drawn::kDue};
  return {subjects[drawn_below(subjects.size(), random)], Drawn::kByChance};
}

}  // namespace shoplore
