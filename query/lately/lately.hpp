// What fails more often lately than it did, or less: every cause, and every cause on every engine
// family, by calendar months.
//
// Two ways to stand out, each with its own bound on chance:
// * windows: the last 3, 6 and 12 months against all before (up to six years), the exact
//   comparison of poisson_rates.hpp, with q over everything that could stand out
//   (could_stand_out.hpp): shown at q <= kShownRate.
// * the CUSUM of the last 12 months (cusum.hpp) against all before them, looking for two and a half
//   times the usual: decision intervals such that only so many series are expected above theirs in
//   a month in which nothing has changed. It also tells the month a rise began.
// Exposure is the number of all counted cases of a month: twice the work is not twice the
// failures. Where there are two years before the last twelve months, months weigh by the cause's
// own yearly course (season.hpp), a pair's by its cause's. Otherwise a rise is shown only if it is
// also one against the same months of the year before, where there are those.
// A pairing is an engine family on which a cause was met for the first time, when both were known.
// It does not say why: a new customer with ten vans looks like a wave of failures, and comebacks
// of one vehicle count each time. Nothing is said of other workshops.
// Pure functions, any thread; they cannot fail.
#pragma once

#include <array>
#include <optional>

#include "indexer/case_keys.hpp"
#include "query/lately/monthly_counts.hpp"
#include "query/lately/poisson_rates.hpp"

namespace shoplore {

inline constexpr std::array<std::size_t, 3> kLatelyMonths{3, 6, 12};
// Months before a window that can be called usual.
inline constexpr std::size_t kFewestMonthsBefore = 12;
// Windows stand out at this rate of false discoveries.
inline constexpr double kShownRate = 0.01;
// Series expected above their decision interval in a month in which nothing has changed. Nearly
// all of it goes to causes: their rises are what a workshop can act on.
inline constexpr double kFalseSignalsOfCauses = 0.09, kFalseSignalsOfPairs = 0.01;
// The rise a CUSUM looks for, as a multiple of the usual, and the cases that make a usual.
inline constexpr double kLookedForRise = 2.5;
inline constexpr std::uint32_t kFewestForSum = 4;
// Cases a new pairing needs to be shown: fewer turn up every month.
inline constexpr std::uint32_t kShownPairing = 5;
// Months drawn.
inline constexpr std::size_t kDrawnMonths = 24;

// A window against all months before it.
struct WindowRate {
  std::size_t months = 0;
  std::uint32_t cases = 0, before = 0;  // of the failure
  double expected = 0;                  // cases in the window, were all as before
  RateRatio rate;                       // over what is expected, with the shown interval
  std::optional<double> q;              // none: too few cases to stand out either way
};

// The same three months of an earlier year.
struct EarlierYear {
  int year = 0;  // of the last of the months
  std::uint32_t cases = 0;
};

// The sum of what was above the usual in the last twelve months.
struct SumAbove {
  double sum = 0, interval = 0;     // it signals when sum >= interval
  std::chrono::year_month began{};  // of the rise the sum tells of; only when it is above 0
};

enum class Change { kNone, kRisen, kFallen };
template <>
inline constexpr EnumTable<Change, 3> kEnumNames<Change>{
    {{Change::kNone, "none"}, {Change::kRisen, "risen"}, {Change::kFallen, "fallen"}}};

// Whether a row's months were weighed by its yearly course.
enum class Season { kUnknown, kNoCourse, kAllowedFor };
template <>
inline constexpr EnumTable<Season, 3> kEnumNames<Season>{{{Season::kUnknown, "unknown"},
                                                          {Season::kNoCourse, "no_course"},
                                                          {Season::kAllowedFor, "allowed_for"}}};

struct LatelyRow {
  CauseParts cause;
  std::string engine_family;  // in lower case; empty: on any
  Change change = Change::kNone;
  std::vector<WindowRate> windows;   // as many of kLatelyMonths as there are months before
  std::optional<SumAbove> sum;       // none without twelve months before the last twelve
  std::vector<EarlierYear> earlier;  // the last three months in earlier years, latest first
  std::vector<std::uint32_t> drawn;  // by month, the last at the end; at most kDrawnMonths
  std::vector<double> usual;         // what was to be expected in each of them
  Season season = Season::kUnknown;
};

struct NewPairing {
  CauseParts cause;
  std::string engine_family;
  std::uint32_t cases = 0;                            // in the last twelve months
  std::chrono::year_month first{};                    // met for the first time
  std::uint32_t cause_before = 0, family_before = 0;  // cases of each before the last twelve months
};

struct Lately {
  std::chrono::year_month first{}, last{};      // months looked at
  std::uint32_t cases = 0;                      // counted in them
  std::array<std::uint32_t, 3> cases_lately{};  // in the last 3, 6, 12 months
  std::vector<std::string> engine_families;     // of all counted cases, in lower case
  std::size_t compared = 0;                     // rows, before any view; 0: too few months
  std::size_t tested = 0;                       // windows that q is reckoned over
  std::vector<LatelyRow> rows;                  // most cases above expectation in 12 months first
  std::vector<NewPairing> pairings;             // most cases first
};

// Rows of everything that was counted, changed or not.
[[nodiscard]] Lately lately(const MonthlyCounts& counts);

// Whether its q is at most kShownRate.
[[nodiscard]] bool stands_out(const WindowRate& window);

// Cases above expectation or below it, at least 0.
[[nodiscard]] double above_expected(const WindowRate& window);

}  // namespace shoplore
