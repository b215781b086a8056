// Requests that may be sent again: done once, answered alike, whatever dies in between.
#include <gtest/gtest.h>
#include <signal.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>
#include <thread>

#include "indexer/records.hpp"

namespace shoplore {
namespace {

constexpr std::uint64_t kSeed = 20260303;

class StoreKeys : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-keys-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    folder_.root = home_ / "shop";
    records_ = std::make_unique<Records>(std::move(*Records::create(folder_)));
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  std::optional<KeptReply> kept(const std::string& key) const {
    const auto reply = records_->store().kept_reply(records_->receipt_of(key, "", 0).key);
    EXPECT_TRUE(reply) << describe(reply.error());
    return reply ? *reply : std::nullopt;
  }

  void run_sql(const std::string& sql) const {
    sqlite3* database = nullptr;
    ASSERT_EQ(sqlite3_open(folder_.records().c_str(), &database), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(database, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK);
    sqlite3_close(database);
  }

  std::filesystem::path home_;
  ShopFolder folder_;
  std::unique_ptr<Records> records_;
};

Intake open_case(const std::string& notes = "") {
  Intake intake;
  intake.record.opened = parse_date("2026-03-02").value();
  intake.record.notes = notes;
  return intake;
}

TEST_F(StoreKeys, WhatWasDoneIsKeptWithItsRevisionAndWarnings) {
  EXPECT_FALSE(kept("k"));
  Intake intake = open_case("rang from 0151 496 0123");
  intake.identity.vin = "1G4AH59H45G118331";  // its check character does not fit
  const auto receipt = records_->receipt_of("k", "POST /v1/cases", 201);
  const auto added = records_->add(intake, Role::kTechnician, receipt);
  ASSERT_TRUE(added);
  ASSERT_EQ(added->warnings.size(), 2U);
  ASSERT_TRUE(records_->change("case-1", {}, R"({"notes":"later"})", Role::kTechnician));
  const auto reply = kept("k");
  ASSERT_TRUE(reply);
  EXPECT_EQ(reply->request, receipt.request);
  EXPECT_EQ(reply->status, 201);
  EXPECT_EQ(reply->warnings, added->warnings);
  EXPECT_EQ(reply->stored.revision, added->stored.revision);
  EXPECT_EQ(case_to_json(reply->stored.record), case_to_json(added->stored.record));
}

TEST_F(StoreKeys, AKeyIsTakenOnceAndItsSecondRequestStoresNothing) {
  const auto receipt = records_->receipt_of("k", "x", 201);
  ASSERT_TRUE(records_->add(open_case(), Role::kTechnician, receipt));
  const auto again = records_->add(open_case(), Role::kTechnician, receipt);
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, ErrorCode::kConflict);
  EXPECT_EQ(again.error().place, "Idempotency-Key");
  EXPECT_EQ(records_->store().case_count().value(), 1);
  EXPECT_FALSE(records_->change("case-1", {}, R"({"notes":"x"})", Role::kTechnician, receipt));
  EXPECT_EQ(records_->store().revision()->value, 1);
}

TEST_F(StoreKeys, AChangeThatChangesNothingIsKeptToo) {
  ASSERT_TRUE(records_->add(open_case("same"), Role::kTechnician));
  const auto receipt = records_->receipt_of("k", "x", 200);
  ASSERT_TRUE(records_->change("case-1", {}, R"({"notes":"same"})", Role::kTechnician, receipt));
  EXPECT_EQ(records_->store().revision()->value, 1);
  ASSERT_TRUE(kept("k"));
  EXPECT_EQ(kept("k")->stored.revision.value, 1);
}

TEST_F(StoreKeys, ARefusedRequestKeepsNothing) {
  Intake closed_without_cause = open_case();
  closed_without_cause.record.state = CaseState::kClosed;
  ASSERT_FALSE(
      records_->add(closed_without_cause, Role::kTechnician, records_->receipt_of("k", "x", 201)));
  EXPECT_FALSE(kept("k"));
}

TEST_F(StoreKeys, NothingOfTheRequestIsInAnyFile) {
  const auto receipt =
      records_->receipt_of("pelican-key", "POST Quillborough 1G4AH59H45G118341", 201);
  ASSERT_TRUE(records_->add(open_case("marker heron"), Role::kTechnician, receipt));
  std::size_t with_marker = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(home_)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream file(entry.path(), std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(file), {}};
    if (bytes.find("heron") != std::string::npos) ++with_marker;
    for (const char* needle : {"pelican", "Quillborough", "1G4AH59H45G118341"}) {
      EXPECT_EQ(bytes.find(needle), std::string::npos) << needle << " in " << entry.path();
    }
  }
  EXPECT_GT(with_marker, 0U) << "the search itself must be able to find";
}

TEST_F(StoreKeys, KeysLastADayAndGoAfterTwo) {
  ASSERT_TRUE(records_->add(open_case(), Role::kTechnician, records_->receipt_of("old", "x", 201)));
  run_sql("UPDATE request_key SET at = at - 25 * 60 * 60");
  EXPECT_TRUE(kept("old"));
  run_sql("UPDATE request_key SET at = at - 24 * 60 * 60");
  EXPECT_FALSE(kept("old"));
  ASSERT_TRUE(records_->add(open_case(), Role::kTechnician, records_->receipt_of("old", "y", 201)))
      << "a key whose time is over is free again";
  EXPECT_EQ(kept("old")->stored.id.value, 2U);
}

// Every case was made under a key: after a kill there is one kept key a case, and sending every
// request again makes exactly those that were lost.
TEST_F(StoreKeys, AfterAKillThereAreBothTheCaseAndItsKeyOrNeither) {
  std::mt19937_64 random(kSeed);
  std::cout << "seed " << kSeed << "\n";
  records_.reset();
  std::int64_t wanted = 0;
  for (int round = 0; round < 10; ++round) {
    int ready[2];
    ASSERT_EQ(pipe(ready), 0);
    const pid_t child = fork();
    if (child == 0) {
      auto records = Records::open(folder_);
      if (!records || ::write(ready[1], "!", 1) != 1) _exit(3);
      for (int i = 0;; ++i) {
        const auto key = "r" + std::to_string(round) + "-" + std::to_string(i);
        if (!records->add(open_case(key), Role::kTechnician, records->receipt_of(key, "x", 201))) {
          _exit(4);
        }
      }
    }
    ::close(ready[1]);
    char begun = 0;
    ASSERT_EQ(::read(ready[0], &begun, 1), 1);
    ::close(ready[0]);
    std::this_thread::sleep_for(std::chrono::milliseconds(random() % 60));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the writer failed by itself";
    auto records = Records::open(folder_);
    ASSERT_TRUE(records);
    const auto cases = records->store().case_count().value();
    for (int i = 0; i < cases - wanted; ++i) {
      const auto key = "r" + std::to_string(round) + "-" + std::to_string(i);
      const auto reply = records->store().kept_reply(records->receipt_of(key, "", 0).key);
      ASSERT_TRUE(reply && *reply) << key << " made a case and left no key";
      EXPECT_EQ((*reply)->stored.record.notes, key);
    }
    wanted = cases;
  }
  EXPECT_GT(wanted, 5);
}

}  // namespace
}  // namespace shoplore
