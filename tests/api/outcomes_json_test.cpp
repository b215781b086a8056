#include "api/wire/outcomes_json.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace shoplore {
namespace {

using nlohmann::json;

const Vocabulary& vocabulary() {
  static const Vocabulary built_in = Vocabulary::built_in().value();
  return built_in;
}

Date day(const char* text) {
  return parse_date(text).value();
}

TEST(OutcomesJson, SaysWhatIsDue) {
  Vehicle vehicle;
  vehicle.make = "Brackwater";
  const OutcomesDue due{{{"case-7",
                          "4711",
                          vehicle,
                          "wastegate_linkage:seized_open",
                          {"replace wastegate_linkage"},
                          day("2026-03-04"),
                          std::chrono::days{96},
                          day("2026-05-20")}},
                        312};
  EXPECT_EQ(json::parse(outcomes_due_json(due, vocabulary())), json::parse(R"({"due":[{
      "ref":"case-7","job_number":"4711","vehicle":"Brackwater","component":"wastegate_linkage",
      "failure":"seized_open","name":"wastegate linkage, seized open",
      "fixes":["replace wastegate_linkage"],"fixes_name":"replace wastegate linkage",
      "done":"2026-03-04","days_since":96,"asked":"2026-05-20"}],
      "all":312,"due_after_days":60})"));
}

TEST(OutcomesJson, SaysWhatMayBeBack) {
  ComebackOffer offer;
  offer.ref = "case-7";
  offer.done = day("2026-03-04");
  offer.since = std::chrono::days{96};
  offer.cause = "wastegate_linkage:seized_open";
  offer.shared.codes = {"P0299"};
  offer.possible = {ComebackReason::kSameCause, ComebackReason::kPart};
  EXPECT_EQ(json::parse(comeback_json("case-9", {offer}, vocabulary())), json::parse(R"({
      "ref":"case-9","offers":[{"ref":"case-7","done":"2026-03-04","days_since":96,
      "component":"wastegate_linkage","failure":"seized_open",
      "name":"wastegate linkage, seized open","fixes":[],"fixes_name":"nothing written down",
      "shared":{"symptoms":[],"codes":["P0299"]},"possible_reasons":["same_cause","part"]}],
      "window_days":730})"));
  offer.km_since = Kilometres{4'100};
  EXPECT_EQ(json::parse(comeback_json("", {offer}, vocabulary()))["offers"][0]["km_since"], 4'100);
}

TEST(OutcomesJson, ReadsAReportStrictly) {
  const auto report = outcome_report_from_json(R"({"status":"came_back","as_of":"2026-03-02",
      "mileage_km":146100,"reason":"wrong_cause","of":"case-9",
      "cause":{"component":"turbocharger","failure":"worn"}})");
  ASSERT_TRUE(report) << describe(report.error());
  EXPECT_EQ(report->status, OutcomeStatus::kCameBack);
  EXPECT_EQ(report->as_of, day("2026-03-02"));
  EXPECT_EQ(report->mileage_km, Kilometres{146'100});
  EXPECT_EQ(report->reason, ComebackReason::kWrongCause);
  EXPECT_EQ(report->comeback, "case-9");
  EXPECT_EQ(report->right_cause->failure, "worn");
  for (const char* bad : {"[]", "{}", R"({"status":"came_back","who":"x"})",
                          R"({"status":"came_back","cause":{"component":"turbocharger"}})",
                          R"({"status":"came_back","as_of":"2026-02-30"})"}) {
    EXPECT_FALSE(outcome_report_from_json(bad)) << bad;
  }
}

}  // namespace
}  // namespace shoplore
