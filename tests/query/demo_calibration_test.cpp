// Whether what is said of the demo is true: probabilities against cases of the same world that the
// records do not hold, and the shown intervals against the shares the world really has.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <iostream>
#include <random>
#include <set>

#include "indexer/case_keys.hpp"
#include "indexer/foreign_words.hpp"
#include "query/intervals.hpp"
#include "query/ranking/scores.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

constexpr std::array<double, 3> kHidden{0, .5, .75};

// With the words of its complaint that nothing was read from, as somebody would ask it.
PastQuestion question_of(const DemoShop& shop, const DemoCase& drawn) {
  const std::string& complaint = drawn.record.complaint;
  const Recogniser& recogniser = shop.records().recogniser();
  return {ranking_items(evidence_of(drawn.record, shop.vocabulary())),
          foreign_words(complaint, recogniser.recognise(complaint), recogniser)};
}

TEST(DemoCalibration, ProbabilitiesComeTrue) {
  const DemoShop shop(2'400);
  const RankingModel model = shop.fitted(1);
  const auto unseen = shop.unseen(10'000, 2);
  std::vector<PastQuestion> questions;
  for (const DemoCase& drawn : unseen) questions.push_back(question_of(shop, drawn));
  std::mt19937_64 random(3);
  for (const double hidden : kHidden) {
    std::vector<Judged> judged;
    for (std::size_t i = 0; i < unseen.size(); ++i) {
      const auto cause = shop.cause_of(unseen[i]);
      ASSERT_TRUE(cause);
      const auto items = some_of(questions[i], hidden, random);
      judged.push_back(judge(model.probabilities(items, {}).value(), *cause));
    }
    const Scores scores = scores_of(judged);
    std::cout << fmt::format(
        "{:.0f} % hidden: first {:.3f}, log loss {:.3f}, calibration error {:.3f}\n", 100 * hidden,
        scores.first, scores.log_loss, scores.calibration_error);
    EXPECT_LE(scores.calibration_error, .03) << hidden;
  }
}

// A small shop has causes it saw three times at most, by chance seldom: none of this world's is
// that rare. What is said of them must lie between what was seen and what comes.
TEST(DemoCalibration, RareCausesAreNeitherForgottenNorOverrated) {
  const DemoShop shop(400);
  const RankingModel model = shop.fitted(1);
  const auto seen = shop.ledger().by_cause({}).value();
  std::set<CauseNumber> rare;
  for (CauseNumber c = 0; c < seen.size(); ++c) {
    if (seen[c] >= 1 && seen[c] <= 3) rare.insert(c);
  }
  ASSERT_GE(rare.size(), 5U);
  const auto unseen = shop.unseen(4'000, 2);
  double said = 0, beyond = 0;
  int came = 0, came_beyond = 0;
  for (const DemoCase& drawn : unseen) {
    const auto items = ranking_items(evidence_of(drawn.record, shop.vocabulary()));
    const auto p = model.probabilities(items, {}).value();
    for (const CauseNumber c : rare) said += p[c];
    beyond += p.back();
    const auto cause = shop.cause_of(drawn);
    came_beyond += cause && seen[*cause] > 0 ? 0 : 1;
    came += cause && rare.contains(*cause) ? 1 : 0;
  }
  const double n = static_cast<double>(unseen.size());
  std::cout << fmt::format(
      "{} causes seen one to three times: said {:.4f}, came {:.4f}; beyond the "
      "records: said {:.4f}, came {:.4f}\n",
      rare.size(), said / n, came / n, beyond / n, came_beyond / n);
  double share_seen = 0, cases = 0;
  for (CauseNumber c = 0; c < seen.size(); ++c) {
    cases += seen[c];
    share_seen += rare.contains(c) ? seen[c] : 0;
  }
  EXPECT_GT(said / n, share_seen / cases);
  EXPECT_LT(said / n, came / n);
  EXPECT_NEAR(beyond / n, came_beyond / n, .01);
}

// Questions of one to three findings out of cases the shop never saw, each with its cause; the true
// share out of very many cases of the same world.
struct IntervalQuestion {
  std::vector<EvidenceItem> items;
  std::string cause;
  std::uint32_t matches = 0, of_cause = 0;  // among very many
};

std::vector<IntervalQuestion> interval_questions(const DemoShop& shop, std::size_t count) {
  std::mt19937_64 random(4);
  std::vector<IntervalQuestion> questions;
  for (const DemoCase& drawn : shop.unseen(2'400, 5)) {
    auto items = ranking_items(evidence_of(drawn.record, shop.vocabulary()));
    std::shuffle(items.begin(), items.end(), random);
    items.resize(std::min<std::size_t>(items.size(), 1 + random() % 3));
    if (items.empty() || questions.size() == count) continue;
    questions.push_back({items, cause_key(*drawn.record.cause, shop.vocabulary())});
  }
  return questions;
}

TEST(DemoCalibration, IntervalsCoverTheTrueShare) {
  const DemoShop shop(2'400);
  auto questions = interval_questions(shop, 1'000);
  for (const DemoCase& drawn : shop.unseen(60'000, 6)) {
    const auto evidence = evidence_of(drawn.record, shop.vocabulary());
    const std::string cause = cause_key(*drawn.record.cause, shop.vocabulary());
    for (IntervalQuestion& question : questions) {
      const bool matches =
          std::all_of(question.items.begin(), question.items.end(), [&](const EvidenceItem& item) {
            return std::binary_search(evidence.begin(), evidence.end(), item);
          });
      question.matches += matches ? 1U : 0U;
      question.of_cause += matches && cause == question.cause ? 1U : 0U;
    }
  }
  int asked = 0, covered = 0;
  for (const IntervalQuestion& question : questions) {
    if (question.matches < 400) continue;  // the true share would be a guess itself
    const auto counts = shop.ledger().by_cause({question.items, {}, {}}).value();
    std::uint32_t n = 0;
    for (const std::uint32_t each : counts) n += each;
    if (n < 5) continue;  // then the answer looks wider
    const auto cause = shop.ledger().causes().find(question.cause);
    const Interval interval = jeffreys(cause ? counts[*cause] : 0, n, kShownConfidence);
    const double truth = static_cast<double>(question.of_cause) / question.matches;
    ++asked;
    covered += interval.low <= truth && truth <= interval.high ? 1 : 0;
  }
  std::cout << fmt::format("{} of {} intervals cover the true share\n", covered, asked);
  ASSERT_GE(asked, 300);
  EXPECT_GE(covered, .87 * asked);
  EXPECT_LE(covered, .93 * asked);
}

}  // namespace
}  // namespace shoplore::testing
