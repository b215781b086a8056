#include "corpus-demo/calendar.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <string_view>

#include "corpus-demo/generator.hpp"

namespace shoplore {
namespace {

World one_pattern(const Season& season) {
  World world;
  FailurePattern pattern;
  pattern.share = 1;
  pattern.season = season;
  world.patterns = {pattern};
  return world;
}

TEST(Calendar, AYearWithoutSeasonsRunsEvenly) {
  const Calendar calendar(one_pattern(kAllYear));
  EXPECT_TRUE(calendar.day_of(0) == kFirstDay);
  const auto span = (kLastDay.days - kFirstDay.days).count() + 1;
  for (const double share : {0.1, 0.25, 0.5, 0.9}) {
    const auto day = (calendar.day_of(share).days - kFirstDay.days).count();
    EXPECT_NEAR(static_cast<double>(day), share * static_cast<double>(span), 1.0) << share;
  }
  EXPECT_TRUE(calendar.day_of(1 - 1e-12) == kLastDay);
}

// The first November of the books has 30 days; eight years have 240 of them.
TEST(Calendar, NothingArrivesInAMonthWithoutFailures) {
  Season november{};
  november[10] = 1;
  const Calendar calendar(one_pattern(november));
  for (int i = 0; i < 240; ++i) {
    EXPECT_EQ(month_of(calendar.day_of((i + 0.5) / 240)), 10u) << i;
  }
}

TEST(Calendar, APatternKeepsItsShareWhateverItsSeason) {
  World world = one_pattern(kAllYear);
  world.patterns.push_back(world.patterns[0]);
  world.patterns[0].season = {3, 2, 1, 0, 0, 0, 0, 0, 0, 0, 1, 2};
  const Calendar calendar(world);
  std::array<double, 2> sums{};
  for (Date day = kFirstDay; day <= kLastDay; day.days += std::chrono::days(1)) {
    for (std::size_t i = 0; i < 2; ++i) sums[i] += calendar.arrivals(day)[i];
  }
  EXPECT_NEAR(sums[0], sums[1], 1e-6);
}

struct Half {
  std::string_view pattern, name;
  std::array<std::size_t, 6> months;
};

// In the drawn books, against the season's own share of those months, five standard deviations;
// comebacks, which keep no season, are left out.
TEST(Calendar, SeasonsShowInTheBooks) {
  const World world = demo_world();
  const Vocabulary vocabulary = *Vocabulary::built_in();
  std::vector<std::pair<std::size_t, std::size_t>> opened;  // pattern, month
  generate_workshop(world, vocabulary, {4'800, 1}, [&](const DemoCase& drawn) {
    if (drawn.record.state != CaseState::kClosed || !drawn.pattern) return;
    if (drawn.record.follows.empty()) {
      opened.emplace_back(*drawn.pattern, month_of(drawn.record.opened));
    }
  });
  constexpr std::array<std::size_t, 6> winter{9, 10, 11, 0, 1, 2}, summer{3, 4, 5, 6, 7, 8};
  for (const Half& half : {Half{"battery_worn", "winter", winter},
                           Half{"glow_module_internal_fault", "winter", winter},
                           Half{"wiring_connector_water", "winter", winter},
                           Half{"ac_condenser_leaking", "summer", summer},
                           Half{"fan_module_internal_fault", "summer", summer}}) {
    const auto number = static_cast<std::size_t>(
        std::find_if(world.patterns.begin(), world.patterns.end(),
                     [&](const FailurePattern& each) { return each.id == half.pattern; }) -
        world.patterns.begin());
    ASSERT_LT(number, world.patterns.size()) << half.pattern;
    const Season& season = world.patterns[number].season;
    double expected = 0;
    for (const std::size_t month : half.months) expected += season[month];
    expected /= std::accumulate(season.begin(), season.end(), 0.0);
    int inside = 0, all = 0;
    for (const auto& [pattern, month] : opened) {
      if (pattern != number) continue;
      ++all;
      inside += std::count(half.months.begin(), half.months.end(), month) > 0 ? 1 : 0;
    }
    EXPECT_GT(expected, 0.6) << half.pattern;
    EXPECT_NEAR(inside, all * expected, 5 * std::sqrt(all * expected * (1 - expected)) + 1)
        << half.pattern << " in " << half.name;
  }
}

}  // namespace
}  // namespace shoplore
