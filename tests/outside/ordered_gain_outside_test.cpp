// The measure of an order against the example that textbooks and encyclopaedias of the field use:
// gains 3, 2, 3, 0, 1, 2. Figures recomputed to eight places.
#include "tests/query/ordered_gain.hpp"

#include <gtest/gtest.h>

namespace shoplore::testing {
namespace {

const std::vector<double> kGains{3, 2, 3, 0, 1, 2};

TEST(OrderedGainOutside, TheWidelyPublishedExample) {
  EXPECT_NEAR(discounted_gain(kGains), 6.8611267, 1e-7);
  EXPECT_NEAR(normalised_gain(kGains, kGains, 6), 0.9608082, 1e-7);
  EXPECT_NEAR(normalised_gain(kGains, kGains, 4), 0.8530853, 1e-7);
}

TEST(OrderedGainOutside, AgainstAnIdealWithTwoMoreThatWereNotFound) {
  auto all = kGains;
  all.insert(all.end(), {3, 2});
  EXPECT_NEAR(normalised_gain(kGains, all, 6), 0.7850024, 1e-7);
}

}  // namespace
}  // namespace shoplore::testing
