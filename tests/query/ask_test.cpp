// The whole answer on the demo: breadth, fixes, warnings and cautions hold together.
#include "query/ask.hpp"

#include <gtest/gtest.h>

#include <memory>
#include <numeric>

#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

// One demo shop for all claims: they only read.
class Ask : public ::testing::Test {
 protected:
  static void SetUpTestSuite() { shop_ = std::make_unique<DemoShop>(); }
  static void TearDownTestSuite() { shop_.reset(); }
  static Result<Answer> asked(const std::string& text, Filter filter = {},
                              std::uint32_t rows = 50) {
    Question question;
    question.text = text;
    question.filter = std::move(filter);
    question.rows = rows;
    return asked(question);
  }

  static Result<Answer> asked(const Question& question) {
    return ask(question, shop_->snapshot(), shop_->records().store(), shop_->vocabulary(),
               shop_->records().recogniser());
  }

  static inline std::unique_ptr<DemoShop> shop_;
};

TEST_F(Ask, NothingIsRankedWhereNothingMatchesAndTheCautionStands) {
  const auto answer = asked("2023 Arlune electric van will not charge, isolation warning");
  ASSERT_TRUE(answer);
  EXPECT_TRUE(answer->nothing_matches);
  EXPECT_TRUE(answer->likely_causes.empty());
  EXPECT_TRUE(answer->similar.empty());
  ASSERT_FALSE(answer->cautions.empty());
  EXPECT_EQ(answer->cautions.front().id.substr(0, 12), "high_voltage");
}

TEST_F(Ask, TheWorkedQuestionsLeadToTheirCause) {
  const auto turbo = asked("BW16D P0299 flat uphill, no whistle, turbo already replaced elsewhere");
  EXPECT_EQ(turbo->likely_causes.front().component, "wastegate_linkage");
  const auto coil = asked("Cormont misfire cylinder 3, coil replaced here four months ago");
  EXPECT_EQ(coil->likely_causes.front().component, "plug_well_seal");
}

TEST_F(Ask, SharesAreOfTheLastWidthAndAddUp) {
  for (const char* text : {"misfire", "P0299 flat", "Cormont", "flat, no whistle", "noise hot"}) {
    const auto answer = asked(text);
    ASSERT_TRUE(answer) << text;
    if (answer->nothing_matches) continue;
    std::uint32_t cases = 0;
    double probability = answer->not_in_these_records + answer->left_out_probability;
    for (const LikelyCause& cause : answer->likely_causes) {
      EXPECT_EQ(cause.share.out_of, answer->breadth.back().cases) << text;
      EXPECT_LE(cause.vehicles, cause.share.count) << text;
      cases += cause.share.count;
      probability += cause.probability;
    }
    EXPECT_EQ(cases, answer->breadth.back().cases) << text;
    EXPECT_NEAR(probability, 1, 1e-9) << text;
  }
}

TEST_F(Ask, AWiderWidthIsNeverSmaller) {
  // A petrol engine without a turbocharger: its own family has no such case.
  const auto answer = asked("2016 Elvetia Col EL10P P0299 flat uphill");
  ASSERT_GT(answer->breadth.size(), 1U);
  for (std::size_t i = 1; i < answer->breadth.size(); ++i) {
    EXPECT_GE(answer->breadth[i].cases, answer->breadth[i - 1].cases);
  }
}

TEST_F(Ask, AFilterNeverAddsCases) {
  const auto all = asked("misfire");
  Filter filter;
  filter.make = "Cormont";
  const auto some = asked("misfire", filter);
  EXPECT_LT(some->cases_in_records, all->cases_in_records);
  EXPECT_LE(some->breadth.back().cases, all->breadth.back().cases);
}

TEST_F(Ask, FixesDoneTogetherCountEachCaseOnce) {
  const auto answer = asked("misfire");
  for (const LikelyCause& cause : answer->likely_causes) {
    std::uint32_t together = 0;
    for (const FixCount& fix : cause.fixes_together) {
      together += fix.cases;
      EXPECT_EQ(fix.cases, fix.stayed_fixed + fix.came_back + fix.unknown);
    }
    EXPECT_LE(together, cause.seen);
  }
}

TEST_F(Ask, RefusesWhatIsNoQuestion) {
  for (const std::string& text : {std::string(), std::string("  \n"), std::string("?!"),
                                  std::string(10'000, 'a'), std::string("\xff\xfe")}) {
    const auto answer = asked(text);
    ASSERT_FALSE(answer) << text.substr(0, 10);
    EXPECT_EQ(answer.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(answer.error().place, "question");
  }
}

TEST_F(Ask, RefusesAFilterThatNothingCanPass) {
  Filter mileage, year;
  mileage.mileage = {Kilometres{150'000}, Kilometres{150'000}};
  year.model_year = {2017, 2014};
  for (const Filter& filter : {mileage, year}) {
    const auto answer = asked("misfire", filter);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().code, ErrorCode::kInvalidInput);
  }
}

// As an open case is asked again: without a word typed.
TEST_F(Ask, ARecordAloneFindsItsLikelyCausesAndSimilarCases) {
  Question question;
  question.record.symptoms.push_back({"misfire", Presence::kPresent, {}, {}, {}});
  const auto by_record = asked(question);
  ASSERT_TRUE(by_record);
  const auto by_text = asked("misfire", {}, 5);
  ASSERT_EQ(by_record->similar.size(), by_text->similar.size());
  ASSERT_FALSE(by_record->similar.empty());
  for (std::size_t i = 0; i < by_text->similar.size(); ++i) {
    EXPECT_EQ(by_record->similar[i].ref, by_text->similar[i].ref);
  }
  EXPECT_EQ(by_record->likely_causes[0].probability, by_text->likely_causes[0].probability);
}

TEST_F(Ask, AnIdentityInTheQuestionIsNotRepeated) {
  const auto answer = asked("misfire, call 0151 496 0123");
  EXPECT_EQ(answer->understood.text.find("496"), std::string::npos);
}

}  // namespace
}  // namespace shoplore::testing
