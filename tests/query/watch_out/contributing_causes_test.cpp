// What helped to bring a likely cause about.
#include "query/watch_out/contributing_causes.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::ElementsAre;

const std::string kLinkage = "wastegate_linkage:seized_open", kHose = "charge_air_hose:split";
const EvidenceItem kGasket{"contributing:exhaust_gasket:leaking", "present"};

std::vector<PlainCase> gasket_shop(int with, int without, int others) {
  std::vector<PlainCase> cases;
  add(cases, with, {kLinkage, {kGasket}});
  add(cases, without, {kLinkage, {}});
  add(cases, others, {kHose, {kGasket}});
  add(cases, 100 - others, {kHose, {}});
  return cases;
}

std::vector<Warning> warned(const std::vector<PlainCase>& cases, double probability = 0.6) {
  return WatchShop(cases).warned(warn_of_contributing_causes, {}, {kLinkage}, {}, probability);
}

// 90 % Jeffreys of 6 of 20: R 4.2.2 qbeta(c(.05, .95), 6.5, 14.5) = .158, .482.
TEST(ContributingCauses, AreNamedWithTheirShareOfTheCausesCases) {
  const auto warnings = warned(gasket_shop(6, 14, 2));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kContributingCause);
  EXPECT_EQ(warnings[0].about, "exhaust_gasket:leaking");
  EXPECT_EQ(warnings[0].cause, kLinkage);
  EXPECT_EQ(warnings[0].share.count, 6U);
  EXPECT_EQ(warnings[0].share.out_of, 20U);
  EXPECT_EQ(
      warnings[0].text,
      "wastegate linkage, seized open: in 6 of 20 cases exhaust gasket, leaking had helped to "
      "bring it about (90 %: 16 to 48 %); look there too, or it may come back");
  EXPECT_THAT(ids(warnings[0]), ElementsAre(6, 5, 4, 3, 2, 1));
}

TEST(ContributingCauses, OnesAsCommonBehindOtherCausesOrTooFewAreNoWarning) {
  const struct {
    const char* name;
    int with, without, others;
    std::size_t warnings;
  } table[] = {{"just below", 6, 14, 15, 1},
               {"just above", 6, 14, 17, 0},
               {"two only", 2, 3, 0, 0},
               {"three of five", 3, 2, 0, 1},
               {"never", 0, 20, 0, 0}};
  for (const auto& each : table) {
    EXPECT_EQ(warned(gasket_shop(each.with, each.without, each.others)).size(), each.warnings)
        << each.name;
  }
}

TEST(ContributingCauses, AnUnlikelyCausesAreNotWarnedOf) {
  EXPECT_TRUE(warned(gasket_shop(6, 14, 2), 0.09).empty());
}

}  // namespace
}  // namespace shoplore::testing
