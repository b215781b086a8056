#include "query/lives/vehicle_histories.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <random>

#include "indexer/records.hpp"

namespace shoplore {
namespace {

Date day(const char* text) {
  return parse_date(text).value();
}

const std::string kOne(32, 'a'), kTwo(32, 'b');

class VehicleHistories : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-visits-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    records_ = std::make_unique<Records>(std::move(*Records::create({home_ / "shop"})));
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  void add(const Case& record) {
    const auto added = records_->add({record, {}}, Role::kTechnician);
    ASSERT_TRUE(added) << describe(added.error());
  }
  std::vector<VehicleHistory> all() const {
    auto histories = vehicle_histories(records_->store(), records_->vocabulary());
    EXPECT_TRUE(histories) << describe(histories.error());
    return histories ? *histories : std::vector<VehicleHistory>{};
  }

  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
};

Case visit(const std::string& ref, const std::string& token, const char* opened, CaseState state) {
  Case record;
  record.ref = ref;
  record.state = state;
  record.opened = day(opened);
  record.vehicle.token = token;
  record.vehicle.make = "Brackwater";
  if (state == CaseState::kNoComplaint) record.visit = Visit{VisitKind::kService, ""};
  return record;
}

Case repaired(const std::string& ref, const std::string& token, const char* opened,
              const char* closed) {
  Case record = visit(ref, token, opened, CaseState::kClosed);
  record.closed = day(closed);
  record.vehicle.mileage_km = Kilometres{120'000};
  record.vehicle.engine_family = "BW16D";
  record.vehicle.model_year = 2016;
  record.symptoms = {{"lack_of_power", Presence::kPresent, {}, {}, {}},
                     {"whistle_under_load", Presence::kAbsent, {}, {}, {}}};
  record.codes.resize(2);
  for (Code& code : record.codes) code.code = "P0299";
  record.codes.back().status = CodeStatus::kPending;
  record.cause = Cause{"wastegate_linkage", "seized_open", Proof::kSeen};
  record.contributing = {Cause{"exhaust_mount", "broken", Proof::kSeen}};
  record.correction = Correction{};
  record.correction->fixes = {{"replace", "wastegate_linkage"}};
  return record;
}

TEST_F(VehicleHistories, VisitsStandByDayWhateverTheOrderTheyWereRecordedIn) {
  add(repaired("later", kOne, "2026-03-01", "2026-03-04"));
  add(visit("earlier", kOne, "2025-06-01", CaseState::kNoComplaint));
  add(visit("between", kOne, "2025-12-01", CaseState::kOpen));
  const auto histories = all();
  ASSERT_EQ(histories.size(), 1U);
  std::vector<std::string> refs;
  for (const PastVisit& each : histories.front().visits) refs.push_back(each.ref);
  EXPECT_EQ(refs, (std::vector<std::string>{"earlier", "between", "later"}));
}

TEST_F(VehicleHistories, AVisitSaysWhatWasFoundAndDone) {
  add(repaired("r", kOne, "2026-03-01", "2026-03-04"));
  const auto histories = all();
  ASSERT_EQ(histories.size(), 1U);
  const PastVisit& seen = histories.front().visits.front();
  EXPECT_EQ(seen.symptoms, std::vector<std::string>{"lack_of_power"});
  EXPECT_EQ(seen.codes, std::vector<std::string>{"P0299"});
  EXPECT_EQ(seen.cause, "wastegate_linkage:seized_open");
  EXPECT_EQ(seen.other_causes, std::vector<std::string>{"exhaust_mount:broken"});
  EXPECT_EQ(seen.fixes, std::vector<std::string>{"replace wastegate_linkage"});
  EXPECT_EQ(seen.km, Kilometres{120'000});
  EXPECT_EQ(seen.done(), day("2026-03-04"));
}

TEST_F(VehicleHistories, TheVehicleIsAsLastWrittenDown) {
  Case first = repaired("first", kOne, "2025-03-01", "2025-03-04");
  first.vehicle.engine_family = "BW20D";
  add(first);
  add(repaired("second", kOne, "2026-03-01", "2026-03-04"));
  add(visit("third", kOne, "2026-05-01", CaseState::kNoComplaint));  // names no family
  const auto histories = all();
  ASSERT_EQ(histories.size(), 1U);
  EXPECT_EQ(histories.front().engine_family, "bw16d");
  EXPECT_EQ(histories.front().model_year, 2016);
}

TEST_F(VehicleHistories, EnquiriesAndWithdrawnRecordsAreNoVisits) {
  add(visit("asked", kOne, "2026-03-01", CaseState::kEnquiry));
  add(visit("mistake", kTwo, "2026-03-01", CaseState::kWithdrawn));
  EXPECT_TRUE(all().empty());
  const auto none = history_of_vehicle(records_->store(), records_->vocabulary(), kOne);
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().code, ErrorCode::kNotFound);
}

TEST_F(VehicleHistories, VehiclesNobodyKnowsAgainAreOneEach) {
  add(visit("x", "", "2026-03-01", CaseState::kOpen));
  add(visit("y", "", "2026-03-02", CaseState::kOpen));
  add(visit("z", kOne, "2026-03-03", CaseState::kOpen));
  const auto histories = all();
  ASSERT_EQ(histories.size(), 3U);
  EXPECT_EQ(histories[0].token, kOne);
  EXPECT_EQ(histories[1].visits.front().ref, "x");
  EXPECT_EQ(histories[2].visits.front().ref, "y");
}

TEST_F(VehicleHistories, ThoseWithACauseAreThoseOfAllThatHadIt) {
  add(repaired("had", kOne, "2026-03-01", "2026-03-04"));
  add(visit("service", kOne, "2026-05-01", CaseState::kNoComplaint));
  Case other = repaired("other", kTwo, "2026-03-01", "2026-03-04");
  other.cause = Cause{"turbocharger", "worn", Proof::kSeen};
  add(other);
  add(repaired("nameless", "", "2026-03-01", "2026-03-04"));
  const auto histories = histories_with_cause(records_->store(), records_->vocabulary(),
                                              "wastegate_linkage:seized_open");
  ASSERT_TRUE(histories) << describe(histories.error());
  ASSERT_EQ(histories->size(), 2U);
  EXPECT_EQ((*histories)[0].token, kOne);
  EXPECT_EQ((*histories)[0].visits.size(), 2U) << "its other visits too";
  EXPECT_EQ((*histories)[1].visits.front().ref, "nameless");
  EXPECT_TRUE(
      histories_with_cause(records_->store(), records_->vocabulary(), "clutch:worn")->empty());
}

TEST_F(VehicleHistories, OneVehicleAloneIsTheSameAsAmongAll) {
  std::mt19937_64 random(20261126);
  for (int i = 0; i < 60; ++i) {
    const std::string opened = "2026-0" + std::to_string(1 + random() % 9) + "-15";
    const std::string& token = random() % 2 == 0 ? kOne : kTwo;
    const std::string ref = "n" + std::to_string(i);
    add(random() % 3 == 0 ? visit(ref, token, opened.c_str(), CaseState::kNoComplaint)
                          : repaired(ref, token, opened.c_str(), opened.c_str()));
  }
  const auto histories = all();
  ASSERT_EQ(histories.size(), 2U);
  for (const VehicleHistory& whole : histories) {
    const auto alone = history_of_vehicle(records_->store(), records_->vocabulary(), whole.token);
    ASSERT_TRUE(alone) << describe(alone.error());
    EXPECT_EQ(alone->engine_family, whole.engine_family);
    ASSERT_EQ(alone->visits.size(), whole.visits.size());
    for (std::size_t i = 0; i < whole.visits.size(); ++i) {
      EXPECT_EQ(alone->visits[i].ref, whole.visits[i].ref);
      EXPECT_EQ(alone->visits[i].opened, whole.visits[i].opened);
    }
  }
}

}  // namespace
}  // namespace shoplore
