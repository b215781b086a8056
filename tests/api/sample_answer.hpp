// A hand-made answer with every part filled, and one where nothing matches.
#pragma once

#include "query/answer.hpp"

namespace shoplore::testing {

inline EvidenceItem item(std::string attribute, std::string value = "present") {
  return {std::move(attribute), std::move(value)};
}

inline Share share(std::uint32_t count, std::uint32_t out_of, double low, double high) {
  return {count, out_of, {low, high}};
}

inline LikelyCause linkage_cause() {
  LikelyCause cause;
  cause.component = "wastegate_linkage";
  cause.failure = "seized_open";
  cause.share = share(14, 19, 0.5, 0.875);
  cause.vehicles = 13;
  cause.seen = 41;
  cause.probability = 0.8125;
  cause.why = {{item("code:P0299"), 1.75, 17, 19, 60, 1'200},
               {item("symptom:whistle_under_load", "absent"), -0.5, 2, 4, 9, 12}};
  cause.fixes = {{{"replace wastegate_linkage"}, 9, 7, 1, 1, share(7, 8, 0.625, 0.96875)}};
  cause.fixes_together = cause.fixes;
  return cause;
}

inline RecognisedItem recognised(ItemKind kind, std::string id, Span span) {
  RecognisedItem made;
  made.kind = kind;
  made.id = std::move(id);
  made.span = span;
  return made;
}

// Of the question "2016 Brackwater P0299 142k foo no whistle".
inline Understood understood() {
  Understood made;
  made.text = "2016 Brackwater P0299 142k foo no whistle";
  RecognisedItem mileage = recognised(ItemKind::kMileage, "142000", {22, 26});
  mileage.mileage_km = Kilometres{142'000};
  mileage.reading_chosen = "142k taken as kilometres";
  RecognisedItem whistle = recognised(ItemKind::kSymptom, "whistle_under_load", {31, 41});
  whistle.state = Presence::kAbsent;
  made.recognised.items = {recognised(ItemKind::kModelYear, "2016", {0, 4}),
                           recognised(ItemKind::kMake, "Brackwater", {5, 15}),
                           recognised(ItemKind::kCode, "P0299", {16, 21}), mileage, whistle};
  made.recognised.leftover = {{27, 30}};
  made.not_understood = {"foo"};
  made.suggestions = {{"foo", {{EntryKind::kCheck, "fool_test", "test for fools"}}}};
  made.evidence = {item("make", "brackwater"), item("mileage_band", "100"), item("code:P0299"),
                   item("symptom:whistle_under_load", "absent")};
  return made;
}

inline SimilarCase similar_case() {
  SimilarCase made;
  made.id = CaseId{7};
  made.ref = "case-7";
  made.opened = *parse_date("2024-03-02");
  made.vehicle = "2016 Brackwater Tidal BW16D, 142,000 km";
  made.cause = "wastegate linkage, seized open";
  made.fixes = {"replace wastegate_linkage"};
  made.outcome = OutcomeStatus::kStayedFixed;
  made.score = 9.5;
  made.snippet = {"flat uphill, no whistle", {{0, 4}, {16, 23}}};
  return made;
}

inline CheckAdvice next_checks() {
  AdvisedCheck check;
  check.item.attribute = "check:wastegate_linkage_by_hand";
  check.minutes = 5;
  check.removals = {"heat_shield"};
  check.removal_minutes = 10;
  check.information = 0.5;
  check.answerable = 0.9375;
  check.per_minute = 0.03125;
  check.where = "arm at the turbine housing";
  check.how = "Engine off and cold.";
  check.pass_misled = share(3, 50, 0.02, 0.13);
  check.outlooks = {{"fail", 0.75, {{"wastegate_linkage", "seized_open", 0.96875}}},
                    {"pass", 0.25, {{"charge_air_hose", "split", 0.5}}}};
  AdvisedCheck question;
  question.item.attribute = "symptom:whistle_under_load";
  question.minutes = 1;
  question.outlooks = {{"present", 0.125, {{"charge_air_hose", "split", 0.75}}}};
  CheckAdvice advice;
  advice.checks = {check};
  advice.questions = {question};
  advice.repair =
      RepairOnSuspicion{{{"wastegate_linkage", "seized_open", 0.96875, 241}}, 298.5, 315};
  return advice;
}

inline Answer sample_answer() {
  Answer answer;
  answer.understood = understood();
  LikelyCause hose;
  hose.component = "charge_air_hose";
  hose.failure = "split";
  hose.share = share(3, 19, 0.0625, 0.34375);
  hose.vehicles = 3;
  hose.seen = 30;
  hose.probability = 0.125;
  answer.likely_causes = {linkage_cause(), hose};
  answer.not_in_these_records = 0.0234375;
  answer.causes_left_out = 2;
  answer.left_out_probability = 0.0390625;
  answer.breadth = {{"engine family bw16d", {item("code:P0299")}, {}, 3, 3},
                    {"make brackwater",
                     {item("code:P0299")},
                     item("symptom:whistle_under_load", "absent"),
                     19,
                     17}};
  answer.next = next_checks();
  answer.watch_out = {{WarningKind::kEarlierRepair,
                       Stated::kYes,
                       "Of 6 that came in with another turbocharger, "
                       "5 were the linkage.",
                       "replace turbocharger",
                       "wastegate_linkage:seized_open",
                       share(5, 6, 0.5, 0.984375),
                       840,
                       0.75,
                       {CaseId{7}, CaseId{3}},
                       {"case-7", "case-3"}}};
  answer.similar = {similar_case()};
  answer.cautions = {{"hot_exhaust", "hot exhaust", "Work cold.", {"wastegate linkage"}}};
  answer.revision = Revision{2'412};
  answer.cases_in_records = 2'400;
  return answer;
}

inline Answer answer_without_match() {
  Answer answer;
  answer.understood.text = "isolation warning";
  answer.understood.evidence = {item("symptom:whistle_under_load")};
  answer.never_seen = answer.understood.evidence;
  answer.nothing_matches = true;
  answer.breadth = {{"all vehicles", {item("symptom:whistle_under_load")}, {}, 0, 0}};
  answer.cautions = {{"high_voltage", "high voltage", "Stop: a qualified person only.", {}}};
  answer.revision = Revision{2'412};
  answer.cases_in_records = 2'400;
  return answer;
}

}  // namespace shoplore::testing
