// A removal is a job that cures nothing; jobs are joined into runs that are never torn apart.
#include "query/checks/repair_order.hpp"

#include <algorithm>
#include <optional>

namespace shoplore {
namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);

// Removals first met on the way to each action, then the actions: a forest of jobs.
struct Job {
  std::size_t before = kNone;         // the job that must be done first
  std::optional<std::size_t> action;  // nothing: a removal
  double probability = 0, minutes = 0;
};

struct Forest {
  std::vector<Job> jobs;
  std::map<std::vector<std::string>, std::size_t> removals;  // by the way there
};

Forest forest_of(const std::vector<RepairAction>& actions, const RemovalMinutes& removal_minutes,
                 const std::set<std::string>& open) {
  Forest forest;
  for (std::size_t i = 0; i < actions.size(); ++i) {
    std::size_t before = kNone;
    std::vector<std::string> way;
    for (const std::string& removal : actions[i].removals) {
      if (open.contains(removal)) continue;
      way.push_back(removal);
      const auto [found, is_new] = forest.removals.emplace(way, forest.jobs.size());
      if (is_new) {
        const auto minutes = removal_minutes.find(removal);
        forest.jobs.push_back(
            {before, {}, 0, minutes == removal_minutes.end() ? 0 : minutes->second});
      }
      before = found->second;
    }
    forest.jobs.push_back({before, i, actions[i].probability, actions[i].minutes});
  }
  return forest;
}

// Jobs done one after another without a break.
struct Run {
  std::vector<std::size_t> jobs;
  double probability = 0, minutes = 0;
  bool is_joined = false;  // into another
};

// a promises more per minute than b. Runs that cost nothing come first.
bool promises_more(const Run& a, const Run& b) {
  return a.probability * b.minutes > b.probability * a.minutes;
}

// Joins the most promising run to the one that must come before it, until all of them may start.
std::vector<std::size_t> in_order(const std::vector<Job>& jobs) {
  std::vector<Run> runs;
  std::vector<std::size_t> run_of;
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    runs.push_back({{i}, jobs[i].probability, jobs[i].minutes, false});
    run_of.push_back(i);
  }
  std::vector<std::size_t> order;
  for (std::size_t left = jobs.size(); left > 0; --left) {
    std::size_t best = kNone;
    for (std::size_t r = 0; r < runs.size(); ++r) {
      if (!runs[r].is_joined && (best == kNone || promises_more(runs[r], runs[best]))) best = r;
    }
    runs[best].is_joined = true;
    const std::size_t before = jobs[runs[best].jobs.front()].before;
    const bool may_start = before == kNone || run_of[before] == kNone;
    if (may_start) {
      order.insert(order.end(), runs[best].jobs.begin(), runs[best].jobs.end());
      for (const std::size_t job : runs[best].jobs) run_of[job] = kNone;
      continue;
    }
    Run& into = runs[run_of[before]];
    for (const std::size_t job : runs[best].jobs) run_of[job] = run_of[before];
    into.jobs.insert(into.jobs.end(), runs[best].jobs.begin(), runs[best].jobs.end());
    into.probability += runs[best].probability;
    into.minutes += runs[best].minutes;
  }
  return order;
}

}  // namespace

RepairOrder best_repair_order(const std::vector<RepairAction>& actions,
                              const RemovalMinutes& removal_minutes,
                              const std::set<std::string>& open) {
  const Forest forest = forest_of(actions, removal_minutes, open);
  RepairOrder best;
  for (const std::size_t job : in_order(forest.jobs)) {
    if (forest.jobs[job].action) best.order.push_back(*forest.jobs[job].action);
  }
  best.expected_minutes = expected_minutes(best.order, actions, removal_minutes, open);
  return best;
}

double expected_minutes(const std::vector<std::size_t>& order,
                        const std::vector<RepairAction>& actions,
                        const RemovalMinutes& removal_minutes, const std::set<std::string>& open) {
  std::set<std::string> off = open;
  double not_cured = 1, sum = 0;
  for (const std::size_t i : order) {
    double minutes = actions[i].minutes;
    for (const std::string& removal : actions[i].removals) {
      const auto found = removal_minutes.find(removal);
      if (off.insert(removal).second && found != removal_minutes.end()) minutes += found->second;
    }
    sum += not_cured * minutes + actions[i].probability * actions[i].minutes_if_cured;
    not_cured -= actions[i].probability;
  }
  return sum;
}

std::vector<std::size_t> search_sequence(const std::vector<Look>& places, std::size_t looks) {
  std::vector<double> promise;
  for (const Look& place : places) {
    promise.push_back(place.probability * place.found / place.minutes);
  }
  std::vector<std::size_t> sequence;
  while (!places.empty() && sequence.size() < looks) {
    const auto best = static_cast<std::size_t>(std::max_element(promise.begin(), promise.end()) -
                                               promise.begin());
    sequence.push_back(best);
    promise[best] *= 1 - places[best].found;
  }
  return sequence;
}

}  // namespace shoplore
