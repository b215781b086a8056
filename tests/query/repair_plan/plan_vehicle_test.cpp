// Whose vehicle a plan is for, and names nobody knows.
#include "query/repair_plan/plan_vehicle.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/plain_cases.hpp"

namespace shoplore {
namespace {

using ::testing::HasSubstr;

Result<Vehicle> named(const VehicleNaming& naming, const Vehicle& of_case = {}) {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  static const Recogniser recogniser(vocabulary);
  static const testing::PlainCounter counter(
      {{"a:b", {{"make", "oldmake"}, {"engine_family", "om1"}}}});
  return plan_vehicle(naming, of_case, counter, vocabulary, recogniser);
}

Vehicle tidal() {
  Vehicle vehicle;
  vehicle.make = "Brackwater";
  vehicle.model = "Tidal";
  vehicle.engine_family = "BW16D";
  vehicle.mileage_km = Kilometres{142'000};
  return vehicle;
}

TEST(PlanVehicle, IsTheOneOfTheCase) {
  EXPECT_EQ(named({}, tidal())->engine_family, "BW16D");
  EXPECT_EQ(named({})->make, "");
}

TEST(PlanVehicle, WordsNameYearMakeModelFamily) {
  const auto vehicle = named({"", "", "2016 Brackwater Tidal BW16D"});
  ASSERT_TRUE(vehicle) << describe(vehicle.error());
  EXPECT_EQ(vehicle->make, "Brackwater");
  EXPECT_EQ(vehicle->model, "Tidal");
  EXPECT_EQ(vehicle->model_year, 2016);
  EXPECT_EQ(vehicle->engine_family, "BW16D");
}

TEST(PlanVehicle, WordsAddToTheCaseUnlessTheyNameAnother) {
  EXPECT_EQ(named({"", "", "2017 Brackwater"}, tidal())->engine_family, "BW16D");
  EXPECT_EQ(named({"", "", "2017 Brackwater"}, tidal())->model_year, 2017);
  const auto another = named({"", "", "Cormont"}, tidal());
  EXPECT_EQ(another->make, "Cormont");
  EXPECT_EQ(another->engine_family, "");
  EXPECT_FALSE(another->mileage_km);
}

TEST(PlanVehicle, NamesTheRecordsHoldAreKnown) {
  EXPECT_TRUE(named({"OldMake", "OM1", ""}));
}

struct Refused {
  const char* name;
  VehicleNaming naming;
  const char* place;
  const char* said;
};

class PlanVehicleRefused : public ::testing::TestWithParam<Refused> {};

TEST_P(PlanVehicleRefused, ByName) {
  const auto vehicle = named(GetParam().naming, tidal());
  ASSERT_FALSE(vehicle);
  EXPECT_EQ(vehicle.error().code, ErrorCode::kInvalidInput);
  EXPECT_EQ(vehicle.error().place, GetParam().place);
  EXPECT_THAT(vehicle.error().message, HasSubstr(GetParam().said));
}

INSTANTIATE_TEST_SUITE_P(
    NearMisses, PlanVehicleRefused,
    ::testing::Values(Refused{"Make", {"Brackwatr", "", ""}, "make", "\"Brackwatr\""},
                      Refused{"Family", {"", "BW16E", ""}, "engine_family", "\"BW16E\""},
                      Refused{"Word", {"", "", "Brackwater Flurble"}, "vehicle", "\"Flurble\""},
                      Refused{"YearOnly", {"", "", "2016"}, "vehicle", "names no make"},
                      Refused{"NotUtf8", {"", "", "caf\xe9"}, "vehicle", "UTF-8"}),
    [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace shoplore
