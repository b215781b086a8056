#include "query/track_record.hpp"

#include <gtest/gtest.h>

#include <numeric>

#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

class TrackRecordTest : public ::testing::Test {
 protected:
  const DemoShop shop{260};
  const std::vector<PastCase> cases =
      past_cases(shop.records().store(), shop.vocabulary(), shop.ledger()).value();
  const RankingModel model = RankingModel::of(shop.ledger(), {}).value();

  TrackRecord record(const TrackRecordOptions& options) const {
    return track_record(shop.ledger(), model, cases, options).value();
  }
};

std::size_t questions(const std::vector<TrackRecordRow>& rows, std::size_t level) {
  return std::accumulate(rows.begin(), rows.end(), std::size_t{0},
                         [&](std::size_t sum, const TrackRecordRow& row) {
                           return sum + row.levels[level].questions;
                         });
}

// With all evidence there is no chance in it: every case ranked by hand, itself left out.
TEST_F(TrackRecordTest, AsksEveryClosedCaseAsIfNew) {
  std::size_t asked = 0, first = 0, only = 0;
  for (const PastCase& past : cases) {
    if (past.questions.empty()) continue;
    ++asked;
    only += past.seen == 1 ? 1U : 0U;
    const Ranking ranking = model.rank(past.questions, {}, past.stated).value();
    first += ranking.causes[0].cause == past.stated.cause ? 1U : 0U;
  }
  const TrackRecord all = record({});
  EXPECT_EQ(all.cases, asked);
  EXPECT_EQ(all.only_of_their_cause, only);
  EXPECT_EQ(all.all.levels[0].questions, asked);
  EXPECT_DOUBLE_EQ(all.all.levels[0].first,
                   static_cast<double>(first) / static_cast<double>(asked));
}

TEST_F(TrackRecordTest, EveryCaseIsInOneHeapOfEachSort) {
  const TrackRecord all = record({});
  for (std::size_t level = 0; level < kHiddenLevels.size(); ++level) {
    EXPECT_EQ(questions(all.by_family, level), all.cases);
    EXPECT_EQ(questions(all.by_seen, level), all.cases);
    EXPECT_EQ(questions(all.by_year, level), all.cases);
  }
  for (std::size_t i = 1; i < all.by_family.size(); ++i) {
    EXPECT_GE(all.by_family[i - 1].levels[0].questions, all.by_family[i].levels[0].questions);
  }
}

TEST_F(TrackRecordTest, LessEvidenceTellsLess) {
  const TrackRecord all = record({});
  EXPECT_GT(all.all.levels[0].first, all.all.levels[1].first);
  EXPECT_GT(all.all.levels[1].first, all.all.levels[2].first);
}

TEST_F(TrackRecordTest, FoldsAskEveryCaseOnce) {
  const TrackRecord folds = record({5, 3});
  EXPECT_EQ(folds.all.levels[0].questions, folds.cases);
  EXPECT_EQ(folds.cases, record({}).cases);
}

TEST_F(TrackRecordTest, TheSeedDrawsWhatIsHiddenAndNothingElse) {
  const TrackRecord one = record({0, 1}), again = record({0, 1}), other = record({0, 2});
  EXPECT_EQ(one.all.levels[2].log_loss, again.all.levels[2].log_loss);
  EXPECT_NE(one.all.levels[2].log_loss, other.all.levels[2].log_loss);
  EXPECT_EQ(one.all.levels[0].log_loss, other.all.levels[0].log_loss);
}

TEST_F(TrackRecordTest, MoreDrawsAskTheHiddenLevelsMoreOften) {
  const TrackRecord drawn = record({0, 1, 3});
  EXPECT_EQ(drawn.all.levels[0].questions, drawn.cases);
  EXPECT_EQ(drawn.all.levels[2].questions, 3 * drawn.cases);
}

}  // namespace
}  // namespace shoplore::testing
