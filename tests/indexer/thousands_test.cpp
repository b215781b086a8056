// Thousands are set apart, whatever the sign.
#include "indexer/thousands.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

TEST(Thousands, AreSetApart) {
  EXPECT_EQ(thousands(0), "0");
  EXPECT_EQ(thousands(999), "999");
  EXPECT_EQ(thousands(-999), "-999");
  EXPECT_EQ(thousands(1'000), "1,000");
  EXPECT_EQ(thousands(-1'234'567), "-1,234,567");
}

}  // namespace
}  // namespace shoplore
