// At what mileage a failure comes, and how long its part lives.
//
// Two questions with two answers. "At what mileage do they go?" is read off the cases themselves:
// the middle and the quarters of their km. It says nothing of the vehicles that never came in with
// it. "How long does it live?" counts those too: a product-limit curve over the lives of
// failure_lives.hpp, with a Weibull and a lognormal life fitted beside it, apart for parts as found
// and for parts replaced here.
// With few failures nothing is fitted: below kFewestToFit the lives are only counted. What cannot
// be fitted says why. No estimate is a prediction for one vehicle, and all of them are about the
// vehicles that come here: one mended elsewhere, scrapped or sold is never seen again.
//
// Plain data and pure functions, any thread. Distances are kilometres as double, as in lives.hpp.
// Errors: those of kaplan_meier.hpp, which lives read from visits do not meet.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/enum_names.hpp"
#include "query/failure_mileage/failure_lives.hpp"
#include "query/lives/kaplan_meier.hpp"
#include "query/lives/lognormal_fit.hpp"
#include "query/lives/weibull_fit.hpp"

namespace shoplore {

// Failures below which no life is fitted; lives of replaced parts below which none are shown.
inline constexpr std::uint64_t kFewestToFit = 3, kFewestReplaced = 5;

// A curve with late entries begins where at least so many are at risk: below, one failure more or
// less moves everything after it.
inline constexpr std::uint64_t kFewestAtRisk = 5;

// Of the km of cases. Quartiles as quantile.hpp.
struct MileageQuartiles {
  double least = 0, quarter = 0, half = 0, three_quarters = 0, greatest = 0;
};

struct CaseMileages {
  std::vector<Kilometres> km;     // of the cases that say it, sorted
  std::uint32_t cases = 0;        // closed, with this cause; comebacks count again
  std::uint32_t beside_main = 0;  // of them, beside another main cause
  [[nodiscard]] std::optional<MileageQuartiles> quartiles() const;  // empty without km
};

struct FittedLife {
  WeibullFit weibull;
  HazardTrend trend = HazardTrend::kUndecided;
  std::optional<LognormalFit> lognormal;     // empty: no spread is best
  std::optional<FormComparison> comparison;  // with the lognormal
};

struct LifeAnswer {
  std::uint64_t lives = 0, failures = 0;
  double km_at_risk = 0;  // all of them together
  double longest = 0;     // beyond it every estimate is drawn out by the fitted form alone
  // Of parts whole at `starts`, which is 0 when enough were watched from new. Lives that ended
  // before it are in the fit but not in the curve.
  double starts = 0;
  std::optional<SurvivalCurve> curve;  // empty below kFewestToFit failures
  std::optional<FittedLife> fit;
  std::string not_fitted;  // why there is no fit; empty with one
};

// Whether an age estimated from a life may be shown as a figure.
enum class AgeTold {
  kTold,
  kTooFew,      // its interval spans more than kWidestTold times: it tells nothing
  kBeforeSeen,  // before `starts`: of ages at which too few were at risk the form speaks alone
  kBeyondSeen,  // beyond `longest`: likewise
};
template <>
inline constexpr EnumTable<AgeTold, 4> kEnumNames<AgeTold>{{{AgeTold::kTold, "yes"},
                                                            {AgeTold::kTooFew, "too_few"},
                                                            {AgeTold::kBeforeSeen, "before_seen"},
                                                            {AgeTold::kBeyondSeen, "beyond_seen"}}};
inline constexpr double kWidestTold = 10;

[[nodiscard]] AgeTold age_told(const LifeAnswer& life, const Estimate& age);

// Whether the interval is narrow enough to tell anything. Requires: low >= 0.
[[nodiscard]] inline bool tells(const Estimate& estimate) {
  return estimate.high <= kWidestTold * estimate.low;
}

struct FailureMileage {
  std::string cause;  // cause key
  VehicleScope scope;
  CaseMileages cases;
  std::vector<std::string> families;  // of the population, in lower case; empty: all vehicles
  VehicleCounts vehicles;
  LifeAnswer first;
  std::uint32_t replaced_here = 0;           // parts, followed afterwards or not
  std::optional<LifeAnswer> since_replaced;  // empty below kFewestReplaced lives
};

struct MileageQuestion {
  std::string cause;  // cause key; cause_words.hpp reads one from words
  VehicleScope scope;
};

[[nodiscard]] Result<FailureMileage> failure_mileage(const std::vector<VehicleHistory>& histories,
                                                     const MileageQuestion& question);

// The share of parts whole at `starts` that the fitted Weibull has whole at that km.
// Requires: km >= answer.starts, a fit.
[[nodiscard]] double fitted_share_whole(const LifeAnswer& answer, double km);

}  // namespace shoplore
