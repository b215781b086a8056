#include "query/practice/practice_progress.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

PracticeResult cause_round(double said, YesNo right, double points = 50,
                           std::vector<std::string> symptoms = {}) {
  PracticeResult result;
  result.subject = "a:b";
  result.points = points;
  result.right = right;
  result.said = {{said, right}};
  result.symptoms = std::move(symptoms);
  return result;
}

// `right` of `rounds` rounds right, each with that percentage said of the one cause named.
ApprenticeRecord practised(int rounds, int right, double said) {
  ApprenticeRecord record;
  for (int i = 0; i < rounds; ++i) {
    record.results.push_back(cause_round(said, i < right ? YesNo::kYes : YesNo::kNo));
  }
  return record;
}

// The 90 % Jeffreys interval of 28 of 40 is .57 to .81 (R: qbeta(c(.05, .95), 28.5, 12.5)).
TEST(PracticeProgress, CalibrationIsToldInAWord) {
  struct Row {
    int rounds, right;
    double said;
    CalibrationWord word;
  };
  for (const Row& row :
       {Row{29, 29, 10, CalibrationWord::kTooFew}, Row{40, 28, 70, CalibrationWord::kCalibrated},
        Row{40, 28, 58, CalibrationWord::kCalibrated},
        Row{40, 28, 90, CalibrationWord::kOverconfident},
        Row{40, 28, 40, CalibrationWord::kUnderconfident}}) {
    const Calibration calibration =
        progress_of(practised(row.rounds, row.right, row.said)).calibration;
    EXPECT_EQ(calibration.word, row.word) << row.said;
    EXPECT_EQ(calibration.rounds, static_cast<std::size_t>(row.rounds));
    EXPECT_EQ(calibration.first_was_so.count, static_cast<std::uint32_t>(row.right));
    EXPECT_NEAR(calibration.said_of_first, row.said, 1e-9);
  }
}

// Every part said is one thing said; the bins hold all of them.
TEST(PracticeProgress, EveryPartOfABeliefIsInTheTable) {
  ApprenticeRecord record;
  PracticeResult result = cause_round(60, YesNo::kNo);
  result.said = {{60, YesNo::kNo}, {25, YesNo::kYes}, {5, YesNo::kNo}};
  record.results = {result, result};
  const Calibration calibration = progress_of(record).calibration;
  ASSERT_EQ(calibration.bins.size(), kSaidBins);
  EXPECT_EQ(calibration.bins[5].count, 2U);  // 60 % lies on an edge: the lower bin
  EXPECT_EQ(calibration.bins[2].count, 2U);
  EXPECT_EQ(calibration.bins[2].right, 1.0);
  EXPECT_EQ(calibration.bins[0].count, 2U);
  // By hand: (2 x .6 + 2 x .75 + 2 x .05) / 6.
  EXPECT_NEAR(calibration.error, (.6 + .75 + .05) / 3, 1e-12);
}

// What is due comes up because it was not known: it would tell less of its apprentice than he is.
TEST(PracticeProgress, WhatWasDueTellsNoCalibration) {
  ApprenticeRecord record = practised(40, 28, 70);
  for (int i = 0; i < 40; ++i) {
    record.results.push_back(cause_round(70, YesNo::kNo));
    record.results.back().drawn = Drawn::kDue;
  }
  const PracticeProgress progress = progress_of(record);
  EXPECT_EQ(progress.calibration.rounds, 40U);
  EXPECT_EQ(progress.calibration.word, CalibrationWord::kCalibrated);
  EXPECT_EQ(progress.kinds[0].rounds, 80U);
}

TEST(PracticeProgress, WeakIsWhatLiesBelowTheMeanOfAll) {
  ApprenticeRecord record;
  for (int i = 0; i < 5; ++i) {
    record.results.push_back(cause_round(50, YesNo::kYes, 90, {"lack_of_power"}));
    record.results.push_back(cause_round(50, YesNo::kNo, 40, {"abs_lamp_on"}));
  }
  record.results.push_back(cause_round(50, YesNo::kNo, 0, {"misfire"}));  // too few to say
  const PracticeProgress progress = progress_of(record);
  ASSERT_EQ(progress.weak.size(), 1U);
  EXPECT_EQ(progress.weak[0].symptom, "abs_lamp_on");
  EXPECT_DOUBLE_EQ(progress.weak[0].points, 40);
  EXPECT_NEAR(progress.points, (5 * 90 + 5 * 40) / 11.0, 1e-12);
}

TEST(PracticeProgress, MasteredIsWhatIsKnownForAFortnightAndADay) {
  const Date day = *parse_date("2026-03-02");
  const auto subject = [&](const char* cause, int interval, int due_in) {
    return PractisedSubject{PracticeKind::kCause,
                            cause,
                            {250, 3, interval, day, {day.days + std::chrono::days(due_in)}}};
  };
  ApprenticeRecord record;
  record.subjects = {subject("a:known", 15, 15), subject("b:shortly", 14, 14),
                     subject("c:again_today", 15, 0)};
  record.subjects.push_back({PracticeKind::kCode, "P0299", {250, 3, 90, day, day}});
  const PracticeProgress progress = progress_of(record);
  ASSERT_EQ(progress.mastered.size(), 1U);
  EXPECT_EQ(progress.mastered[0].cause, "a:known");
  ASSERT_EQ(progress.to_learn.size(), 2U);
  EXPECT_EQ(progress.to_learn[0].cause, "c:again_today");
}

TEST(PracticeProgress, NothingPractisedIsNothingSaid) {
  const PracticeProgress progress = progress_of({"a1", 0, {}, {}, {}});
  EXPECT_TRUE(progress.kinds.empty());
  EXPECT_EQ(progress.calibration.word, CalibrationWord::kTooFew);
}

}  // namespace
}  // namespace shoplore
