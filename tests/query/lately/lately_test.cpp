// What stands out and what does not, in monthly counts given outright.
#include "query/lately/lately.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <numeric>

#include "query/lately/lately_view.hpp"

namespace shoplore {
namespace {

using ByMonth = std::vector<std::uint32_t>;

// As many in each month as `count` says of its number.
ByMonth monthly(std::size_t months, const std::function<std::uint32_t(std::size_t)>& count) {
  ByMonth counts;
  for (std::size_t month = 0; month < months; ++month) counts.push_back(count(month));
  return counts;
}

// One failure in a workshop that always has a hundred other cases a month.
MonthlyCounts one_failure(const ByMonth& counts) {
  MonthlyCounts all;
  all.first = std::chrono::year(2022) / 1;
  all.causes.push_back({"pump:seized", "", counts, 0});
  all.causes.push_back({"rest:worn", "", ByMonth(counts.size(), 100), 0});
  for (const std::uint32_t count : counts) all.cases.push_back(100 + count);
  return all;
}

const LatelyRow& row_of(const Lately& lately, const std::string& component,
                        const std::string& family = "") {
  return *std::find_if(lately.rows.begin(), lately.rows.end(), [&](const LatelyRow& row) {
    return row.cause.component == component && row.engine_family == family;
  });
}

Change change_of(const MonthlyCounts& counts) {
  return row_of(lately(counts), "pump").change;
}

// 3 a month, and from three months before the end as many as `risen`.
MonthlyCounts rising_to(std::uint32_t risen) {
  return one_failure(monthly(48, [&](std::size_t month) { return month < 45 ? 3 : risen; }));
}

TEST(Lately, ARiseStandsOutWithTheMonthItBegan) {
  const Lately now = lately(rising_to(10));
  const LatelyRow& row = row_of(now, "pump");
  EXPECT_EQ(row.change, Change::kRisen);
  EXPECT_EQ(month_text(row.sum->began), "2025-10");
  ASSERT_EQ(row.windows.size(), 3U);
  EXPECT_EQ(row.windows[0].cases, 30U);
  EXPECT_EQ(row.windows[0].before, 135U);
  // 330 cases against 45 months of 103.
  EXPECT_NEAR(row.windows[0].expected, 135.0 * 330 / (45 * 103), 1e-9);
  EXPECT_EQ(row.windows[2].cases, 57U);
  EXPECT_EQ(month_text(now.last), "2025-12");
  EXPECT_EQ(row.drawn.size(), kDrawnMonths);
  EXPECT_EQ(row.drawn.back(), 10U);
  EXPECT_EQ(row.earlier.front().year, 2024);
  EXPECT_EQ(row.earlier.front().cases, 9U);
}

TEST(Lately, NearMissesDoNot) {
  EXPECT_EQ(change_of(rising_to(3)), Change::kNone);
  EXPECT_EQ(change_of(rising_to(5)), Change::kNone);
  // One odd month long ago.
  EXPECT_EQ(change_of(one_failure(monthly(48, [](std::size_t m) { return m == 20 ? 12U : 3U; }))),
            Change::kNone);
}

TEST(Lately, TwiceTheWorkIsNotTwiceTheFailures) {
  MonthlyCounts counts = rising_to(9);
  for (std::size_t month = 45; month < 48; ++month) {
    counts.causes[1].by_month[month] = 300;
    counts.cases[month] = 309;
  }
  EXPECT_EQ(change_of(counts), Change::kNone);
}

TEST(Lately, AFallStandsOutAsOne) {
  const MonthlyCounts counts =
      one_failure(monthly(48, [](std::size_t month) { return month < 42 ? 8U : 1U; }));
  EXPECT_EQ(change_of(counts), Change::kFallen);
  EXPECT_EQ(seen_by({{}, "", LatelyRows::kRisen}, lately(counts))->rows.size(), 0U);
  EXPECT_EQ(seen_by({{}, "", LatelyRows::kFallen}, lately(counts))->rows.size(), 1U);
}

// Frost: ten times as many from December to February as in summer, every year, now too.
std::uint32_t every_winter(std::size_t month) {
  constexpr std::array<std::uint32_t, 12> kYear{10, 9, 7, 4, 2, 1, 1, 1, 2, 4, 7, 9};
  return kYear[month % 12];
}

TEST(Lately, WhatComesEveryWinterIsNoNews) {
  for (const std::size_t months : {38U, 50U, 62U}) {
    const Lately now = lately(one_failure(monthly(months, every_winter)));
    EXPECT_EQ(row_of(now, "pump").change, Change::kNone) << months;
    EXPECT_EQ(row_of(now, "pump").season, Season::kAllowedFor) << months;
  }
}

TEST(Lately, AWinterWorseThanAnyIsNews) {
  const MonthlyCounts counts = one_failure(
      monthly(50, [](std::size_t month) { return every_winter(month) * (month < 47 ? 1U : 3U); }));
  EXPECT_EQ(change_of(counts), Change::kRisen);
}

// Too few years to tell the season; the year before says as much.
TEST(Lately, WithOneWinterBehindTheYearBeforeSpeaks) {
  EXPECT_EQ(change_of(one_failure(monthly(26, every_winter))), Change::kNone);
  EXPECT_EQ(row_of(lately(one_failure(monthly(26, every_winter))), "pump").season,
            Season::kUnknown);
  EXPECT_EQ(change_of(one_failure(monthly(
                26, [](std::size_t m) { return m < 23 ? every_winter(m) : 3 * every_winter(m); }))),
            Change::kRisen);
}

TEST(Lately, TooFewMonthsAreComparedWithNothing) {
  const Lately fourteen = lately(one_failure(ByMonth(14, 3)));
  EXPECT_EQ(fourteen.compared, 0U);
  EXPECT_EQ(fourteen.cases, 14U * 103);
  const Lately fifteen = lately(one_failure(ByMonth(15, 3)));
  EXPECT_EQ(fifteen.compared, 2U);
  EXPECT_EQ(fifteen.rows.front().windows.size(), 1U);
  EXPECT_FALSE(fifteen.rows.front().sum);
  EXPECT_EQ(lately({}).cases, 0U);
}

// The failure has been known, so has the family; together they are new.
MonthlyCounts with_pairing(std::uint32_t cases, std::uint32_t family_before,
                           std::uint32_t earlier) {
  MonthlyCounts counts = one_failure(ByMonth(48, 3));
  ByMonth pair(48), family(48);
  pair[44] = cases;
  family[44] = cases;
  family[10] = family_before;
  counts.pairs.push_back({"pump:seized", "bw16d", pair, earlier});
  counts.families.push_back({"", "bw16d", family, 0});
  return counts;
}

TEST(Lately, APairingIsNewWhenBothWereKnown) {
  const Lately now = lately(with_pairing(kShownPairing, 20, 0));
  ASSERT_EQ(now.pairings.size(), 1U);
  EXPECT_EQ(now.pairings[0].engine_family, "bw16d");
  EXPECT_EQ(now.pairings[0].cases, kShownPairing);
  EXPECT_EQ(month_text(now.pairings[0].first), "2025-09");
  EXPECT_EQ(now.pairings[0].cause_before, 108U);
  EXPECT_EQ(now.pairings[0].family_before, 20U);
}

TEST(Lately, NearMissesOfANewPairing) {
  EXPECT_TRUE(lately(with_pairing(kShownPairing - 1, 20, 0)).pairings.empty()) << "too few";
  EXPECT_TRUE(lately(with_pairing(kShownPairing, 0, 0)).pairings.empty()) << "new family";
  EXPECT_TRUE(lately(with_pairing(kShownPairing, 20, 1)).pairings.empty()) << "met long ago";
}

TEST(Lately, AViewOfOneFamilyShowsOnlyIt) {
  const auto seen = seen_by({{}, "BW16D", LatelyRows::kAll}, lately(with_pairing(5, 20, 0)));
  ASSERT_EQ(seen->rows.size(), 1U);
  EXPECT_EQ(seen->rows[0].engine_family, "bw16d");
  EXPECT_EQ(seen->pairings.size(), 1U);
}

TEST(Lately, AViewNamesWhatItCannotShow) {
  const auto family = seen_by({{}, "XX99X", LatelyRows::kAll}, lately(with_pairing(5, 20, 0)));
  ASSERT_FALSE(family);
  EXPECT_EQ(family.error().place, "engine family");
  const auto months = seen_by({12, "", LatelyRows::kRisen}, lately(one_failure(ByMonth(20, 3))));
  ASSERT_FALSE(months);
  EXPECT_EQ(months.error().place, "months");
}

TEST(Lately, AViewOfOneWindowGoesByItsQ) {
  // Over the last twelve months the rise of three is not large.
  const Lately now = lately(rising_to(9));
  EXPECT_EQ(seen_by({3, "", LatelyRows::kRisen}, now)->rows.size(), 1U);
  EXPECT_EQ(seen_by({12, "", LatelyRows::kRisen}, now)->rows.size(),
            stands_out(row_of(now, "pump").windows[2]) ? 1U : 0U);
}

}  // namespace
}  // namespace shoplore
