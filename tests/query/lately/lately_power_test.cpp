// How soon a rise is flagged, and how often something is that did not change: simulated workshops
// with four years behind them, looked at after every month as lately() does for everybody.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <set>
#include <string>
#include <utility>

#include "query/lately/lately.hpp"
#include "tests/query/lately/simulated_workshop.hpp"

namespace shoplore {
namespace {

using testing::Rise;
using testing::SimulatedWorkshop;

constexpr std::uint64_t kSeed = 20261126;
constexpr std::size_t kMonthsBehind = 48, kYear = 12, kMonthsToFlag = 4;

// Whatever is shown as risen or new, by cause and family.
using Flags = std::set<std::pair<std::string, std::string>>;

Flags flags_of(const Lately& lately) {
  Flags flags;
  for (const LatelyRow& row : lately.rows) {
    if (row.trend == Trend::kRisen) flags.insert({row.cause.component, row.engine_family});
  }
  for (const NewPairing& pairing : lately.pairings) {
    flags.insert({pairing.cause.component, pairing.engine_family});
  }
  return flags;
}

// Flags that were not there the month before, over a year in which nothing changes.
std::size_t false_flags_of_a_year(SimulatedWorkshop& shop, MonthlyCounts& counts) {
  Flags before = flags_of(lately(counts));
  std::size_t fresh = 0;
  for (std::size_t month = 0; month < kYear; ++month) {
    shop.add_month(counts);
    const Flags now = flags_of(lately(counts));
    for (const auto& flag : now) {
      if (!before.contains(flag)) ++fresh;
    }
    before = now;
  }
  return fresh;
}

// The month after which the risen cause itself is flagged; 0 when it is not in time.
std::size_t months_to_flag(SimulatedWorkshop& shop, MonthlyCounts& counts, const Rise& rise) {
  for (std::size_t month = 1; month <= kMonthsToFlag; ++month) {
    shop.add_month(counts, {rise});
    if (flags_of(lately(counts)).contains({"part" + std::to_string(rise.cause), ""})) return month;
  }
  return 0;
}

// Neither the commonest nor one with a season: its rate is the same all year.
std::size_t cause_of_run(std::size_t run) {
  const std::size_t cause = 10 + run % 40;
  return cause % 3 == 0 ? cause + 1 : cause;
}

MonthlyCounts four_years(SimulatedWorkshop& shop) {
  MonthlyCounts counts;
  for (std::size_t month = 0; month < kMonthsBehind; ++month) shop.add_month(counts);
  return counts;
}

TEST(LatelyPower, ThreeAMonthMadeToRiseIsFlaggedInTimeAndLittleElseIs) {
  constexpr std::size_t kRuns = 200;
  std::size_t false_flags = 0, flagged = 0, months = 0;
  for (std::size_t run = 0; run < kRuns; ++run) {
    SimulatedWorkshop shop(kSeed + run);
    const Rise rise{cause_of_run(run), 2.5, 0};
    shop.set_cases_a_month(rise.cause, 3);
    MonthlyCounts counts = four_years(shop);
    false_flags += false_flags_of_a_year(shop, counts);
    const std::size_t month = months_to_flag(shop, counts, rise);
    if (month > 0) ++flagged;
    months += month;
  }
  const double share = static_cast<double>(flagged) / kRuns;
  const double a_year = static_cast<double>(false_flags) / kRuns;
  fmt::print(
      "seed {}: {} runs; 3 cases a month x2.5 flagged within {} months in {:.1f} %, after "
      "{:.1f} months; {:.2f} false flags a workshop and year\n",
      kSeed, kRuns, kMonthsToFlag, 100 * share,
      static_cast<double>(months) / static_cast<double>(flagged), a_year);
  EXPECT_GE(share, 0.80);
  EXPECT_LE(a_year, 1.0);
}

TEST(LatelyPower, RarerCausesNeedASteeperRise) {
  constexpr std::size_t kRuns = 60;
  double last = 0;
  for (const double times : {2.5, 4.0}) {
    last = 0;
    for (const double a_month : {0.5, 1.0, 2.0}) {
      std::size_t flagged = 0;
      for (std::size_t run = 0; run < kRuns; ++run) {
        SimulatedWorkshop shop(kSeed + 1'000 + run);
        const Rise rise{cause_of_run(run), times, 0};
        shop.set_cases_a_month(rise.cause, a_month);
        MonthlyCounts counts = four_years(shop);
        if (months_to_flag(shop, counts, rise) > 0) ++flagged;
      }
      const double share = static_cast<double>(flagged) / kRuns;
      fmt::print("seed {}: {} runs; {} cases a month x{} flagged within {} months in {:.0f} %\n",
                 kSeed + 1'000, kRuns, a_month, times, kMonthsToFlag, 100 * share);
      EXPECT_GE(share, last) << "commoner causes are flagged no later";
      last = share;
    }
  }
  EXPECT_GE(last, 0.9) << "two a month made four times as many cannot be missed";
}

}  // namespace
}  // namespace shoplore
