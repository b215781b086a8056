// At what mileage a failure comes, as a person asks it: visits imported, curve and fit read.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::Ended;
using testing::TestShop;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

// Vehicle shock absorbers, km: O'Connor, Practical Reliability Engineering, 2nd ed. (1985); Meeker
// & Escobar, Statistical Methods for Reliability Data (1998), table C.2. 38 units, 11 failures.
const std::vector<int> kFailed{6'700,  9'120,  12'200, 13'150, 14'300, 17'520,
                               20'100, 20'900, 22'700, 26'510, 27'490};
const std::vector<int> kWhole{6'950,  7'820,  8'790,  9'660,  9'820,  11'310, 11'690,
                              11'850, 11'880, 12'140, 12'870, 13'330, 13'470, 14'040,
                              17'540, 17'890, 18'450, 18'960, 18'980, 19'410, 20'100,
                              20'150, 20'320, 23'490, 27'410, 27'890, 28'100};

std::string visit_line(int vehicle, int km, const char* day, bool failed) {
  json record{{"schema", 1},
              {"ref", fmt::format("v{}-{}", vehicle, km)},
              {"state", failed ? "closed" : "no_complaint"},
              {"opened", day},
              {"vehicle",
               {{"make", "Dunmarrow"},
                {"engine_family", "DM15P"},
                {"mileage_km", km},
                {"token", fmt::format("{:032x}", vehicle)}}}};
  record["visit"] = {{"kind", failed ? "complaint" : "service"}};
  if (failed) {
    record["closed"] = day;
    record["cause"] = {{"component", "damper"}, {"failure", "leaking"}, {"proof", "seen"}};
  }
  return record.dump() + "\n";
}

// Every vehicle seen new and again at the end of what is known of it.
std::string shock_absorbers() {
  std::string lines;
  int vehicle = 0;
  for (const auto& [all, failed] : {std::pair(kFailed, true), std::pair(kWhole, false)}) {
    for (const int km : all) {
      lines += visit_line(++vehicle, 0, "2025-01-10", false);
      lines += visit_line(vehicle, km, "2026-02-10", failed);
    }
  }
  return lines;
}

class MileageVerb : public ::testing::Test {
 protected:
  void SetUp() override {
    const Ended imported = shop_.run({"import", "-"}, shock_absorbers());
    ASSERT_EQ(imported.exit_code, 0) << imported.err;
  }
  json answer() const {
    const Ended ended = shop_.run({"mileage", "damper leaking", "--json"});
    EXPECT_EQ(ended.exit_code, 0) << ended.err;
    return json::parse(ended.out);
  }
  TestShop shop_;
};

TEST_F(MileageVerb, ShockAbsorbersFailAsPublished) {
  const json life = answer()["from_first_visit"];
  EXPECT_EQ(life["lives"], 38);
  EXPECT_EQ(life["failures"], 11);
  EXPECT_EQ(life["km_at_risk"], 625'000);  // 625000/11: the exponential mean of the same source
  EXPECT_EQ(life["starts_km"], 0);
  const json& weibull = life["weibull"];
  // Location 10.2299 and scale .3164 of ln km: vignette of R package weibulltools; the digits
  // beyond by R survreg.
  EXPECT_NEAR(weibull["scale_km"]["value"].get<double>(), 27718.718, .05);
  EXPECT_NEAR(weibull["shape"]["value"].get<double>(), 3.1604703, 1e-5);
  EXPECT_NEAR(weibull["b50_km"]["value"].get<double>(), 24683.6, .1);
  EXPECT_NEAR(weibull["log_likelihood"].get<double>(), -123.9953612, 1e-5);
  EXPECT_EQ(weibull["hazard"], "rising");
  EXPECT_NEAR(life["lognormal"]["log_likelihood"].get<double>(), -124.6085499899, 1e-5);
  EXPECT_EQ(life["better"], "weibull");
  // survreg's 95 % interval of B10 is (10221.8, 18094.7): the same on the log scale at 90 %.
  const double error = std::log(18094.7 / 10221.8) / (2 * 1.959963985);
  const double low = 13600.0 * std::exp(-1.644853627 * error);
  const double high = 13600.0 * std::exp(1.644853627 * error);
  EXPECT_NEAR(weibull["b10_km"]["value"].get<double>(), 13600.0, .1);
  EXPECT_NEAR(weibull["b10_km"]["low"].get<double>(), low, 1);
  EXPECT_NEAR(weibull["b10_km"]["high"].get<double>(), high, 1);
}

TEST_F(MileageVerb, ShockAbsorbersAreCountedAsPublished) {
  // F(t) and Greenwood's error, by R survfit.
  const struct {
    int km;
    double failed, error;
  } rows[] = {
      {6'700, .0263158, .0259672},  {9'120, .0549536, .0378314},  {12'200, .0913015, .0509274},
      {13'150, .1291639, .0612846}, {14'300, .1727057, .0720465}, {17'520, .2162475, .0803418},
      {20'100, .2815602, .0966131}, {20'900, .3713652, .1191773}, {22'700, .4611702, .1317111},
      {26'510, .5689361, .1428055}, {27'490, .7126241, .1510890}};
  const json curve = answer()["from_first_visit"]["curve"];
  ASSERT_EQ(curve.size(), std::size(rows));
  for (std::size_t i = 0; i < curve.size(); ++i) {
    SCOPED_TRACE(rows[i].km);
    EXPECT_EQ(curve[i]["km"], rows[i].km);
    EXPECT_NEAR(1 - curve[i]["survival"].get<double>(), rows[i].failed, 5e-8);
    EXPECT_NEAR(curve[i]["standard_error"].get<double>(), rows[i].error, 5e-8);
  }
}

TEST_F(MileageVerb, TheTextSaysItInWordsKilometresAndMiles) {
  const Ended ended = shop_.run({"mileage", "damper", "leaking"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "damper, leaking");
  EXPECT_SAYS(ended.out, "38 vehicles of engine family DM15P");
  EXPECT_SAYS(ended.out, "17,500 km (10,900 mi)");  // the median case: 17520 / 1.609344 = 10886
  EXPECT_SAYS(ended.out, "13,600");
  EXPECT_SAYS(ended.out, "24,700");
  EXPECT_SAYS(ended.out, "8,450");  // 13600.0 / 1.609344 = 8450.6
  EXPECT_SAYS(ended.out, "It wears out");
  EXPECT_SAYS(ended.out, "Better fit: Weibull");
  EXPECT_SAYS(ended.out, "sees only what comes in");
}

TEST_F(MileageVerb, TheCurveIsWrittenAsAPicture) {
  const std::string file = (shop_.around() / "damper.svg").string();
  const Ended ended = shop_.run({"mileage", "damper", "leaking", "--svg", file});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  std::ifstream in(file);
  const std::string picture{std::istreambuf_iterator<char>(in), {}};
  EXPECT_EQ(picture.rfind("<?xml", 0), 0U);
  EXPECT_SAYS(picture, "<polyline");
  EXPECT_SAYS(picture, "fitted Weibull");
  const Ended refused =
      shop_.run({"mileage", "damper", "leaking", "--svg", (shop_.around() / "no/x.svg").string()});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_SAYS(refused.err, "no/x.svg");
}

TEST_F(MileageVerb, WhatCannotBeAnsweredSaysSo) {
  const struct {
    const char* name;
    std::vector<std::string> arguments;
    int exit_code;
    const char* says;
  } rows[] = {
      {"unknown words", {"flux", "capacitor"}, 2, "flux capacitor"},
      {"unknown id", {"dampr:leaking"}, 2, "near it: damper"},
      {"several", {"leaking"}, 0, "damper, leaking"},  // the records hold one
      {"never seen", {"thermostat", "stuck", "open"}, 1, "thermostat, stuck open"},
      {"not in that family", {"damper:leaking", "--engine-family", "BW16D"}, 1, "BW16D"},
      {"nobody has it",
       {"damper:leaking", "--engine-family", "ZZ9"},
       1,
       "No vehicle (engine family ZZ9) is on record"},
      {"no such make", {"damper:leaking", "--make", "Elvetia"}, 1, "Elvetia"},
      {"no cause", {}, 2, "cause"},
  };
  for (const auto& row : rows) {
    SCOPED_TRACE(row.name);
    std::vector<std::string> arguments{"mileage"};
    arguments.insert(arguments.end(), row.arguments.begin(), row.arguments.end());
    const Ended ended = shop_.run(arguments);
    EXPECT_EQ(ended.exit_code, row.exit_code) << ended.out << ended.err;
    EXPECT_SAYS(row.exit_code == 2 ? ended.err : ended.out, row.says);
  }
}

TEST(MileageVerbOfFew, TwoFailuresAreNamedAndNotFitted) {
  const TestShop shop;
  std::string lines;
  for (const auto& [vehicle, km] : {std::pair(1, 6'700), std::pair(2, 9'120)}) {
    lines += visit_line(vehicle, 0, "2025-01-10", false);
    lines += visit_line(vehicle, km, "2026-02-10", true);
  }
  ASSERT_EQ(shop.run({"import", "-"}, lines).exit_code, 0);
  const Ended ended = shop.run({"mileage", "damper leaking"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "6,700 km (4,160 mi) and 9,120 km (5,670 mi)");
  EXPECT_SAYS(ended.out, "fewer than 3 failures");
  EXPECT_EQ(ended.out.find("B10"), std::string::npos) << ended.out;
  const json answer = json::parse(shop.run({"mileage", "damper leaking", "--json"}).out);
  EXPECT_TRUE(answer["from_first_visit"]["weibull"].is_null());
  EXPECT_TRUE(answer["from_first_visit"]["curve"].empty());
}

}  // namespace
}  // namespace shoplore
