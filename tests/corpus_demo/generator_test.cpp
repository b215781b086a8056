#include "corpus-demo/generator.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "corpus-demo/case_closing.hpp"
#include "indexer/case_json.hpp"
#include "indexer/case_rules.hpp"
#include "indexer/identity_mentions.hpp"

namespace shoplore {
namespace {

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

std::vector<DemoCase> generated(std::int64_t cases, std::uint64_t seed) {
  std::vector<DemoCase> all;
  generate_workshop(demo_world(), vocabulary(), {cases, seed},
                    [&](const DemoCase& drawn) { all.push_back(drawn); });
  return all;
}

const std::vector<DemoCase>& demo() {
  static const std::vector<DemoCase> cases = generated(2'400, 1);
  return cases;
}

std::string as_lines(const std::vector<DemoCase>& cases) {
  std::string lines;
  for (const DemoCase& each : cases) lines += case_to_json(each.record) + "\n";
  return lines;
}

std::map<CaseState, int> count_states(const std::vector<DemoCase>& cases) {
  std::map<CaseState, int> counts;
  for (const DemoCase& each : cases) ++counts[each.record.state];
  return counts;
}

TEST(Generator, SameSeedGivesTheSameBytes) {
  EXPECT_EQ(as_lines(generated(400, 3)), as_lines(generated(400, 3)));
}

TEST(Generator, AnotherSeedGivesAnotherWorkshop) {
  EXPECT_NE(as_lines(generated(50, 3)), as_lines(generated(50, 4)));
}

// Showcases come on top: the same 21 closed ones in every workshop.
TEST(Generator, ClosesExactlyAsManyCasesAsAskedForBesidesTheShowcases) {
  for (const int cases : {1, 37, 1'000}) {
    EXPECT_EQ(count_states(generated(cases, 5))[CaseState::kClosed], cases + 21);
  }
  EXPECT_EQ(count_states(demo())[CaseState::kClosed], 2'421);
}

TEST(Generator, HoldsVisitsWithoutComplaintAndCasesOfEveryOtherState) {
  auto counts = count_states(demo());
  EXPECT_GT(counts[CaseState::kNoComplaint], 400);
  for (const CaseState state :
       {CaseState::kOpen, CaseState::kWaiting, CaseState::kEnded, CaseState::kEnquiry}) {
    EXPECT_GT(counts[state], 0) << name_of(state);
  }
}

TEST(Generator, EveryCaseKeepsTheRules) {
  for (const DemoCase& each : demo()) {
    const auto kept = check_rules(each.record, vocabulary());
    ASSERT_TRUE(kept) << each.record.ref << " " << describe(kept.error());
  }
}

TEST(Generator, EveryCaseSurvivesJsonUnchanged) {
  for (const DemoCase& each : demo()) {
    const std::string text = case_to_json(each.record);
    const auto read = case_from_json(text);
    ASSERT_TRUE(read) << each.record.ref << " " << describe(read.error());
    ASSERT_EQ(case_to_json(*read), text);
  }
}

TEST(Generator, RefsAreUnique) {
  std::set<std::string> refs;
  for (const DemoCase& each : demo()) {
    EXPECT_TRUE(refs.insert(each.record.ref).second) << each.record.ref;
  }
}

TEST(Generator, OpensEveryCaseWithinTheEightYears) {
  for (const DemoCase& each : demo()) {
    ASSERT_TRUE(each.record.opened >= kFirstDay && each.record.opened <= kLastDay);
  }
}

// "Will not charge" must find nothing in the demo: no record and no text speaks of it.
TEST(Generator, NeverSpeaksOfChargingAVehicleOrItsIsolation) {
  const std::string lines = as_lines(demo());
  for (const char* word : {"will_not_charge", "isolation", "traction_battery", "traction battery",
                           "charge port", "charge_port", "high_voltage", "high voltage"}) {
    EXPECT_EQ(lines.find(word), std::string::npos) << word;
  }
}

TEST(Generator, ElectricVehiclesComeOnlyForRunningGearTheSmallBatteryAndService) {
  const std::set<std::string> allowed{
      "wheel_bearing", "tyre",       "abs_tone_ring", "caliper_slide",
      "brake_disc",    "ball_joint", "coil_spring",   "twelve_volt_auxiliary_battery"};
  int seen = 0;
  for (const DemoCase& each : demo()) {
    const Case& record = each.record;
    if (record.vehicle.fuel != Fuel::kElectric || !record.cause) continue;
    ++seen;
    EXPECT_TRUE(allowed.contains(record.cause->component)) << record.ref;
  }
  EXPECT_GT(seen, 20);
}

TEST(Generator, TextsHoldNothingThatLooksLikeAnIdentity) {
  WordsToKeep keep;
  for (const EngineFamily& family : demo_world().families) keep.add(family.id);
  for (const DemoCase& each : demo()) {
    for (const std::string* text : {&each.record.complaint, &each.record.notes}) {
      ASSERT_TRUE(find_mentions(*text, {}, keep).empty()) << *text;
    }
    ASSERT_TRUE(find_mentions(each.record.ref, {}, keep, TextKind::kReference).empty());
  }
}

TEST(Generator, MileageOfAVehicleNeverFalls) {
  std::map<std::string, std::map<Date, std::pair<std::int64_t, std::int64_t>>> seen;
  for (const DemoCase& each : demo()) {
    const Vehicle& vehicle = each.record.vehicle;
    if (vehicle.token.empty() || !vehicle.mileage_km) continue;
    const auto km = vehicle.mileage_km->value;
    auto [day, is_new] = seen[vehicle.token].emplace(each.record.opened, std::pair(km, km));
    if (is_new) continue;
    day->second = {std::min(day->second.first, km), std::max(day->second.second, km)};
  }
  for (const auto& [token, days] : seen) {
    std::int64_t last = 0;
    for (const auto& [day, lowest_highest] : days) {
      EXPECT_GE(lowest_highest.first, last) << token << " " << format_date(day);
      last = lowest_highest.second;
    }
  }
}

TEST(Generator, AVehicleKeepsItsMakeAndModelYear) {
  std::map<std::string, std::pair<char, int>> known;
  for (const DemoCase& each : demo()) {
    const Vehicle& vehicle = each.record.vehicle;
    if (vehicle.token.empty() || !vehicle.model_year) continue;
    const std::pair now(static_cast<char>(vehicle.make[0] | 0x20), *vehicle.model_year);
    EXPECT_EQ(known.emplace(vehicle.token, now).first->second, now) << each.record.ref;
  }
}

TEST(Generator, EveryComebackFollowsACaseThatCameBackOnThatDay) {
  std::map<std::string, const Case*> by_ref;
  int comebacks = 0;
  for (const DemoCase& each : demo()) {
    const Case& record = each.record;
    by_ref[record.ref] = &record;
    if (record.follows.empty()) continue;
    ++comebacks;
    ASSERT_TRUE(by_ref.contains(record.follows)) << record.ref;
    const Case& before = *by_ref[record.follows];
    EXPECT_EQ(before.outcome->status, OutcomeStatus::kCameBack);
    EXPECT_TRUE(before.outcome->as_of == record.opened);
    EXPECT_EQ(before.vehicle.token, record.vehicle.token);
  }
  EXPECT_GT(comebacks, 100);
}

TEST(Generator, EveryCaseThatCameBackIsFollowed) {
  std::set<std::string> followed;
  for (const DemoCase& each : demo()) followed.insert(each.record.follows);
  for (const DemoCase& each : demo()) {
    const auto& outcome = each.record.outcome;
    if (outcome && outcome->status == OutcomeStatus::kCameBack) {
      EXPECT_TRUE(followed.contains(each.record.ref)) << each.record.ref;
    }
  }
}

// Binomial(2400, .05): mean 120, standard deviation 10.7.
TEST(Generator, OneRecordInTwentyIsMessy) {
  const auto messy = std::count_if(demo().begin(), demo().end(),
                                   [](const DemoCase& each) { return each.hand == Hand::kMessy; });
  EXPECT_NEAR(static_cast<double>(messy), 120, 4 * 10.7);
}

TEST(Generator, MessShowsInEveryWayItIsSaidTo) {
  int no_year = 0, wrong_case = 0, in_notes = 0, miles = 0, no_scan = 0;
  for (const DemoCase& each : demo()) {
    if (each.hand != Hand::kMessy) continue;
    const Case& record = each.record;
    no_year += record.vehicle.model_year ? 0 : 1;
    wrong_case += record.vehicle.make[0] >= 'a' || record.vehicle.make[1] <= 'Z' ? 1 : 0;
    in_notes += record.complaint.find_first_not_of(' ') == std::string::npos ? 1 : 0;
    miles += record.notes.find("thousand miles") != std::string::npos ? 1 : 0;
    no_scan += record.scanned ? 0 : 1;
  }
  for (const int count : {no_year, wrong_case, in_notes, miles, no_scan}) EXPECT_GE(count, 10);
}

TEST(Generator, OnlyMessyRecordsLeaveOpenWhetherAScanWasDone) {
  for (const DemoCase& each : demo()) {
    if (each.hand == Hand::kOrdinary && each.record.state == CaseState::kClosed) {
      ASSERT_TRUE(each.record.scanned) << each.record.ref;
    }
  }
}

// A visit of two faults: two cases of one vehicle, one day and one mileage, and two causes.
TEST(Generator, CasesOfOneVisitShareVehicleAndDay) {
  std::map<std::string, std::vector<const Case*>> visits;
  for (const DemoCase& each : demo()) {
    if (each.pattern && each.record.visit && !each.record.visit->ref.empty()) {
      visits[each.record.visit->ref].push_back(&each.record);
    }
  }
  EXPECT_GT(visits.size(), 30u);
  for (const auto& [ref, cases] : visits) {
    ASSERT_EQ(cases.size(), 2u) << ref;
    const Case &a = *cases[0], &b = *cases[1];
    EXPECT_EQ(a.vehicle.token, b.vehicle.token) << ref;
    EXPECT_TRUE(a.opened == b.opened) << ref;
    EXPECT_NE(std::pair(a.cause->component, a.cause->failure),
              std::pair(b.cause->component, b.cause->failure));
    if (!a.vehicle.mileage_km || !b.vehicle.mileage_km) continue;
    EXPECT_EQ(a.vehicle.mileage_km->value, b.vehicle.mileage_km->value) << ref;
  }
}

TEST(Generator, CasesEndInEveryWayThereIs) {
  std::map<EndedHow, int> ways;
  for (const DemoCase& each : demo()) {
    if (each.record.ended) ++ways[*each.record.ended];
  }
  for (const auto& [how, name] : kEnumNames<EndedHow>) EXPECT_GE(ways[how], 3) << name;
}

TEST(Generator, DeclinedWorkThatConcernsSafetyWasWarnedAbout) {
  int declined = 0;
  for (const DemoCase& each : demo()) {
    for (const Declined& work : each.record.declined) {
      ++declined;
      EXPECT_EQ(work.safety == YesNo::kYes, work.warned_on.has_value()) << each.record.ref;
    }
  }
  EXPECT_GT(declined, 80);
}

TEST(Generator, ComebacksHaveEveryReasonAWorkshopOwnsUpTo) {
  std::map<ComebackReason, int> reasons;
  for (const DemoCase& each : demo()) {
    const auto& outcome = each.record.outcome;
    if (outcome && outcome->status == OutcomeStatus::kCameBack) ++reasons[outcome->reason.value()];
  }
  for (const ComebackReason reason : {ComebackReason::kSameCause, ComebackReason::kWrongCause,
                                      ComebackReason::kPart, ComebackReason::kWorkmanship}) {
    EXPECT_GT(reasons[reason], 3) << name_of(reason);
  }
}

TEST(Generator, WhatAProofCatchesIsPutRightAndProvedAgain) {
  int steps = 0, caught = 0;
  for (const DemoCase& each : demo()) {
    if (each.hand == Hand::kShowcase) continue;
    const std::vector<Verification>& done = each.record.verification;
    for (std::size_t i = 0; i < done.size(); ++i) {
      const bool again = i > 0 && done[i - 1].verdict == Verdict::kFail;
      steps += again ? 0 : 1;
      if (done[i].verdict != Verdict::kFail) continue;
      ++caught;
      ASSERT_LT(i + 1, done.size()) << each.record.ref;
      EXPECT_EQ(done[i + 1].id, done[i].id) << each.record.ref;
      EXPECT_EQ(done[i + 1].verdict, Verdict::kPass) << each.record.ref;
    }
  }
  // Five standard deviations of so many draws.
  EXPECT_GT(steps, 1'500);
  EXPECT_NEAR(caught, kProofCatches * steps, 5 * std::sqrt(kProofCatches * steps));
}

TEST(Generator, ReadingsLieWhereTheirVerdictSays) {
  int readings = 0, open = 0;
  for (const DemoCase& each : demo()) {
    if (each.hand == Hand::kShowcase) continue;
    for (const Check& check : each.record.checks) {
      if (!check.reading) continue;
      const Entry& entry = *vocabulary().find(EntryKind::kCheck, check.id);
      EXPECT_EQ(check.unit, entry.unit) << check.id;
      ++readings;
      if (!check.reading->number) {
        ++open;
        EXPECT_EQ(check.verdict, Verdict::kFail) << check.id;
        continue;
      }
      const double value = *check.reading->number;
      const bool inside = value >= *entry.low && value <= *entry.high;
      EXPECT_EQ(inside, check.verdict == Verdict::kPass)
          << each.record.ref << " " << check.id << " " << value;
    }
  }
  EXPECT_GT(readings, 900);
  EXPECT_GT(open, 0);
}

TEST(Generator, NobodySwapsCoilsOnADieselOrMeasuresGlowPlugsOnAPetrol) {
  const std::set<std::string> spark{"coil_swap", "spark_plug_look", "plug_well_look",
                                    "purge_valve_blow"};
  const std::set<std::string> diesel{"glow_supply", "glow_plug_resistance", "injector_leak_off",
                                     "nox_live"};
  for (const DemoCase& each : demo()) {
    for (const Check& check : each.record.checks) {
      const auto fuel = each.record.vehicle.fuel;
      if (fuel == Fuel::kDiesel) {
        EXPECT_FALSE(spark.contains(check.id)) << each.record.ref << " " << check.id;
      } else if (fuel) {
        EXPECT_FALSE(diesel.contains(check.id)) << each.record.ref << " " << check.id;
      }
    }
  }
}

TEST(Generator, AVehicleKeepsItsDutyAndWhereItStands) {
  std::map<std::string, std::string> known;  // token and fact -> value
  for (const DemoCase& each : demo()) {
    const Case& record = each.record;
    if (record.vehicle.token.empty()) continue;
    for (const auto& [name, value] : record.facts) {
      EXPECT_EQ(known.emplace(record.vehicle.token + name, value).first->second, value)
          << record.ref;
    }
  }
}

TEST(Generator, SpeaksInManyWords) {
  std::set<std::string> complaints;
  int told = 0;
  for (const DemoCase& each : demo()) {
    if (each.record.complaint.size() < 30) continue;
    ++told;
    complaints.insert(each.record.complaint);
  }
  EXPECT_GT(told, 1'000);
  EXPECT_GT(static_cast<double>(complaints.size()), .97 * told);
}

}  // namespace
}  // namespace shoplore
