// Brands that came back more often: only own cases, only enough of them, only a credible
// difference.
#include "query/watch_out/part_brands.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::HasSubstr;

constexpr auto kStayed = OutcomeStatus::kStayedFixed;
constexpr auto kBack = OutcomeStatus::kCameBack;
const std::string kCoil = "ignition_coil:internal_fault";

PlainCase fitted(const std::string& brand, OutcomeStatus outcome, const std::string& reason = {}) {
  PlainCase one{kCoil, {{"brand:ignition_coil", brand}}, {}, outcome, {"replace ignition_coil"}};
  if (!reason.empty()) one.items.push_back({"came_back:" + reason, "present"});
  return one;
}

std::vector<PlainCase> brand_shop(int back, int stayed, int other_back, int other_stayed) {
  std::vector<PlainCase> cases;
  add(cases, back, fitted("quickspark", kBack, "part"));
  add(cases, stayed, fitted("quickspark", kStayed));
  add(cases, other_back, fitted("harbour", kBack, "part"));
  add(cases, other_stayed, fitted("harbour", kStayed));
  return cases;
}

std::vector<Warning> warned(const std::vector<PlainCase>& cases, double probability = 0.6) {
  return WatchShop(cases).warned(warn_of_part_brands, {}, {kCoil}, {}, probability);
}

// 90 % Jeffreys by R 4.2.2 qbeta: 8 of 12 .431 to .849; 2 of 30 .019 to .173.
TEST(PartBrands, ABrandThatCameBackCrediblyMoreOftenIsNamedWithTheOthers) {
  const auto warnings = warned(brand_shop(8, 4, 2, 28));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kPartBrand);
  EXPECT_EQ(warnings[0].about, "quickspark");
  EXPECT_EQ(warnings[0].text,
            "In-house: ignition coil of brand \"quickspark\" came back 8 of 12 times (90 %: 43 to "
            "85 %), of other brands 2 of 30");
  EXPECT_EQ(ids(warnings[0]).size(), 8U);
  EXPECT_NEAR(warnings[0].how_often, 8 / 12.0 - 2 / 30.0, 1e-12);
}

TEST(PartBrands, TooFewOutcomesOrNoCredibleDifferenceIsSilent) {
  const struct {
    const char* name;
    int back, stayed, other_back, other_stayed;
    std::size_t warnings;
  } table[] = {{"ten and ten", 9, 1, 0, 10, 1},
               {"nine of this brand", 9, 0, 0, 30, 0},
               {"nine of the others", 10, 2, 0, 9, 0},
               {"intervals overlap", 5, 15, 4, 26, 0},
               {"the better brand", 0, 20, 15, 5, 1}};  // the other one is named
  for (const auto& each : table) {
    const auto warnings =
        warned(brand_shop(each.back, each.stayed, each.other_back, each.other_stayed));
    EXPECT_EQ(warnings.size(), each.warnings) << each.name;
  }
  EXPECT_EQ(warned(brand_shop(0, 20, 15, 5)).at(0).about, "harbour");
}

// A wrong cause, bad work or something unrelated is not the part's.
TEST(PartBrands, OnlyComebacksThatSaySomethingOfThePartCount) {
  const struct {
    const char* reason;
    std::size_t warnings;
  } table[] = {{"part", 1},        {"same_cause", 1},  {"unsaid", 1},
               {"wrong_cause", 0}, {"workmanship", 0}, {"unrelated", 0}};
  for (const auto& each : table) {
    std::vector<PlainCase> cases = brand_shop(0, 4, 2, 28);
    add(cases, 8, fitted("quickspark", kBack, each.reason));
    EXPECT_EQ(warned(cases).size(), each.warnings) << each.reason;
  }
}

TEST(PartBrands, OutcomesNobodyHeardOfCountNeitherWay) {
  std::vector<PlainCase> cases = brand_shop(8, 4, 2, 28);
  add(cases, 50, fitted("quickspark", OutcomeStatus::kUnknown));
  EXPECT_THAT(warned(cases).at(0).text, HasSubstr("8 of 12"));
}

TEST(PartBrands, BrandsOfPartsThatNoLikelyCauseReplacesAreNotNamed) {
  EXPECT_TRUE(warned(brand_shop(8, 4, 2, 28), 0.09).empty());
}

}  // namespace
}  // namespace shoplore::testing
