#include "query/drive_of_vehicle.hpp"

#include <gtest/gtest.h>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

const EvidenceItem kHybridFamily{"engine_family", "el18h"}, kOther{"engine_family", "bw16d"};
const EvidenceItem kHybrid{"fuel", "hybrid"}, kElectric{"fuel", "electric"},
    kDiesel{"fuel", "diesel"};

TEST(DriveOfVehicle, OneCaseOfTheFamilyIsEnough) {
  const PlainCounter counter(
      {{"a:b", {kHybridFamily, kHybrid}}, {"a:b", {kHybridFamily}}, {"a:b", {kOther, kDiesel}}});
  EXPECT_EQ(electric_drive_of({kHybridFamily}, counter).value(), Fuel::kHybrid);
  EXPECT_EQ(electric_drive_of({kOther}, counter).value(), std::nullopt);
  EXPECT_EQ(electric_drive_of({{"engine_family", "never seen"}}, counter).value(), std::nullopt);
}

TEST(DriveOfVehicle, WhatIsStatedStands) {
  const PlainCounter counter({{"a:b", {kHybridFamily, kHybrid}}});
  EXPECT_EQ(electric_drive_of({kHybridFamily, kDiesel}, counter).value(), std::nullopt);
  EXPECT_EQ(electric_drive_of({}, counter).value(), std::nullopt);
}

TEST(DriveOfVehicle, WithoutAFamilyTheModelTells) {
  const EvidenceItem model{"model", "razorbill"};
  const PlainCounter counter(
      {{"a:b", {model, kElectric}}, {"a:b", {model, kHybrid}}, {"a:b", {model, kElectric}}});
  EXPECT_EQ(electric_drive_of({model}, counter).value(), Fuel::kElectric);
  EXPECT_EQ(electric_drive_of({model, kOther}, counter).value(), std::nullopt);
}

}  // namespace
}  // namespace shoplore::testing
