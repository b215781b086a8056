// Practice on the demo workshop: leave-one-out, scores, what is hidden, simulated apprentices.
#include "query/practice/practice_desk.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "query/practice/case_replay.hpp"
#include "query/ranking/fit_in_shop.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::HasSubstr;

constexpr std::uint64_t kSeed = 11;

class PracticeDeskTest : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    // Whole: of a quarter of it the records' own probabilities of what comes in are two points too
    // high, and whoever says them is rightly called overconfident.
    shop_ = new DemoShop;
    const Records& records = shop_->records();
    ASSERT_TRUE(fit_in_shop(records.folder(), shop_->snapshot(), records.store(),
                            records.vocabulary(), kSeed));
    fitted_ = new std::shared_ptr<const Snapshot>(Snapshot::open(records.folder()).value());
  }
  static void TearDownTestSuite() {
    delete fitted_;
    delete shop_;
  }

  const ShopFolder& folder() const { return shop_->records().folder(); }
  const Snapshot& snapshot() const { return **fitted_; }
  PracticeGround ground() const {
    return {snapshot(), shop_->records().store(), shop_->vocabulary()};
  }
  PracticeDesk desk() const { return PracticeDesk(folder(), ground()); }

  RoundView start(const std::string& handle, PracticeKind kind = PracticeKind::kCause,
                  std::optional<Difficulty> difficulty = {}) const {
    auto round = desk().start({handle, kind, difficulty, {}});
    EXPECT_TRUE(round) << describe(round.error());
    return round.value();
  }
  // What the file knows of the last round begun, and nobody is shown.
  PracticeRound kept(const std::string& handle) const {
    return read_apprentice(folder(), handle).value().rounds.back();
  }
  PracticeCase case_kept(const std::string& handle) const {
    return case_of(kept(handle), ground()).value();
  }
  std::vector<double> records_say(const PracticeCase& practised) const {
    return snapshot().ranking().probabilities(practised.arrival, {}, practised.stated).value();
  }

  // Plays rounds saying p^sharper of what the records would say, the likeliest causes first, until
  // so many came up by chance.
  Calibration simulated(const std::string& handle, std::size_t by_chance, double sharper) const {
    for (std::size_t played = 0; played < by_chance;) {
      const RoundView round = start(handle);
      played += kept(handle).drawn == Drawn::kByChance ? 1U : 0U;
      const auto stated = sharpened(records_say(case_kept(handle)), sharper);
      EXPECT_TRUE(desk().believe(round.id, stated));
      const auto done = desk().commit(round.id, {stated.front().cause, {}, {}});
      EXPECT_TRUE(done) << describe(done.error());
    }
    return progress_of(read_apprentice(folder(), handle).value()).calibration;
  }

  std::vector<StatedBelief> sharpened(const std::vector<double>& said, double sharper) const {
    std::vector<StatedBelief> stated;
    double sum = 0;
    for (const double p : said) sum += std::pow(p, sharper);
    for (CauseNumber c = 0; c + 1 < said.size(); ++c) {
      // Rounded down, so that the parts never come to more than 100.
      const double percent = std::floor(1e4 * std::pow(said[c], sharper) / sum) / 100;
      if (percent > 0) stated.push_back({snapshot().ledger().causes().key(c), percent});
    }
    std::sort(stated.begin(), stated.end(),
              [](const auto& a, const auto& b) { return a.percent > b.percent; });
    if (stated.size() > kMostBeliefs) stated.resize(kMostBeliefs);
    return stated;
  }

  static DemoShop* shop_;
  static std::shared_ptr<const Snapshot>* fitted_;
};

DemoShop* PracticeDeskTest::shop_ = nullptr;
std::shared_ptr<const Snapshot>* PracticeDeskTest::fitted_ = nullptr;

TEST_F(PracticeDeskTest, WhatGivesTheCauseAwayIsNotShown) {
  for (int i = 0; i < 20; ++i) {
    const RoundView round = start("c1");
    ASSERT_TRUE(round.arrival);
    const Case& shown = *round.arrival;
    EXPECT_EQ(shown.ref, "");
    EXPECT_EQ(shown.notes, "");
    EXPECT_EQ(shown.vehicle.token, "");
    EXPECT_EQ(shown.follows, "");
    EXPECT_FALSE(shown.cause || shown.correction || shown.outcome || shown.closed);
    EXPECT_TRUE(shown.checks.empty() && shown.work_signs.empty() && shown.verification.empty());
    EXPECT_TRUE(shown.contributing.empty() && shown.also_found.empty() && shown.declined.empty());
    EXPECT_EQ(round.about, "");
    EXPECT_TRUE(round.choices.empty());
  }
}

TEST_F(PracticeDeskTest, OnlyCasesOfKnownOutcomeAndEnoughLikeThemAreAsked) {
  std::set<std::string> causes, refs;
  for (int i = 0; i < 30; ++i) {
    start("c2");
    const PracticeCase practised = case_kept("c2");
    ASSERT_TRUE(practised.record.outcome);
    EXPECT_NE(practised.record.outcome->status, OutcomeStatus::kUnknown);
    const auto all = snapshot().ledger().tally({}).value();
    std::uint32_t known = 0;
    for (const ProfileCount& each : all.profiles) {
      const bool counts =
          each.profile.cause == practised.cause && each.profile.outcome != OutcomeStatus::kUnknown;
      known += counts ? each.cases : 0;
    }
    EXPECT_GE(known, kFewestOfACause);
    causes.insert(practised.cause);
  }
  EXPECT_GT(causes.size(), 5U);
}

// The scores against the ranking and the arithmetic of belief.hpp, done here anew.
TEST_F(PracticeDeskTest, FeedbackIsWhatCanBeWorkedOutByHand) {
  const RoundView round = start("d1");
  const PracticeCase practised = case_kept("d1");
  const auto& causes = snapshot().ledger().causes();
  const std::string other = causes.key(practised.stated.cause == 0 ? 1 : 0);
  ASSERT_TRUE(desk().believe(round.id, {{other, 90}}));  // not the last one: not scored
  ASSERT_TRUE(desk().believe(round.id, {{practised.cause, 70}, {other, 30}}));
  const auto done = desk().commit(round.id, {practised.cause, {}, {}}).value();
  EXPECT_EQ(done.feedback.truth, practised.cause);
  EXPECT_EQ(done.feedback.right, YesNo::kYes);
  EXPECT_NEAR(done.feedback.score->brier, .3 * .3 + .3 * .3, 1e-12);
  EXPECT_NEAR(done.feedback.points, 91, 1e-9);
  EXPECT_NEAR(done.feedback.score->log, std::log(.7), 1e-12);
  const auto said = records_say(practised);
  double brier = 0;
  for (std::size_t c = 0; c < said.size(); ++c) {
    const double off = said[c] - (c == practised.stated.cause ? 1 : 0);
    brier += off * off;
  }
  EXPECT_NEAR(done.feedback.records_score->brier, brier, 1e-9);
  EXPECT_NEAR(done.feedback.records_score->log, std::log(said[practised.stated.cause]), 1e-9);
  ASSERT_EQ(done.feedback.steps.size(), 1U);
  EXPECT_NEAR(done.feedback.steps[0].records[0].probability,
              *std::max_element(said.begin(), said.end() - 1), 1e-9);
}

TEST_F(PracticeDeskTest, AnsweredChecksEnterTheRankingAndCostTheirMinutes) {
  int answered = 0;
  for (int i = 0; i < 12; ++i) {
    const RoundView round = start("d2");
    const PracticeCase practised = case_kept("d2");
    std::vector<EvidenceItem> items = practised.arrival;
    for (const EvidenceItem& item : practised.stated.items) {
      if (!item.attribute.starts_with("check:")) continue;
      const auto asked = desk().check(round.id, item.attribute.substr(6)).value();
      if (asked.steps.back().unsafe == YesNo::kYes) continue;
      EXPECT_EQ(asked.steps.back().verdict, item.value);
      items.push_back(item);
      ++answered;
    }
    const auto missing = desk().check(round.id, "crank_case_that_is_not").error();
    EXPECT_EQ(missing.code, ErrorCode::kInvalidInput);
    ASSERT_TRUE(desk().believe(round.id, {{practised.cause, 50}}));
    const auto done = desk().commit(round.id, {practised.cause, {}, {}}).value();
    std::sort(items.begin(), items.end());
    const auto said = snapshot().ranking().probabilities(items, {}, practised.stated).value();
    EXPECT_NEAR(done.feedback.records_score->log,
                std::log(std::max(said[practised.stated.cause], kLeastProbability)), 1e-9);
    EXPECT_EQ(done.feedback.minutes > 0, items.size() > practised.arrival.size());
  }
  EXPECT_GT(answered, 3);
}

// The counts a check is advised by do not hold the case itself.
TEST_F(PracticeDeskTest, TheReplayKnowsNothingOfTheCaseItself) {
  std::size_t compared = 0;
  for (int i = 0; i < 8; ++i) {
    start("d3", PracticeKind::kCause, Difficulty::kHard);
    const PracticeCase practised = case_kept("d3");
    const auto replay = CaseReplay::of(practised, snapshot(), shop_->vocabulary()).value();
    const Ledger rest = snapshot().ledger().without({practised.stated.id});
    const auto rates = answer_rates(rest, snapshot().ranking().knobs().smoothing).value();
    const auto causes = probabilities_by_cause(replay.ranking({}).value(), rest.causes().size());
    WorkSoFar safe;
    safe.not_possible = replay.unsafe();
    const auto expected = rate_checks(causes, practised.arrival, safe,
                                      {rates, snapshot().figures(), shop_->vocabulary()})
                              .checks;
    const auto all = replay.all_checks().value();
    ASSERT_EQ(all.size(), expected.size());
    for (std::size_t k = 0; k < all.size(); ++k, ++compared) {
      EXPECT_EQ(all[k].attribute, expected[k].attribute);
      EXPECT_DOUBLE_EQ(all[k].information, expected[k].information);
    }
  }
  EXPECT_GT(compared, 0U);
}

TEST_F(PracticeDeskTest, WhatIsWrongWithAnAnswerIsNamed) {
  const RoundView round = start("e1");
  const PracticeCase practised = case_kept("e1");
  const auto place = [](const auto& result) { return result.error().place; };
  EXPECT_EQ(desk().commit(round.id, {practised.cause, {}, {}}).error().code, ErrorCode::kConflict);
  EXPECT_EQ(place(desk().believe(round.id, {{practised.cause, 60}, {"nonsense", 10}})),
            "/beliefs/1");
  EXPECT_EQ(place(desk().believe(round.id, {{practised.cause, 101}})), "/beliefs/0");
  EXPECT_EQ(place(desk().believe(round.id, {{practised.cause, -1}})), "/beliefs/0");
  EXPECT_EQ(place(desk().believe(round.id, {})), "/beliefs");
  EXPECT_EQ(place(desk().check(round.id, "")), "/check");
  EXPECT_EQ(place(desk().check(round.id, "warp core")), "/check");
  EXPECT_EQ(desk().read("e1-ffffffff").error().code, ErrorCode::kNotFound);
  EXPECT_EQ(desk().read("../../etc").error().code, ErrorCode::kNotFound);
  EXPECT_EQ(desk().feedback(round.id).error().code, ErrorCode::kConflict);
  // Nothing of all that was kept.
  EXPECT_TRUE(desk().read(round.id).value().steps.empty());
  ASSERT_TRUE(desk().believe(round.id, {{practised.cause, 60}}));
  EXPECT_EQ(place(desk().commit(round.id, {"", 2, {}})), "/cause");
  ASSERT_TRUE(desk().commit(round.id, {practised.cause, {}, {}}));
  EXPECT_EQ(desk().commit(round.id, {practised.cause, {}, {}}).error().code, ErrorCode::kConflict);
  EXPECT_EQ(desk().believe(round.id, {{practised.cause, 60}}).error().code, ErrorCode::kConflict);
  EXPECT_EQ(desk().check(round.id, "battery_rest_voltage").error().code, ErrorCode::kConflict);
}

TEST_F(PracticeDeskTest, ChoicesHaveOneBestAndTheSmallKindsAreJudged) {
  for (const PracticeKind kind :
       {PracticeKind::kNextCheck, PracticeKind::kCode, PracticeKind::kVainRepair}) {
    const RoundView round = start("f1", kind);
    ASSERT_GE(round.choices.size(), 2U) << name_of(kind);
    EXPECT_EQ(desk().believe(round.id, {{"a:b", 1}}).error().code, ErrorCode::kConflict);
    EXPECT_EQ(desk().commit(round.id, {"", 0, {}}).error().place, "/choice");
    EXPECT_EQ(
        desk().commit(round.id, {"", static_cast<int>(round.choices.size()) + 1, {}}).error().place,
        "/choice");
    const auto done = desk().commit(round.id, {"", 1, {}}).value();
    double best = 0;
    for (const ChoiceFeedback& each : done.feedback.choices) {
      if (each.choice == round.choices[0]) {
        EXPECT_DOUBLE_EQ(each.points, done.feedback.points);
      }
      EXPECT_EQ(each.points > 99.99, each.choice == done.feedback.truth) << each.choice;
      best = std::max(best, each.points);
    }
    EXPECT_NEAR(best, 100, 1e-9);
  }
  const RoundView trust = start("f1", PracticeKind::kCheckTrust);
  EXPECT_EQ(desk().commit(trust.id, {"", {}, 101}).error().place, "/percent");
  const auto done = desk().commit(trust.id, {"", {}, 100}).value();
  ASSERT_TRUE(done.feedback.counted);
  const double high = 100 * done.feedback.counted->interval.high;
  EXPECT_NEAR(done.feedback.points, std::max(0.0, 100 - 4 * (100 - high)), 1e-9);
}

TEST_F(PracticeDeskTest, TheSameSeedDrawsTheSameExercise) {
  for (const char* handle : {"g1", "g2"}) {
    ASSERT_TRUE(desk().start({handle, PracticeKind::kCause, {}, 42}));
  }
  EXPECT_EQ(kept("g1").case_ref, kept("g2").case_ref);
  EXPECT_NE(kept("g1").id, kept("g2").id);
}

TEST_F(PracticeDeskTest, WhoSaysWhatTheRecordsSayIsCalibrated) {
  const Calibration calibration = simulated("s1", 120, 1);
  EXPECT_EQ(calibration.word, CalibrationWord::kCalibrated)
      << calibration.said_of_first << " said, " << calibration.first_was_so.count << " of "
      << calibration.first_was_so.out_of;
}

TEST_F(PracticeDeskTest, WhoSharpensThemIsOverconfident) {
  const Calibration calibration = simulated("s2", 120, 4);
  EXPECT_EQ(calibration.word, CalibrationWord::kOverconfident)
      << calibration.said_of_first << " said, " << calibration.first_was_so.count << " of "
      << calibration.first_was_so.out_of;
}

}  // namespace
}  // namespace shoplore::testing
