#include "query/lives/lives.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "query/lives/normal_tail.hpp"
#include "query/lives/root_between.hpp"

namespace shoplore {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

TEST(Lives, BadLivesAreRefusedByNumber) {
  const struct {
    const char* name;
    std::vector<Life> lives;
    std::string place, message;
  } rows[] = {
      {"none", {}, "", "no lives were given"},
      {"negative exit", {{5, true}, {-1, true}}, "life 2", "its exit is not a time of 0 or more"},
      {"endless exit", {{kNever, false}}, "life 1", "its exit is not a time of 0 or more"},
      {"no number", {{std::nan(""), true}}, "life 1", "its exit is not a time of 0 or more"},
      {"negative entry", {{5, true, -1}}, "life 1", "its entry is not a time of 0 or more"},
      {"entry at exit",
       {{1, true}, {2, true}, {5, true, 5}},
       "life 3",
       "it was seen from 5 but ended at 5: entry must be before exit"},
      {"entry after exit",
       {{5, false, 7.5}},
       "life 1",
       "it was seen from 7.5 but ended at 5: entry must be before exit"}};
  for (const auto& row : rows) {
    for (const auto check : {check_lives, check_lives_to_fit}) {
      const auto checked = check(row.lives);
      ASSERT_FALSE(checked) << row.name;
      EXPECT_EQ(checked.error().code, ErrorCode::kInvalidInput) << row.name;
      EXPECT_EQ(checked.error().place, row.place) << row.name;
      EXPECT_EQ(checked.error().message, row.message) << row.name;
    }
  }
}

TEST(Lives, WhatCannotBeFittedIsRefusedOnlyForFitting) {
  const struct {
    const char* name;
    std::vector<Life> lives;
    std::string place, message;
  } rows[] = {{"an exit at 0",
               {{3, true}, {0, false}, {5, true}},
               "life 2",
               "a life to fit must be longer than 0"},
              {"no failure",
               {{3, false}, {5, false}},
               "",
               "0 failed: fitting a life needs at least 2 failures"},
              {"one failure",
               {{3, true}, {5, false}},
               "",
               "1 failed: fitting a life needs at least 2 failures"},
              {"all equal",
               {{5, true}, {5, true}, {5, true}},
               "",
               "all failures are at 5, the longest life"},
              {"all failures last",
               {{5, true}, {5, true}, {3, false}},
               "",
               "all failures are at 5, the longest life"}};
  for (const auto& row : rows) {
    EXPECT_TRUE(check_lives(row.lives)) << row.name;
    const auto checked = check_lives_to_fit(row.lives);
    ASSERT_FALSE(checked) << row.name;
    EXPECT_EQ(checked.error().code, ErrorCode::kInvalidInput) << row.name;
    EXPECT_EQ(checked.error().place, row.place) << row.name;
    EXPECT_EQ(checked.error().message, row.message) << row.name;
  }
}

TEST(Lives, NearMissesAreAccepted) {
  const std::vector<std::vector<Life>> good{
      {{5, true}, {5, true}, {6, false}},  // equal failures, but one lived longer
      {{5, true}, {5.001, true}},
      {{5, true, 0}, {6, true, 4.999}}};
  for (const auto& lives : good) EXPECT_TRUE(check_lives_to_fit(lives));
}

TEST(Lives, DeviatesAreTheTabledOnes) {
  // NIST/SEMATECH e-Handbook 1.3.6.7.1, and the 15 digits every table of constants gives.
  EXPECT_NEAR(two_sided_z(.95), 1.959963984540054, 1e-14);
  EXPECT_NEAR(two_sided_z(.90), 1.644853626951473, 1e-14);
  EXPECT_NEAR(normal_quantile(.975), 1.959963984540054, 1e-14);
  EXPECT_NEAR(normal_quantile(.1), -1.281551565544600, 1e-14);
  EXPECT_EQ(normal_quantile(.5), 0);
}

TEST(Lives, FlatInformationHasNoInverse) {
  EXPECT_EQ(inverted({1, 1, 1}), std::nullopt);
  EXPECT_EQ(inverted({-1, -1, 0}), std::nullopt);
  EXPECT_EQ(inverted({std::nan(""), 1, 0}), std::nullopt);
  const auto covariance = inverted({4, 2, 1});
  ASSERT_TRUE(covariance);
  EXPECT_DOUBLE_EQ(covariance->first, 2. / 7);
  EXPECT_DOUBLE_EQ(covariance->second, 4. / 7);
  EXPECT_DOUBLE_EQ(covariance->between, -1. / 7);
}

// The C library's long double reaches far enough out to be asked directly.
TEST(Lives, NormalTailIsTheErrorFunctionsOfTheCLibrary) {
  for (double z = -12; z <= 60; z += .125) {
    const long double share = erfcl(static_cast<long double>(z) / sqrtl(2)) / 2;
    const long double density =
        expl(-static_cast<long double>(z) * z / 2) / sqrtl(2 * acosl(-1.0L));
    const long double hazard = density / share;
    const NormalTail tail = normal_tail(z);
    const double log_share = static_cast<double>(
        z < 0 ? log1pl(-erfcl(static_cast<long double>(-z) / sqrtl(2)) / 2) : logl(share));
    EXPECT_NEAR(tail.log_share, log_share, 1e-13 * std::abs(log_share)) << z;
    EXPECT_NEAR(tail.hazard, static_cast<double>(hazard), 1e-13 * tail.hazard) << z;
    EXPECT_NEAR(tail.hazard_slope, static_cast<double>(hazard * (hazard - z)),
                1e-12 * tail.hazard_slope)
        << z;
  }
}

TEST(Lives, NormalTailStaysFiniteAnywhere) {
  for (const double z : {-1e6, -40., 1e3, 1e8}) {
    const NormalTail tail = normal_tail(z);
    EXPECT_TRUE(std::isfinite(tail.log_share)) << z;
    EXPECT_GE(tail.hazard, z) << z;
    EXPECT_GE(tail.hazard_slope, 0) << z;
    EXPECT_LE(tail.hazard_slope, 1) << z;
  }
}

TEST(Lives, RootsAreFoundAtEndsAndInside) {
  EXPECT_NEAR(root_between([](double x) { return 2 - x * x; }, 0, 100), std::sqrt(2.0), 1e-14);
  EXPECT_EQ(root_between([](double x) { return x - 3; }, 3, 5), 3);
  EXPECT_EQ(root_between([](double x) { return x - 5; }, 3, 5), 5);
  EXPECT_EQ(root_between([](double x) { return x - 3 + 1e-17; }, 3, 5), 3);
  EXPECT_EQ(root_between([](double x) { return 5 - x + 1e-9; }, 3, 5), 5);
}

}  // namespace
}  // namespace shoplore
