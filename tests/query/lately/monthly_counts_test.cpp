// Monthly counts of a random workshop's records against walking the cases one by one.
#include "query/lately/monthly_counts.hpp"

#include <gtest/gtest.h>

#include <map>

#include "indexer/case_json.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"
#include "query/snapshot.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore {
namespace {

using std::chrono::year_month;

year_month month_closed(Date day) {
  const std::chrono::year_month_day date(day.days);
  return date.year() / date.month();
}

using Key = std::pair<std::string, std::string>;

// By cause and family ("" for any), month by month, as the records say.
std::map<Key, std::map<year_month, std::uint32_t>> count_plainly(const testing::DemoShop& shop) {
  std::map<Key, std::map<year_month, std::uint32_t>> counts;
  const auto visited =
      shop.records().store().for_each_latest([&](const Change& change) -> Result<void> {
        const Case record = case_from_json(change.body).value();
        if (record.state != CaseState::kClosed) return {};
        const std::string key = cause_key(*record.cause, shop.vocabulary());
        const year_month month = month_closed(*record.closed);
        ++counts[{key, ""}][month];
        ++counts[{"", ""}][month];
        const std::string family = lower_case(record.vehicle.engine_family);
        if (family.empty()) return {};
        ++counts[{key, family}][month];
        ++counts[{"", family}][month];
        return {};
      });
  EXPECT_TRUE(visited);
  return counts;
}

void expect_series(const CountSeries& series, const MonthlyCounts& counts,
                   const std::map<year_month, std::uint32_t>& expected) {
  std::uint32_t earlier = 0;
  for (const auto& [month, cases] : expected) {
    if (month < counts.first) earlier += cases;
  }
  EXPECT_EQ(series.earlier, earlier) << series.cause << " " << series.engine_family;
  for (std::size_t i = 0; i < counts.months(); ++i) {
    const auto found = expected.find(counts.month(i));
    EXPECT_EQ(series.by_month[i], found == expected.end() ? 0U : found->second)
        << series.cause << " " << series.engine_family << " " << month_text(counts.month(i));
  }
}

TEST(MonthlyCounts, EqualAWalkThroughTheRecords) {
  const testing::DemoShop shop(600);
  const auto plain = count_plainly(shop);
  const Date as_of = parse_date("2026-10-31").value();
  const MonthlyCounts counts = monthly_counts(shop.ledger(), as_of).value();
  EXPECT_EQ(counts.months(), kMostMonths);
  EXPECT_EQ(month_text(counts.month(kMostMonths - 1)), "2026-10");
  std::size_t pairs = 0, causes = 0, families = 0;
  for (const auto& [key, by_month] : plain) {
    if (!key.first.empty()) ++(key.second.empty() ? causes : pairs);
    if (key.first.empty() && !key.second.empty()) ++families;
  }
  EXPECT_EQ(counts.causes.size(), causes);
  EXPECT_EQ(counts.pairs.size(), pairs);
  EXPECT_EQ(counts.families.size(), families);
  expect_series({"", "", counts.cases,
                 [&] {
                   std::uint32_t earlier = 0;
                   for (const CountSeries& cause : counts.causes) earlier += cause.earlier;
                   return earlier;
                 }()},
                counts, plain.at({"", ""}));
  for (const auto* list : {&counts.causes, &counts.pairs, &counts.families}) {
    for (const CountSeries& series : *list) {
      expect_series(series, counts, plain.at({series.cause, series.engine_family}));
    }
  }
}

TEST(MonthlyCounts, AMonthThatHasNotEndedIsLeftOut) {
  EXPECT_EQ(month_text(last_whole_month(parse_date("2026-10-30").value())), "2026-09");
  EXPECT_EQ(month_text(last_whole_month(parse_date("2026-10-31").value())), "2026-10");
  EXPECT_EQ(month_text(last_whole_month(parse_date("2024-02-28").value())), "2024-01");
  EXPECT_EQ(month_text(last_whole_month(parse_date("2024-02-29").value())), "2024-02");
  EXPECT_EQ(month_text(last_whole_month(parse_date("2026-01-01").value())), "2025-12");
}

TEST(MonthlyCounts, ADayBeforeTheFirstCaseIsNamed) {
  const testing::DemoShop shop(200);
  const auto counts = monthly_counts(shop.ledger(), parse_date("2017-06-15").value());
  ASSERT_FALSE(counts);
  EXPECT_EQ(counts.error().code, ErrorCode::kInvalidInput);
  EXPECT_EQ(counts.error().place, "as of");
  EXPECT_NE(counts.error().message.find("2018-1"), std::string::npos) << counts.error().message;
}

TEST(MonthlyCounts, WithoutACaseThereAreNone) {
  EXPECT_EQ(monthly_counts(Ledger(), parse_date("2026-06-15").value())->months(), 0U);
}

}  // namespace
}  // namespace shoplore
