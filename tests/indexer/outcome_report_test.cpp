#include "indexer/outcome_report.hpp"

#include <gtest/gtest.h>

#include "tests/query/outcomes/record_shop.hpp"

namespace shoplore {
namespace {

using testing::linkage_replaced;
using testing::opened_case;
using testing::turbo_replaced;

const Date kToday = parse_date("2026-10-01").value();

class OutcomeReports : public testing::RecordShop {
 protected:
  void SetUp() override {
    RecordShop::SetUp();
    add(turbo_replaced("done", "2026-03-01", 120'000));
    add(opened_case("open", "2026-05-01", 124'000));
    add(linkage_replaced("back", "2026-05-02", 124'000));
  }
  Result<Recorded> record(const OutcomeReport& report, const std::string& ref = "done") {
    return record_outcome(*records_, ref, {}, report, kToday, Role::kTechnician);
  }
  void expect_refused(const OutcomeReport& report, const std::string& place,
                      const std::string& reason, const std::string& ref = "done") {
    const Revision before = records_->store().revision().value();
    const auto recorded = record(report, ref);
    ASSERT_FALSE(recorded) << reason;
    EXPECT_EQ(recorded.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(recorded.error().place, place) << describe(recorded.error());
    EXPECT_NE(describe(recorded.error()).find(reason), std::string::npos)
        << describe(recorded.error());
    EXPECT_EQ(records_->store().revision().value(), before) << "something was written";
  }
  static OutcomeReport came_back(std::optional<ComebackReason> reason, std::string as = {}) {
    OutcomeReport report;
    report.status = OutcomeStatus::kCameBack;
    report.reason = reason;
    report.comeback = std::move(as);
    return report;
  }
};

TEST_F(OutcomeReports, AreOfTodayUnlessSaid) {
  OutcomeReport report;
  report.status = OutcomeStatus::kStayedFixed;
  ASSERT_TRUE(record(report));
  EXPECT_EQ(read("done").outcome->as_of, kToday);
  report.as_of = parse_date("2026-06-01").value();
  report.mileage_km = Kilometres{126'000};
  ASSERT_TRUE(record(report));
  EXPECT_EQ(read("done").outcome->as_of, report.as_of);
  EXPECT_EQ(read("done").outcome->mileage_km, report.mileage_km);
}

TEST_F(OutcomeReports, AComebackThatIsHereIsLinked) {
  ASSERT_TRUE(record(came_back(ComebackReason::kPart, "open")));
  EXPECT_EQ(read("open").follows, "done");
  const Outcome outcome = *read("done").outcome;
  EXPECT_EQ(outcome.status, OutcomeStatus::kCameBack);
  EXPECT_EQ(outcome.as_of, parse_date("2026-05-01").value());
  EXPECT_EQ(outcome.mileage_km, Kilometres{124'000});
  EXPECT_EQ(outcome.reason, ComebackReason::kPart);
}

TEST_F(OutcomeReports, AWrongCauseIsRevisedToThatOfTheComeback) {
  ASSERT_TRUE(record(came_back(ComebackReason::kWrongCause, "back")));
  const Case revised = read("done");
  EXPECT_EQ(revised.cause->component, "wastegate_linkage");
  EXPECT_EQ(revised.cause->failure, "seized_open");
  EXPECT_EQ(revised.cause->proof, Proof::kSeen);
  EXPECT_EQ(revised.correction->fixes.front().component, "turbocharger") << "what was done stays";
  const auto history = records_->store().history(records_->store().read("done")->id);
  ASSERT_EQ(history->size(), 2U);
  EXPECT_EQ(case_from_json(history->front().body)->cause->component, "turbocharger");
}

TEST_F(OutcomeReports, AWrongCauseMayBeNamed) {
  OutcomeReport report = came_back(ComebackReason::kWrongCause);
  report.right_cause = RightCause{"charge_air_hose", "split"};
  ASSERT_TRUE(record(report));
  EXPECT_EQ(read("done").cause->component, "charge_air_hose");
  EXPECT_EQ(read("done").cause->proof, Proof::kPresumed);
}

TEST_F(OutcomeReports, SaidAgainChangeNothing) {
  ASSERT_TRUE(record(came_back(ComebackReason::kWrongCause, "back")));
  const Revision once = records_->store().revision().value();
  ASSERT_TRUE(record(came_back(ComebackReason::kWrongCause, "back")));
  EXPECT_EQ(records_->store().revision().value(), once);
}

TEST_F(OutcomeReports, AHalfMadeLinkIsMadeWholeBySayingItAgain) {
  ASSERT_TRUE(records_->change("back", {}, R"({"follows":"done"})", Role::kTechnician));
  ASSERT_TRUE(record(came_back(ComebackReason::kWrongCause, "back")));
  EXPECT_EQ(read("done").outcome->status, OutcomeStatus::kCameBack);
  EXPECT_EQ(read("done").cause->component, "wastegate_linkage");
}

TEST_F(OutcomeReports, WhatCannotBeIsRefusedByNameAndNothingIsWritten) {
  OutcomeReport stayed;
  stayed.status = OutcomeStatus::kStayedFixed;
  expect_refused(stayed, "open", "only a closed case has an outcome", "open");
  OutcomeReport bad = stayed;
  bad.reason = ComebackReason::kPart;
  expect_refused(bad, "/reason", "only what came_back");
  bad = stayed;
  bad.comeback = "back";
  expect_refused(bad, "/of", "only what came_back");
  bad = stayed;
  bad.as_of = parse_date("2026-02-28").value();
  expect_refused(bad, "/as_of", "before the closing");
  bad.as_of = parse_date("2026-10-02").value();
  expect_refused(bad, "/as_of", "after today");
  bad = stayed;
  bad.mileage_km = Kilometres{119'999};
  expect_refused(bad, "/mileage_km", "less than the 120000 km");
  expect_refused(came_back({}, "done"), "/of", "of itself");
  expect_refused(came_back(ComebackReason::kWrongCause), "/cause", "needs the right one");
  expect_refused(came_back(ComebackReason::kWrongCause, "open"), "/cause", "close that case first");
  bad = came_back(ComebackReason::kWrongCause);
  bad.right_cause = RightCause{"turbocharger", "worn"};
  expect_refused(bad, "/cause", "recorded already");
  bad.right_cause = RightCause{"flux_capacitor", "worn"};
  expect_refused(bad, "/cause/component", "flux_capacitor");
  bad = came_back(ComebackReason::kPart);
  bad.right_cause = RightCause{"charge_air_hose", "split"};
  expect_refused(bad, "/cause", "only a comeback for wrong_cause");
}

TEST_F(OutcomeReports, AComebackOfAnotherVehicleOrOfAnotherCaseIsRefused) {
  Case other = opened_case("other", "2026-05-03", 124'000);
  other.vehicle.token = std::string(32, 'b');
  add(other);
  expect_refused(came_back({}, "other"), "/of", "another vehicle");
  Case lower = opened_case("lower", "2026-05-03", 100'000);
  add(lower);
  expect_refused(came_back({}, "lower"), "/of", "120000 km at the repair");
  ASSERT_TRUE(record(came_back({}, "open")));
  expect_refused(came_back({}, "open"), "/of", "follows done already", "back");
}

TEST_F(OutcomeReports, OfNoCaseAreNotFound) {
  EXPECT_EQ(record({}, "nobody").error().code, ErrorCode::kNotFound);
  EXPECT_EQ(record(came_back({}, "nobody")).error().place, "nobody");
}

TEST_F(OutcomeReports, LoseAgainstAChangeMeanwhile) {
  const auto recorded =
      record_outcome(*records_, "done", Revision{999}, {}, kToday, Role::kTechnician);
  ASSERT_FALSE(recorded);
  EXPECT_EQ(recorded.error().code, ErrorCode::kConflict);
}

}  // namespace
}  // namespace shoplore
