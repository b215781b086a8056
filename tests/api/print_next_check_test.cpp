#include "api/cli/print_next_check.hpp"

#include <gtest/gtest.h>

#include "tests/api/sample_answer.hpp"

namespace shoplore {
namespace {

Page plain(std::size_t width) {
  Page page;
  page.width = width;
  page.colour = Colour::kOff;
  return page;
}

TEST(PrintNextCheck, ReadsAsATechnicianWouldSayIt) {
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  EXPECT_EQ(print_next_check(testing::next_checks(), vocabulary, plain(80)),
            R"(  !  Stop checking and repair: expected 4 h 59 min at once, 5 h 15 min with the
     best check first. In this order: wastegate linkage, seized open (p .97, 4 h
     1 min). Parts are counted as working time.
  ?  ask: whistle under load?
     present (p .12): charge-air hose, split .75
  1. move the wastegate linkage by hand, 5 min + 10 min for the heat shield
     fail (p .75): wastegate linkage, seized open .97
     pass (p .25): charge-air hose, split .50
     a pass misled us 3 of 50 times (90 %: 2 to 13 %)
     where: arm at the turbine housing
     Engine off and cold.
)");
}

TEST(PrintNextCheck, IsSilentWhenThereIsNothingToAdvise) {
  EXPECT_EQ(print_next_check({}, Vocabulary::built_in().value(), plain(80)), "");
}

}  // namespace
}  // namespace shoplore
