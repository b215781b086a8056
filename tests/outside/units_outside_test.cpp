// The mile, against the agreement of 1959 (NBS addendum to Circular 572, in force 1 July 1959):
// one yard is 0.9144 m exactly, a mile has 1,760 of them.
#include <gtest/gtest.h>

#include "indexer/quantities.hpp"

namespace shoplore {
namespace {

TEST(UnitsOutside, MileIs1760YardsOf914Point4Millimetres) {
  EXPECT_DOUBLE_EQ(kKilometresPerMile, 1760 * 0.9144 / 1000);
  EXPECT_EQ(kKilometresPerMile, 1.609344);
}

TEST(UnitsOutside, HundredThousandMilesAre160934Kilometres) {
  EXPECT_EQ(kilometres_from_miles(100'000).value, 160'934);  // 160934.4 km
}

TEST(UnitsOutside, HundredThousandKilometresAre62137Point119Miles) {
  EXPECT_NEAR(100'000 / kKilometresPerMile, 62137.1192237334, 1e-8);
  EXPECT_EQ(kilometres_from_miles(62137.1192237334).value, 100'000);
}

TEST(UnitsOutside, SurveyMileIsNotUsed) {
  // 1.609347219 km would give 1609347.
  EXPECT_EQ(kilometres_from_miles(1'000'000).value, 1'609'344);
}

}  // namespace
}  // namespace shoplore
