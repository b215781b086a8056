#include "corpus-demo/calendar.hpp"

#include <algorithm>
#include <numeric>

namespace shoplore {
namespace {

using std::chrono::days;

std::int64_t day_count() {
  return (kLastDay.days - kFirstDay.days).count() + 1;
}

// Mean over all days of the span.
double mean_of(const Season& season) {
  double sum = 0;
  for (std::int64_t i = 0; i < day_count(); ++i) {
    sum += season[month_of(Date{kFirstDay.days + days(i)})];
  }
  return sum / static_cast<double>(day_count());
}

}  // namespace

std::size_t month_of(Date day) {
  return static_cast<unsigned>(std::chrono::year_month_day{day.days}.month()) - 1U;
}

Calendar::Calendar(const World& world) {
  for (const FailurePattern& pattern : world.patterns) {
    const double arriving = pattern.share * (1 - comeback_share(pattern));
    const double mean = mean_of(pattern.season);
    for (std::size_t month = 0; month < 12; ++month) {
      by_month_[month].push_back(arriving * pattern.season[month] / mean);
    }
  }
  double sum = 0;
  for (std::int64_t i = 0; i < day_count(); ++i) {
    const auto& weights = arrivals(Date{kFirstDay.days + days(i)});
    sum += std::accumulate(weights.begin(), weights.end(), 0.0);
    up_to_.push_back(sum);
  }
}

Date Calendar::day_of(double share) const {
  const auto found = std::upper_bound(up_to_.begin(), up_to_.end(), share * up_to_.back());
  return std::min(Date{kFirstDay.days + days(found - up_to_.begin())}, kLastDay);
}

const std::vector<double>& Calendar::arrivals(Date day) const {
  return by_month_[month_of(day)];
}

}  // namespace shoplore
