// First every series gets its exposures (cases of a month, weighed by the season) and its chances;
// only then, with all of them known, are q values and decision intervals settled.
#include "query/lately/lately.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <numeric>

#include "indexer/case_keys.hpp"
#include "query/lately/could_stand_out.hpp"
#include "query/lately/cusum.hpp"
#include "query/lately/season.hpp"
#include "query/patterns/false_discovery.hpp"

namespace shoplore {
namespace {

using Counts = std::vector<std::uint32_t>;

constexpr std::size_t kYear = 12;
// How surprising a rise must be against the same months of the year before, where no season can
// be told: one-sided it would be a twentieth.
constexpr double kAgainstYearBefore = 0.10;

template <class Number>
Number sum_of(const std::vector<Number>& values, std::size_t from, std::size_t to) {
  return std::accumulate(values.begin() + static_cast<std::ptrdiff_t>(from),
                         values.begin() + static_cast<std::ptrdiff_t>(to), Number{0});
}

struct Watched {
  const CountSeries& series;
  std::vector<double> exposure;  // by month
  Season season;
};

class Comparison {
 public:
  explicit Comparison(const MonthlyCounts& counts) : counts_(counts), months_(counts.months()) {}

  Lately result() {
    Lately lately;
    lately.first = counts_.first;
    lately.last = counts_.month(months_ - 1);
    lately.cases = sum_of(counts_.cases, 0, months_);
    for (const CountSeries& family : counts_.families) {
      lately.engine_families.push_back(family.engine_family);
    }
    for (std::size_t i = 0; i < kLatelyMonths.size(); ++i) {
      const std::size_t length = std::min(kLatelyMonths[i], months_);
      lately.cases_lately[i] = sum_of(counts_.cases, months_ - length, months_);
    }
    if (months_ < kLatelyMonths.front() + kFewestMonthsBefore) return lately;
    watch();
    for (const Watched& watched : watched_) lately.rows.push_back(row_of(watched));
    lately.compared = lately.rows.size();
    lately.tested = settle_windows(lately.rows);
    if (months_ >= kYear + kFewestMonthsBefore) settle_sums(lately.rows);
    for (std::size_t i = 0; i < lately.rows.size(); ++i) {
      lately.rows[i].change = change_of(lately.rows[i], watched_[i]);
    }
    std::stable_sort(lately.rows.begin(), lately.rows.end(),
                     [](const LatelyRow& a, const LatelyRow& b) {
                       return above_expected(a.windows.back()) > above_expected(b.windows.back());
                     });
    lately.pairings = new_pairings();
    return lately;
  }

 private:
  void watch() {
    for (const CountSeries& cause : counts_.causes) {
      const SeasonWeights weights = season_of_cause(cause);
      Watched watched{cause, {}, Season::kUnknown};
      if (season_known()) {
        watched.season = weights == kNoSeason ? Season::kNoCourse : Season::kAllowedFor;
      }
      for (std::size_t m = 0; m < months_; ++m) {
        watched.exposure.push_back(counts_.cases[m] * weights[month_of_year(counts_.month(m))]);
      }
      by_cause_.emplace(cause.cause, watched_.size());
      watched_.push_back(std::move(watched));
    }
    for (const CountSeries& pair : counts_.pairs) {
      const Watched& of_cause = watched_[by_cause_.at(pair.cause)];
      watched_.push_back({pair, of_cause.exposure, of_cause.season});
    }
  }

  bool season_known() const { return months_ >= kYear + kFewestMonthsForSeason; }

  // Told by the months before the last twelve alone: a rise must not become part of the usual.
  SeasonWeights season_of_cause(const CountSeries& cause) const {
    if (!season_known()) return kNoSeason;
    const std::size_t before = months_ - kYear;
    return season_of(std::span(cause.by_month).first(before),
                     std::span(counts_.cases).first(before), counts_.first);
  }

  LatelyRow row_of(const Watched& watched) const {
    const CountSeries& series = watched.series;
    LatelyRow row;
    row.cause = cause_parts(series.cause);
    row.engine_family = series.engine_family;
    row.season = watched.season;
    for (const std::size_t length : kLatelyMonths) {
      if (months_ < length + kFewestMonthsBefore) break;
      row.windows.push_back(window_of(watched, length));
    }
    for (std::size_t back = kYear; back + kLatelyMonths.front() <= months_; back += kYear) {
      const std::size_t end = months_ - back;
      row.earlier.push_back({static_cast<int>(counts_.month(end - 1).year()),
                             sum_of(series.by_month, end - kLatelyMonths.front(), end)});
    }
    const std::size_t drawn = std::min(kDrawnMonths, months_);
    row.drawn.assign(series.by_month.end() - static_cast<std::ptrdiff_t>(drawn),
                     series.by_month.end());
    const std::vector<double> usual = usual_means(watched);
    row.usual.assign(usual.end() - static_cast<std::ptrdiff_t>(drawn), usual.end());
    return row;
  }

  WindowRate window_of(const Watched& watched, std::size_t length) const {
    const std::size_t start = months_ - length;
    const Counts& by_month = watched.series.by_month;
    WindowRate window;
    window.months = length;
    window.cases = sum_of(by_month, start, months_);
    window.before = sum_of(by_month, 0, start);
    const double exposure = sum_of(watched.exposure, start, months_);
    const double exposure_before = sum_of(watched.exposure, 0, start);
    if (exposure <= 0 || exposure_before <= 0) return window;
    window.expected = window.before * exposure / exposure_before;
    window.rate =
        rate_ratio({window.cases, exposure}, {window.before, exposure_before}, kShownConfidence);
    return window;
  }

  // What each month would bring if all were as before the last twelve (or, with less behind us,
  // before the last three).
  std::vector<double> usual_means(const Watched& watched) const {
    const bool year = months_ >= kYear + kFewestMonthsBefore;
    const std::size_t before = months_ - (year ? kYear : kLatelyMonths.front());
    const double exposure = sum_of(watched.exposure, 0, before);
    const double rate = sum_of(watched.series.by_month, 0, before) / exposure;
    std::vector<double> means;
    for (const double of_month : watched.exposure) means.push_back(rate * of_month);
    return means;
  }

  // q over everything that could stand out; how many that were.
  std::size_t settle_windows(std::vector<LatelyRow>& rows) const {
    std::vector<WindowRate*> windows;
    std::vector<double> smallest;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      for (WindowRate& window : rows[i].windows) {
        windows.push_back(&window);
        smallest.push_back(smallest_p(window, watched_[i]));
      }
    }
    const auto could = could_stand_out(smallest, kShownRate);
    std::vector<WindowRate*> tested;
    std::vector<double> p_values;
    for (std::size_t i = 0; i < windows.size(); ++i) {
      if (!could[i]) continue;
      tested.push_back(windows[i]);
      p_values.push_back(windows[i]->rate.p);
    }
    const std::vector<double> rates = benjamini_hochberg(p_values, p_values.size());
    for (std::size_t i = 0; i < tested.size(); ++i) tested[i]->q = rates[i];
    return tested.size();
  }

  // If all of its cases, or none, had fallen into the window.
  double smallest_p(const WindowRate& window, const Watched& watched) const {
    const double all = sum_of(watched.exposure, 0, months_);
    const double inside = sum_of(watched.exposure, months_ - window.months, months_);
    if (inside <= 0 || inside >= all) return 1;
    const double cases = window.cases + window.before;
    return std::min(std::pow(inside / all, cases), std::pow(1 - inside / all, cases));
  }

  void settle_sums(std::vector<LatelyRow>& rows) const {
    const std::size_t causes = counts_.causes.size();
    settle_sums(rows, 0, causes, kFalseSignalsOfCauses);
    settle_sums(rows, causes, rows.size(), kFalseSignalsOfPairs);
  }

  // Of rows [from, to), which share the bound on false signals.
  void settle_sums(std::vector<LatelyRow>& rows, std::size_t from, std::size_t to,
                   double false_signals) const {
    std::vector<CusumChances> chances;
    std::vector<SumAbove*> sums;
    const double factor = poisson_reference(1, kLookedForRise);
    for (std::size_t i = from; i < to; ++i) {
      const CountSeries& series = watched_[i].series;
      const std::uint32_t before = sum_of(series.by_month, 0, months_ - kYear);
      if (before < kFewestForSum) continue;
      std::vector<double> means = usual_means(watched_[i]);
      means.erase(means.begin(), means.end() - static_cast<std::ptrdiff_t>(kYear));
      // A month without any case tells nothing, but the chain needs a mean.
      for (double& mean : means) mean = std::max(mean, 1e-9);
      const double largest = *std::max_element(means.begin(), means.end());
      chances.emplace_back(means, before, factor, 24 + 6 * std::sqrt(largest));
      rows[i].sum = sum_above(series, chances.back().references());
      sums.push_back(&*rows[i].sum);
    }
    const double chance = chance_for_all(chances, false_signals);
    for (std::size_t i = 0; i < sums.size(); ++i) sums[i]->interval = chances[i].interval(chance);
  }

  SumAbove sum_above(const CountSeries& series, const std::vector<double>& references) const {
    const std::vector<double> last(series.by_month.end() - static_cast<std::ptrdiff_t>(kYear),
                                   series.by_month.end());
    const std::vector<double> sums = upper_cusum(last, references);
    SumAbove above{sums.back(), 0, {}};
    if (above.sum > 0) above.began = counts_.month(months_ - kYear + rise_began(sums));
    return above;
  }

  // The largest chance a series may have of being above its interval, the same for all, such that
  // no more than `wanted` of them are expected there. Counts are whole: most stay well below it.
  static double chance_for_all(std::span<const CusumChances> chances, double wanted) {
    double low = std::log(1e-8), high = 0;
    for (int halving = 0; halving < 30; ++halving) {
      const double middle = (low + high) / 2;
      double expected = 0;
      for (const CusumChances& each : chances) {
        expected += each.at_least(each.interval(std::exp(middle)));
      }
      (expected > wanted ? high : low) = middle;
    }
    return std::exp(low);
  }

  // The shortest window that stands out speaks; a sum above its interval speaks for a rise.
  Change change_of(const LatelyRow& row, const Watched& watched) const {
    const bool signals = row.sum && row.sum->sum > 0 && row.sum->sum >= row.sum->interval;
    const auto out = std::find_if(row.windows.begin(), row.windows.end(), stands_out);
    const bool risen = signals || (out != row.windows.end() && out->rate.ratio > 1);
    if (risen) return stands_against_year_before(row, watched) ? Change::kRisen : Change::kNone;
    return out == row.windows.end() ? Change::kNone : Change::kFallen;
  }

  bool stands_against_year_before(const LatelyRow& row, const Watched& watched) const {
    const std::size_t length = kLatelyMonths.front();
    if (row.season != Season::kUnknown || months_ < kYear + length) return true;
    const std::size_t end = months_ - kYear;
    const double now = sum_of(watched.exposure, months_ - length, months_);
    const double then = sum_of(watched.exposure, end - length, end);
    if (now <= 0 || then <= 0) return true;
    const RateRatio ratio =
        rate_ratio({row.windows.front().cases, now},
                   {sum_of(watched.series.by_month, end - length, end), then}, kShownConfidence);
    return ratio.ratio > 1 && ratio.p <= kAgainstYearBefore;
  }

  std::vector<NewPairing> new_pairings() const {
    std::vector<NewPairing> found;
    if (months_ < kYear + kFewestMonthsBefore) return found;
    const std::size_t before = months_ - kYear;
    const auto cases_before = [&](const CountSeries& series) {
      return series.earlier + sum_of(series.by_month, 0, before);
    };
    std::map<std::string, std::uint32_t> of_family;
    for (const CountSeries& family : counts_.families) {
      of_family[family.engine_family] = cases_before(family);
    }
    for (const CountSeries& pair : counts_.pairs) {
      const auto& cause = watched_[by_cause_.at(pair.cause)].series;
      NewPairing pairing{cause_parts(pair.cause),
                         pair.engine_family,
                         sum_of(pair.by_month, before, months_),
                         {},
                         cases_before(cause),
                         of_family.at(pair.engine_family)};
      const bool both_known = pairing.cause_before > 0 && pairing.family_before > 0;
      if (cases_before(pair) > 0 || pairing.cases < kShownPairing || !both_known) continue;
      const auto first = std::find_if(pair.by_month.begin(), pair.by_month.end(),
                                      [](std::uint32_t count) { return count > 0; });
      pairing.first = counts_.month(static_cast<std::size_t>(first - pair.by_month.begin()));
      found.push_back(std::move(pairing));
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.cases > b.cases; });
    return found;
  }

  const MonthlyCounts& counts_;
  std::size_t months_;
  std::vector<Watched> watched_;                 // causes, then pairs
  std::map<std::string, std::size_t> by_cause_;  // where a cause is in watched_
};

}  // namespace

Lately lately(const MonthlyCounts& counts) {
  return counts.months() == 0 ? Lately{} : Comparison(counts).result();
}

bool stands_out(const WindowRate& window) {
  return window.q && *window.q <= kShownRate;
}

double above_expected(const WindowRate& window) {
  return std::abs(window.cases - window.expected);
}

}  // namespace shoplore
