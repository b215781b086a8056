// A shop folder of its own with records given outright: for tests that read the store.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <string>

#include "indexer/records.hpp"

namespace shoplore::testing {

class RecordShop : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-outcomes-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    records_ = std::make_unique<Records>(std::move(*Records::create({home_ / "shop"})));
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  void add(const Case& record) {
    const auto added = records_->add({record, {}}, Role::kTechnician);
    ASSERT_TRUE(added) << describe(added.error());
  }
  [[nodiscard]] Case read(const std::string& ref) const {
    return records_->store().read(ref).value().record;
  }

  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
};

inline Case opened_case(const std::string& ref, const char* opened, std::int64_t km) {
  Case record;
  record.ref = ref;
  record.opened = parse_date(opened).value();
  record.vehicle.token = std::string(32, 'a');
  record.vehicle.make = "Brackwater";
  record.vehicle.mileage_km = Kilometres{km};
  record.symptoms = {{"lack_of_power", Presence::kPresent, {}, {}, {}}};
  return record;
}

// Closed the day it was opened, a new turbocharger put in.
inline Case turbo_replaced(const std::string& ref, const char* opened, std::int64_t km) {
  Case record = opened_case(ref, opened, km);
  record.state = CaseState::kClosed;
  record.closed = record.opened;
  record.cause = Cause{"turbocharger", "worn", Proof::kPresumed};
  record.correction = Correction{};
  record.correction->fixes = {{"replace", "turbocharger"}};
  return record;
}

// Closed likewise, the linkage replaced.
inline Case linkage_replaced(const std::string& ref, const char* opened, std::int64_t km) {
  Case record = turbo_replaced(ref, opened, km);
  record.cause = Cause{"wastegate_linkage", "seized_open", Proof::kSeen};
  record.correction->fixes = {{"replace", "wastegate_linkage"}};
  return record;
}

}  // namespace shoplore::testing
