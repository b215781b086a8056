// What share of repairs stayed fixed for a time or a distance, counting each only as long as it
// was watched: the product-limit curve (query/lives/kaplan_meier.hpp) of fix lives.
//
// Kept honest: lives not heard of, or without a day, are counted and left out; a share is given
// only where enough is known (below). That a share is of our own repairs is for the printer to
// say: who went elsewhere afterwards never tells us. A repair that stands under a cause only
// because a `wrong_cause` was revised came back by construction; where it cured, the case counts
// elsewhere.
//
// A share is given when
// - at least kFewestDecided lives are decided by then: came back by then, or still watched then;
// - at least one is still watched then, or all watched had come back before;
// - for distances: km are known of at least kLeastKmKnown of the lives that ended, and of those
//   that did not. Comebacks bring their odometer along, lasting repairs often do not: leaving out
//   more of one kind than of the other would bend the share.
// Its interval is 90 % log-log; where the curve is still at 1 or already at 0 that has no width,
// and the Jeffreys interval of those decided stands instead. Where nothing is censored the share
// is the plain one: lasted of all.
//
// Plain values and pure functions, any thread; they cannot fail.
#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/intervals.hpp"
#include "query/lives/lives.hpp"
#include "query/outcomes/fix_lives.hpp"

namespace shoplore {

inline constexpr std::uint32_t kFewestDecided = 5;  // as many as a width of `ask` needs
inline constexpr double kLeastKmKnown = 0.75;

inline constexpr std::array kShownDays{std::chrono::days{90}, std::chrono::days{365},
                                       std::chrono::days{730}};
inline constexpr std::array kShownKm{Kilometres{10'000}, Kilometres{20'000}};

// `After` is std::chrono::days or Kilometres.
template <class After>
struct StayedShare {
  After after{};
  double share = 1;  // still fixed then
  Interval interval;
  std::uint32_t came_back = 0;      // by then
  std::uint32_t still_watched = 0;  // fixed then and known to be
};

struct ReasonCount {
  std::optional<ComebackReason> reason;  // empty: nobody wrote it down
  std::uint32_t cases = 0;
};

// The lives of one group of repairs.
struct StayedFixed {
  std::vector<std::string> fixes;  // what was done together; empty: whatever was done
  std::uint32_t cases = 0;         // the sum of the next three
  std::uint32_t came_back = 0, still_fixed = 0, not_heard_of = 0;
  std::uint32_t no_day = 0;                // of those heard of: in no curve
  std::uint32_t seen_by_later_visits = 0;  // of still_fixed: nobody recorded it, a visit shows it
  std::vector<ReasonCount> reasons;        // of came_back, most cases first
  std::vector<StayedShare<std::chrono::days>> by_days;  // of kShownDays, where enough is known
  std::vector<StayedShare<Kilometres>> by_km;           // of kShownKm, likewise
};

// All of them as one group, whatever was done.
[[nodiscard]] StayedFixed stayed_fixed(std::span<const FixLife> lives);

// Those of one cause by what was done together: each case counts once. Most cases first, then by
// keys.
[[nodiscard]] std::vector<StayedFixed> stayed_fixed_by_fixes(std::span<const FixLife> lives,
                                                             std::string_view cause_key);

// Comebacks a vehicle within kRepeatDays of its first repair of a kind: how often one vehicle
// comes again for the same.
inline constexpr std::chrono::days kRepeatDays{730};

struct RepeatComebacks {
  std::uint32_t vehicles = 0;  // watched at all; one without a token is its own
  std::uint32_t comebacks = 0;
  std::uint32_t more_than_once = 0;  // vehicles that came back again
  // Comebacks a vehicle by kRepeatDays; empty before the first comeback and where nobody was
  // watched that long.
  std::optional<Estimate> by_then;
};

// By the mean cumulative function (query/lives/mean_cumulative.hpp): a vehicle is watched from its
// first repair among these lives to the end of the last one it was heard of.
[[nodiscard]] RepeatComebacks repeat_comebacks(std::span<const FixLife> lives);

// The lives of one cause, in their order.
[[nodiscard]] std::vector<FixLife> lives_of_cause(std::span<const FixLife> lives,
                                                  std::string_view cause_key);

}  // namespace shoplore
