#include "query/ranking/knob_fit.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "query/ranking/fit_objective.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

class KnobFitTest : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    shop_ = new DemoShop(800);  // more than choose the smoothing
    cases_ = new auto(
        past_cases(shop_->records().store(), shop_->vocabulary(), shop_->ledger()).value());
  }
  static void TearDownTestSuite() {
    delete cases_;
    delete shop_;
  }
  static KnobFit fit(std::uint64_t seed, const std::vector<PastCase>& cases) {
    const RankingModel model = RankingModel::of(shop_->ledger(), {}).value();
    return fit_knobs(model, cases, seed).value();
  }
  static DemoShop* shop_;
  static std::vector<PastCase>* cases_;
};
DemoShop* KnobFitTest::shop_ = nullptr;
std::vector<PastCase>* KnobFitTest::cases_ = nullptr;

TEST_F(KnobFitTest, SaysMoreThanTheStartValuesDo) {
  const KnobFit fitted = fit(1, *cases_);
  EXPECT_EQ(fitted.questions, static_cast<std::size_t>(std::count_if(
                                  cases_->begin(), cases_->end(),
                                  [](const PastCase& past) { return past.seen > 1; })));
  EXPECT_LT(fitted.log_loss, fitted.start_log_loss - .02);
  for (const KnobRange& range : fitted_knobs()) {
    EXPECT_GE(fitted.knobs.*range.knob, range.least - 1e-9);
    EXPECT_LE(fitted.knobs.*range.knob, range.most + 1e-9);
  }
}

TEST_F(KnobFitTest, IsTheSameOfTheSameSeed) {
  EXPECT_EQ(coordinates_of(fit(3, *cases_).knobs), coordinates_of(fit(3, *cases_).knobs));
}

TEST_F(KnobFitTest, OfTooFewCasesTheStartValuesStand) {
  const std::vector<PastCase> few(cases_->begin(), cases_->begin() + kFewestCasesToFit - 1);
  const KnobFit fitted = fit(1, few);
  EXPECT_EQ(fitted.questions, 0U);
  EXPECT_EQ(coordinates_of(fitted.knobs), coordinates_of({}));
}

}  // namespace
}  // namespace shoplore::testing
