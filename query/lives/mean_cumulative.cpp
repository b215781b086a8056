// Ages with repairs one after another; each vehicle keeps its running sum of deviations. That costs
// ages times vehicles, which thousands of either do not make slow.
#include "query/lives/mean_cumulative.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace shoplore {
namespace {

bool is_time(double time) {
  return std::isfinite(time) && time >= 0;
}

bool watched_at(const RepairHistory& history, double time) {
  return time <= history.exit && (!history.entry || *history.entry < time);
}

std::string problem_of(const RepairHistory& history) {
  if (!is_time(history.exit)) return "its exit is not a time of 0 or more";
  if (history.entry && !is_time(*history.entry)) return "its entry is not a time of 0 or more";
  if (history.entry && *history.entry >= history.exit) return "its entry is not before its exit";
  for (const double event : history.events) {
    if (!is_time(event)) return "an event is not a time of 0 or more";
    if (!watched_at(history, event)) {
      return fmt::format("an event at {} is outside the time it was watched", event);
    }
  }
  return {};
}

Result<void> check(std::span<const RepairHistory> histories) {
  if (histories.empty()) return fail(ErrorCode::kInvalidInput, "", "no vehicles were given");
  for (std::size_t i = 0; i < histories.size(); ++i) {
    std::string problem = problem_of(histories[i]);
    if (problem.empty()) continue;
    return fail(ErrorCode::kInvalidInput, fmt::format("vehicle {}", i + 1), std::move(problem));
  }
  return {};
}

// By age: how many repairs each vehicle had at it.
using EventsByTime = std::map<double, std::map<std::size_t, std::uint64_t>>;

EventsByTime events_by_time(std::span<const RepairHistory> histories) {
  EventsByTime by_time;
  for (std::size_t i = 0; i < histories.size(); ++i) {
    for (const double event : histories[i].events) ++by_time[event][i];
  }
  return by_time;
}

}  // namespace

Result<MeanCumulative> mean_cumulative(std::span<const RepairHistory> histories) {
  if (const auto checked = check(histories); !checked) return fail(checked.error());
  MeanCumulative curve;
  for (const RepairHistory& each : histories) curve.longest = std::max(curve.longest, each.exit);
  std::vector<double> deviations(histories.size(), 0);
  double mean = 0;
  for (const auto& [time, events] : events_by_time(histories)) {
    MeanCumulativeStep step{.time = time};
    for (const RepairHistory& each : histories) step.at_risk += watched_at(each, time) ? 1U : 0U;
    for (const auto& [vehicle, count] : events) step.events += count;
    const auto watched = static_cast<double>(step.at_risk);
    const double rise = static_cast<double>(step.events) / watched;
    mean += rise;
    step.mean = mean;
    for (std::size_t i = 0; i < histories.size(); ++i) {
      if (watched_at(histories[i], time)) deviations[i] -= rise / watched;
      const auto own = events.find(i);
      if (own != events.end()) deviations[i] += static_cast<double>(own->second) / watched;
      step.variance += deviations[i] * deviations[i];
    }
    curve.steps.push_back(step);
  }
  return curve;
}

std::optional<Estimate> repairs_by(const MeanCumulative& curve, double time, double confidence) {
  if (time > curve.longest) return std::nullopt;
  const auto next =
      std::upper_bound(curve.steps.begin(), curve.steps.end(), time,
                       [](double t, const MeanCumulativeStep& step) { return t < step.time; });
  if (next == curve.steps.begin()) return std::nullopt;
  const MeanCumulativeStep& step = *(next - 1);
  return estimate_on_log_scale(std::log(step.mean), std::sqrt(step.variance) / step.mean,
                               confidence);
}

}  // namespace shoplore
