// The track record and the fit as a person meets them, on shops too small to tell much.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::closed_case;
using testing::Ended;
using testing::TestShop;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

constexpr int kHeld = 8;  // closed cases of every TestShop

void add_cases(const TestShop& shop, int count) {
  std::string lines;
  for (int i = 0; i < count; ++i) {
    const bool hose = i % 3 == 0;
    lines += closed_case("job-" + std::to_string(i), hose ? "charge_air_hose" : "wastegate_linkage",
                         hose ? "split" : "seized_open", hose ? "present" : "absent") +
             "\n";
  }
  ASSERT_EQ(shop.run({"import", "-"}, lines).exit_code, 0);
}

TEST(TrackRecordVerb, FewCasesAreSaidToBeTooFew) {
  const TestShop shop;
  add_cases(shop, 6);
  const Ended ended = shop.run({"track-record"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "too few");
  const json record = json::parse(shop.run({"track-record", "--json"}).out);
  EXPECT_EQ(record.at("cases"), kHeld + 6);
  EXPECT_EQ(record.at("enough_to_tell"), false);
  EXPECT_EQ(record.at("all").at("levels").size(), 3U);
}

TEST(TrackRecordVerb, EnoughCasesGiveATable) {
  const TestShop shop;
  add_cases(shop, 60);
  const Ended ended = shop.run({"track-record", "--folds", "5", "--seed", "2"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "first three");
  EXPECT_SAYS(ended.out, "a quarter");
  // The symptom tells the two causes apart.
  const json record = json::parse(shop.run({"track-record", "--json"}).out);
  EXPECT_EQ(record.at("all").at("levels").at(0).at("first"), 1.0);
}

TEST(TrackRecordVerb, RefusesFoldsThatMakeNoSense) {
  const TestShop shop;
  for (const char* folds : {"1", "21", "-3", "many"}) {
    EXPECT_EQ(shop.run({"track-record", "--folds", folds}).exit_code, 2) << folds;
  }
}

TEST(FitVerb, RefusesASeedThatIsNoNumberFromNoughtOn) {
  const TestShop shop;
  for (const char* seed : {"-1", "abc", ""}) {
    EXPECT_EQ(shop.run({"fit", "--seed", seed}).exit_code, 2) << seed;
    EXPECT_EQ(shop.run({"track-record", "--seed", seed}).exit_code, 2) << seed;
  }
}

TEST(FitVerb, BelowTwoHundredCasesTheStartValuesStand) {
  const TestShop shop;
  add_cases(shop, 9);
  const Ended ended = shop.run({"fit"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "too few to fit");
  const json fit = json::parse(shop.run({"fit", "--json"}).out);
  EXPECT_EQ(fit.at("questions"), 0);
  EXPECT_EQ(fit.at("cases"), kHeld + 9);
}

TEST(FitVerb, AnImportOfEnoughCasesFitsByItself) {
  const TestShop shop;
  add_cases(shop, 220);
  const json fit = json::parse(shop.run({"fit", "--json"}).out);
  EXPECT_EQ(fit.at("cases"), kHeld + 220);
  EXPECT_EQ(fit.at("questions"), kHeld + 220);
  EXPECT_LE(fit.at("log_loss").get<double>(), fit.at("start_log_loss").get<double>());
  EXPECT_GE(fit.at("scarcity").get<double>(), 0);
  EXPECT_SAYS(shop.run({"fit"}).out, "likeness to past cases as a whole");
}

}  // namespace
}  // namespace shoplore
