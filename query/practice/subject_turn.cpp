#include "query/practice/subject_turn.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "query/practice/drawing.hpp"

namespace shoplore {
namespace {

constexpr std::array<std::size_t, 3> kWeights{5, 3, 2};
// Due, never seen, seen lately; the next of each at the end.
using Groups = std::array<std::vector<std::string>, 3>;

Groups grouped(const std::vector<std::string>& subjects, PracticeKind kind,
               const ApprenticeRecord& record, Date today, std::mt19937_64& random) {
  std::map<std::string, Date> due;
  for (const PractisedSubject& each : record.subjects) {
    if (each.kind == kind) due[each.subject] = each.repetition.due;
  }
  Groups groups;
  for (const std::string& subject : subjects) {
    const auto found = due.find(subject);
    const std::size_t group = found == due.end() ? 1 : found->second <= today ? 0 : 2;
    groups[group].push_back(subject);
  }
  for (auto& group : groups) shuffle_drawn(group, random);
  std::stable_sort(groups[0].begin(), groups[0].end(),
                   [&](const auto& a, const auto& b) { return due[a] > due[b]; });
  return groups;
}

}  // namespace

std::vector<std::string> subjects_in_turn(const std::vector<std::string>& subjects,
                                          PracticeKind kind, const ApprenticeRecord& record,
                                          Date today, std::mt19937_64& random) {
  Groups groups = grouped(subjects, kind, record, today, random);
  std::vector<std::string> turn;
  while (turn.size() < subjects.size()) {
    std::size_t all = 0;
    for (std::size_t g = 0; g < groups.size(); ++g) all += groups[g].empty() ? 0 : kWeights[g];
    std::size_t drawn = drawn_below(all, random);
    for (std::size_t g = 0; g < groups.size(); ++g) {
      const std::size_t weight = groups[g].empty() ? 0 : kWeights[g];
      if (drawn >= weight) {
        drawn -= weight;
        continue;
      }
      turn.push_back(std::move(groups[g].back()));
      groups[g].pop_back();
      break;
    }
  }
  const auto last = std::find_if(record.results.rbegin(), record.results.rend(),
                                 [&](const PracticeResult& each) { return each.kind == kind; });
  if (last == record.results.rend()) return turn;
  std::stable_partition(turn.begin(), turn.end(),
                        [&](const std::string& each) { return each != last->subject; });
  return turn;
}

}  // namespace shoplore
