#include "query/lately/could_stand_out.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

using Could = std::vector<bool>;

// One test needs .05; a second that can only reach .03 would need .025 of both.
TEST(CouldStandOut, WhatCannotReachTheSharedLevelIsNoTest) {
  EXPECT_EQ(could_stand_out(std::vector{0.001, 0.03, 0.2}, 0.05), (Could{true, false, false}));
  EXPECT_EQ(could_stand_out(std::vector{0.001, 0.02, 0.2}, 0.05), (Could{true, true, false}));
  EXPECT_EQ(could_stand_out(std::vector{1e-9, 1e-9, 1e-9}, 0.05), (Could{true, true, true}));
}

TEST(CouldStandOut, NothingOrNoneAtAll) {
  EXPECT_TRUE(could_stand_out({}, 0.05).empty());
  EXPECT_EQ(could_stand_out(std::vector{0.5, 1.0}, 0.05), (Could{false, false}));
}

}  // namespace
}  // namespace shoplore
