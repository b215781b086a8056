#include "corpus-demo/generator.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>
#include <vector>

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

TEST(Generator, ClosesExactlyAsManyCasesAsAskedFor) {
  for (const int cases : {1, 37, 1'000}) {
    EXPECT_EQ(count_states(generated(cases, 5))[CaseState::kClosed], cases);
  }
  EXPECT_EQ(count_states(demo())[CaseState::kClosed], 2'400);
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

TEST(Generator, ElectricVehiclesComeOnlyForRunningGearAndService) {
  for (const DemoCase& each : demo()) {
    const Case& record = each.record;
    if (record.vehicle.fuel != Fuel::kElectric || !record.cause) continue;
    EXPECT_TRUE(record.cause->component == "wheel_bearing" ||
                record.cause->component == "abs_tone_ring")
        << record.ref;
  }
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

}  // namespace
}  // namespace shoplore
