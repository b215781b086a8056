#include "query/practice/apprentice_record.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>

namespace shoplore {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;
using ::testing::Not;

class ApprenticeRecordTest : public ::testing::Test {
 protected:
  ApprenticeRecordTest() {
    std::string pattern = (fs::temp_directory_path() / "shoplore-practice-XXXXXX").string();
    folder_.root = mkdtemp(pattern.data());
  }
  ~ApprenticeRecordTest() override { fs::remove_all(folder_.root); }

  void keep(const std::string& handle, const std::function<void(ApprenticeRecord&)>& change) {
    const auto kept = change_apprentice(folder_, handle, [&](ApprenticeRecord& record) {
      change(record);
      return Result<void>();
    });
    ASSERT_TRUE(kept) << describe(kept.error());
  }

  ShopFolder folder_;
};

PracticeRound round_of(const std::string& id, Date started) {
  PracticeRound round;
  round.id = id;
  round.subject = "wastegate_linkage:seized_open";
  round.case_ref = "job-77";
  round.started = started;
  round.difficulty = Difficulty::kHard;
  round.steps.push_back({StepKind::kBelief, {{"a:b", 62.5}}, "", "", "", YesNo::kNo});
  round.steps.push_back({StepKind::kCheck, {}, "boost_log", "fail", "0.2 bar", YesNo::kNo});
  return round;
}

TEST_F(ApprenticeRecordTest, HandlesAreNobodysName) {
  for (const char* good : {"a1", "zz999", "q12"}) EXPECT_TRUE(check_handle(good)) << good;
  for (const char* bad :
       {"", "a", "1", "abc1", "a1234", "A1", "a 1", "a1b", "../a1", "a-1", "pete"}) {
    const auto checked = check_handle(bad);
    ASSERT_FALSE(checked) << bad;
    EXPECT_EQ(checked.error().code, ErrorCode::kInvalidInput);
    EXPECT_FALSE(read_apprentice(folder_, bad));
    EXPECT_FALSE(forget_apprentice(folder_, bad));
  }
}

TEST_F(ApprenticeRecordTest, WhatWasKeptIsReadAgain) {
  PracticeResult result;
  result.kind = PracticeKind::kCause;
  result.subject = "a:b";
  result.case_ref = "job-9";
  result.day = today();
  result.points = 87.25;
  result.grade = 4;
  result.said = {{62.5, YesNo::kYes}};
  result.symptoms = {"lack_of_power"};
  keep("a1", [&](ApprenticeRecord& record) {
    record.rounds_started = 3;
    record.subjects.push_back({PracticeKind::kCause, "a:b", repeated({}, 5, today())});
    record.rounds.push_back(round_of("a1-00000001", today()));
    record.results.push_back(result);
  });
  const auto read = read_apprentice(folder_, "a1");
  ASSERT_TRUE(read) << describe(read.error());
  EXPECT_EQ(read->apprentice, "a1");
  EXPECT_EQ(read->rounds_started, 3);
  ASSERT_EQ(read->subjects.size(), 1U);
  EXPECT_EQ(read->subjects[0].repetition, repeated({}, 5, today()));
  ASSERT_EQ(read->rounds.size(), 1U);
  EXPECT_EQ(read->rounds[0].steps.size(), 2U);
  EXPECT_EQ(read->rounds[0].steps[0].beliefs, (std::vector<Belief>{{"a:b", 62.5}}));
  EXPECT_EQ(read->rounds[0].steps[1].reading, "0.2 bar");
  EXPECT_EQ(read->rounds[0].difficulty, Difficulty::kHard);
  ASSERT_EQ(read->results.size(), 1U);
  EXPECT_EQ(read->results[0].points, 87.25);
  EXPECT_EQ(read->results[0].symptoms, result.symptoms);
}

TEST_F(ApprenticeRecordTest, AFailedChangeKeepsNothing) {
  const auto kept = change_apprentice(folder_, "a1", [](ApprenticeRecord& record) -> Result<void> {
    record.rounds_started = 9;
    return fail(ErrorCode::kNotFound, "records", "nothing to ask");
  });
  EXPECT_FALSE(kept);
  EXPECT_EQ(read_apprentice(folder_, "a1").error().code, ErrorCode::kNotFound);
}

TEST_F(ApprenticeRecordTest, RoundsAndResultsAreBoundedInNumberAndAge) {
  keep("a1", [](ApprenticeRecord& record) {
    record.rounds.push_back(round_of("a1-old", {today().days - std::chrono::days(kRoundDays + 1)}));
    for (std::size_t i = 0; i < kMostRounds; ++i) {
      record.rounds.push_back(round_of("a1-" + std::to_string(i), today()));
    }
    record.results.resize(kMostResults + 5);
    record.results.front().subject = "first";
  });
  auto read = read_apprentice(folder_, "a1").value();
  EXPECT_EQ(read.rounds.size(), kMostRounds);
  EXPECT_EQ(read.rounds.front().id, "a1-0");
  EXPECT_EQ(read.results.size(), kMostResults);
  EXPECT_NE(read.results.front().subject, "first");
  keep("a1",
       [](ApprenticeRecord& record) { record.rounds.push_back(round_of("a1-new", today())); });
  read = read_apprentice(folder_, "a1").value();
  EXPECT_EQ(read.rounds.front().id, "a1-1");
  EXPECT_EQ(read.rounds.back().id, "a1-new");
}

TEST_F(ApprenticeRecordTest, TheExportHoldsResultsAndNoAnswersOfRounds) {
  keep("a1", [](ApprenticeRecord& record) {
    record.rounds.push_back(round_of("a1-00000001", today()));
    record.results.emplace_back().subject = "a:b";
  });
  const std::string exported = exported_json(read_apprentice(folder_, "a1").value());
  EXPECT_THAT(exported, HasSubstr("\"a:b\""));
  EXPECT_THAT(exported, Not(HasSubstr("wastegate_linkage")));
  EXPECT_THAT(exported, Not(HasSubstr("job-77")));
}

TEST_F(ApprenticeRecordTest, DeletedIsGoneAndOnlyThat) {
  keep("a1", [](ApprenticeRecord&) {});
  keep("b2", [](ApprenticeRecord&) {});
  ASSERT_TRUE(forget_apprentice(folder_, "a1"));
  EXPECT_EQ(read_apprentice(folder_, "a1").error().code, ErrorCode::kNotFound);
  EXPECT_EQ(forget_apprentice(folder_, "a1").error().code, ErrorCode::kNotFound);
  EXPECT_TRUE(read_apprentice(folder_, "b2"));
}

TEST_F(ApprenticeRecordTest, OthersOfTheMachineCannotReadIt) {
  keep("a1", [](ApprenticeRecord&) {});
  const auto open_to_others = fs::perms::group_all | fs::perms::others_all;
  EXPECT_EQ(fs::status(folder_.practice()).permissions() & open_to_others, fs::perms::none);
  EXPECT_EQ(fs::status(folder_.practice() / "a1.json").permissions() & open_to_others,
            fs::perms::none);
}

TEST_F(ApprenticeRecordTest, ADamagedFileIsNamedWithWhatToDo) {
  keep("a1", [](ApprenticeRecord&) {});
  for (const char* text :
       {"{", "[]", R"({"schema":1})", R"({"subjects":[],"results":[1],"rounds":[]})"}) {
    std::ofstream(folder_.practice() / "a1.json") << text;
    const auto read = read_apprentice(folder_, "a1");
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().code, ErrorCode::kDamagedStore);
    EXPECT_THAT(read.error().place, HasSubstr("a1.json"));
    EXPECT_THAT(read.error().message, HasSubstr("practice delete"));
  }
}

TEST_F(ApprenticeRecordTest, NoMoreThanSoManyApprentices) {
  fs::create_directories(folder_.practice());
  for (std::size_t i = 0; i < kMostApprentices; ++i) {
    std::ofstream(folder_.practice() / ("x" + std::to_string(i) + ".json")) << "{}";
  }
  const auto kept =
      change_apprentice(folder_, "a1", [](ApprenticeRecord&) { return Result<void>(); });
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.error().code, ErrorCode::kTooLarge);
}

}  // namespace
}  // namespace shoplore
