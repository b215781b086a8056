#include "indexer/case_links.hpp"

#include <gtest/gtest.h>

#include "tests/query/outcomes/record_shop.hpp"

namespace shoplore {
namespace {

using testing::opened_case;
using testing::turbo_replaced;

class CaseLinks : public testing::RecordShop {
 protected:
  void SetUp() override {
    RecordShop::SetUp();
    add(turbo_replaced("done", "2026-03-01", 120'000));
    add(opened_case("open", "2026-03-01", 120'000));
  }
  Case back() const {
    Case record = opened_case("back", "2026-05-01", 124'000);
    record.follows = "done";
    return record;
  }
  void expect_refused(const Case& record, const std::string& place, const std::string& reason) {
    const auto added = records_->add({record, {}}, Role::kTechnician);
    ASSERT_FALSE(added) << place;
    EXPECT_EQ(added.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(added.error().place, place) << describe(added.error());
    EXPECT_NE(describe(added.error()).find(reason), std::string::npos) << describe(added.error());
    EXPECT_FALSE(records_->store().read(record.ref)) << "it was stored all the same";
  }
};

TEST_F(CaseLinks, AComebackMayFollowAClosedCaseOfItsVehicle) {
  add(back());
  EXPECT_EQ(read("back").follows, "done");
  Case nameless = back();
  nameless.ref = "nameless";
  nameless.vehicle.token.clear();
  add(nameless);
}

TEST_F(CaseLinks, WhatCannotBeIsRefusedByName) {
  Case record = back();
  record.follows = "nobody";
  expect_refused(record, "/follows", "there is no case nobody");
  record.follows = "open";
  expect_refused(record, "/follows", "open is open");
  record.follows = "back";
  expect_refused(record, "/follows", "cannot follow itself");
  record = back();
  record.vehicle.token = std::string(32, 'b');
  expect_refused(record, "/follows", "another vehicle");
  record = back();
  record.opened = parse_date("2026-02-28").value();
  expect_refused(record, "/opened", "before done was closed");
  record = back();
  record.vehicle.mileage_km = Kilometres{119'999};
  expect_refused(record, "/vehicle/mileage_km", "120000 km at the repair of done");
}

TEST_F(CaseLinks, AChangeIsRefusedLikewise) {
  const auto linked = records_->change("open", {}, R"({"follows":"nobody"})", Role::kTechnician);
  ASSERT_FALSE(linked);
  EXPECT_EQ(linked.error().place, "/follows");
  add(back());
  const auto backwards =
      records_->change("back", {}, R"({"vehicle":{"mileage_km":1000}})", Role::kTechnician);
  ASSERT_FALSE(backwards);
  EXPECT_EQ(backwards.error().place, "/vehicle/mileage_km");
}

TEST_F(CaseLinks, TwoCasesOfOneDayDoNotFollowEachOther) {
  Case second = turbo_replaced("second", "2026-03-01", 120'000);
  second.follows = "done";
  add(second);
  const auto crossed = records_->change("done", {}, R"({"follows":"second"})", Role::kTechnician);
  ASSERT_FALSE(crossed);
  EXPECT_EQ(crossed.error().place, "/follows");
}

TEST_F(CaseLinks, AnEarlierCaseTakenBackDoesNotLockTheLaterOne) {
  add(back());
  ASSERT_TRUE(records_->change("done", {}, R"({"state":"withdrawn"})", Role::kTechnician));
  EXPECT_TRUE(records_->change("back", {}, R"({"notes":"more"})", Role::kTechnician));
}

TEST_F(CaseLinks, AnImportMayBringTheComebackFirst) {
  std::stringstream lines(
      R"({"ref":"late","state":"open","opened":"2026-05-01","follows":"early"})"
      "\n"
      R"({"ref":"early","state":"closed","opened":"2026-03-01","closed":"2026-03-02",)"
      R"("cause":{"component":"turbocharger","failure":"worn"}})"
      "\n");
  const auto imported = records_->import(lines, [](std::int64_t) {});
  ASSERT_TRUE(imported) << describe(imported.error());
  EXPECT_EQ(imported->added, 2);
}

}  // namespace
}  // namespace shoplore
