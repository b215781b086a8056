#include "indexer/records.hpp"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

namespace shoplore {
namespace {

constexpr std::chrono::seconds kPatience{10};

class RecordsTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-records-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    records_ = std::make_unique<Records>(std::move(*Records::create({home_ / "shop"})));
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  // Names of the files under the shop folder that hold the text, in any case of letters.
  std::vector<std::string> files_with(std::string needle) const {
    const auto lower = [](std::string text) {
      std::transform(text.begin(), text.end(), text.begin(),
                     [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
      return text;
    };
    needle = lower(needle);
    std::vector<std::string> found;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(home_)) {
      if (!entry.is_regular_file()) continue;
      std::ifstream file(entry.path(), std::ios::binary);
      const std::string bytes{std::istreambuf_iterator<char>(file), {}};
      if (lower(bytes).find(needle) != std::string::npos) found.push_back(entry.path().filename());
    }
    return found;
  }

  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
};

// Does to records.db what no way in allows.
void damage_records(const std::filesystem::path& file, const char* sql) {
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open(file.c_str(), &database), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(database, sql, nullptr, nullptr, nullptr), SQLITE_OK);
  sqlite3_close(database);
}

Case closed_case() {
  Case record;
  record.state = CaseState::kClosed;
  record.opened = record.closed.emplace(parse_date("2026-03-02").value());
  record.cause = Cause{"turbocharger", "worn", Proof::kSeen};
  return record;
}

TEST_F(RecordsTest, PlantedIdentitiesReachNoFile) {
  Case record = closed_case();
  // The VIN is the regulation's sample (49 CFR 565.15(c), Table VI); the rest is invented.
  record.complaint = "Quillborough rang from 0151 496 0123, plate QX19 ZZT, 1G4AH59H45G118341";
  record.notes = "mail q.quillborough@example.org, marker pelican";
  record.correction.emplace().traps = {"ask Quillborough before drilling qx19zzt"};
  const Identity identity{"1G4AH59H45G118341", "QX19 ZZT", "Quillborough"};
  ASSERT_TRUE(records_->add({record, identity}, Role::kTechnician));
  std::stringstream lines;
  record.notes += " +44 151 496 0123";
  std::string line = case_to_json(record);
  line.insert(
      line.size() - 1,
      R"(,"identity":{"vin":"1G4AH59H45G118341","plate":"QX19 ZZT","customer":"Quillborough"})");
  lines << line << "\n";
  ASSERT_TRUE(records_->import(lines, [](std::int64_t) {}));
  ASSERT_TRUE(records_->follow(kPatience));

  EXPECT_FALSE(files_with("pelican").empty()) << "the search itself must be able to find";
  for (const char* needle : {"quillborough", "0151 496", "496 0123", "qx19", "1G4AH59H45G118341",
                             "45G118341", "example.org"}) {
    EXPECT_EQ(files_with(needle), std::vector<std::string>{}) << needle;
  }
}

TEST_F(RecordsTest, TheSameVehicleHasTheSameToken) {
  const Identity identity{"1G4AH59H45G118341", "", ""};
  const auto first = records_->add({closed_case(), identity}, Role::kTechnician);
  const auto second = records_->add({closed_case(), identity}, Role::kTechnician);
  ASSERT_TRUE(first && second);
  EXPECT_EQ(first->stored.record.vehicle.token.size(), 32U);
  EXPECT_EQ(first->stored.record.vehicle.token, second->stored.record.vehicle.token);
}

TEST_F(RecordsTest, AWrongCheckDigitWarnsAndIsTaken) {
  const auto added =
      records_->add({closed_case(), {"1G4AH59H45G118331", "", ""}}, Role::kTechnician);
  ASSERT_TRUE(added);
  EXPECT_EQ(added->warnings.size(), 1U);
}

TEST_F(RecordsTest, RestoringAnEarlierRevisionIsAChangeOfItsOwn) {
  const auto added = records_->add({closed_case(), {}}, Role::kTechnician);
  const std::string ref = added->stored.record.ref;
  ASSERT_TRUE(records_->change(ref, {}, R"({"notes":"new"})", Role::kTechnician));
  const auto restored = records_->restore(ref, added->stored.revision, Role::kOwner);
  ASSERT_TRUE(restored);
  EXPECT_EQ(restored->stored.record.notes, "");
  EXPECT_EQ(records_->store().history(added->stored.id)->size(), 3U);
}

TEST_F(RecordsTest, AChangeOfAnOldRevisionIsAConflict) {
  const auto added = records_->add({closed_case(), {}}, Role::kTechnician);
  const std::string ref = added->stored.record.ref;
  ASSERT_TRUE(records_->change(ref, added->stored.revision, R"({"notes":"a"})", Role::kTechnician));
  const auto late =
      records_->change(ref, added->stored.revision, R"({"notes":"b"})", Role::kTechnician);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error().code, ErrorCode::kConflict);
}

TEST_F(RecordsTest, FindingsThatWouldOverflowTheNotesAreRefusedAndNothingChanges) {
  Case record;
  record.opened = parse_date("2026-03-02").value();
  record.notes = std::string(kMaxTextBytes - 5, 'a');
  const auto added = records_->add({record, {}}, Role::kTechnician);
  const std::string ref = added->stored.record.ref;
  const auto refused = records_->add_findings(ref, "misfire", Role::kTechnician);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, ErrorCode::kTooLarge);
  EXPECT_FALSE(records_->add_findings(ref, "\xff", Role::kTechnician));
  EXPECT_EQ(records_->store().read(ref)->revision, added->stored.revision);
  ASSERT_TRUE(records_->add_findings(ref, "flat", Role::kTechnician));
  EXPECT_EQ(records_->store().read(ref)->record.symptoms.at(0).id, "lack_of_power");
}

TEST_F(RecordsTest, ImportingTwiceAddsNothing) {
  Case record = closed_case();
  record.ref = "a-1";
  for (const std::int64_t expected : {1, 0}) {
    std::stringstream lines(case_to_json(record) + "\n\n");
    const auto report = records_->import(lines, [](std::int64_t) {});
    ASSERT_TRUE(report);
    EXPECT_EQ(report->added, expected);
    EXPECT_EQ(report->same_already, 1 - expected);
  }
}

TEST_F(RecordsTest, ImportingAMendedFileStoresOnlyTheRest) {
  // More than a batch of lines without a ref, two of them equal, and a bad one near the end.
  const auto import = [&](const std::string& last) {
    std::stringstream lines;
    for (int i = 0; i < 1'200; ++i) {
      Case record = closed_case();
      record.complaint = "number " + std::to_string(i / 2);
      lines << case_to_json(record) << "\n";
    }
    lines << last << "\n";
    return records_->import(lines, [](std::int64_t) {});
  };
  const auto stopped = import("{");
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().place, "line 1201");
  EXPECT_NE(stopped.error().message.find("lines 1 to 1000 are stored"), std::string::npos);
  EXPECT_EQ(records_->store().case_count().value(), 1'000);
  const auto mended = import(case_to_json(closed_case()));
  ASSERT_TRUE(mended);
  EXPECT_EQ(mended->same_already, 1'000);
  EXPECT_EQ(mended->added, 201);
  EXPECT_EQ(records_->store().case_count().value(), 1'201);
}

TEST_F(RecordsTest, AReopenedCaseGivesUpItsClosingDate) {
  const auto added = records_->add({closed_case(), {}}, Role::kTechnician);
  const std::string ref = added->stored.record.ref;
  const auto kept =
      records_->change(ref, {}, R"({"state":"open","cause":null})", Role::kTechnician);
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.error().place, "/closed");
  EXPECT_TRUE(records_->change(ref, {}, R"({"state":"open","cause":null,"closed":null})",
                               Role::kTechnician));
}

TEST_F(RecordsTest, DamageInTheRecordsIsNamedAndNotBlamedOnTheIndex) {
  ASSERT_TRUE(records_->add({closed_case(), {}}, Role::kTechnician));
  ASSERT_TRUE(records_->verify());
  for (const char* sql : {"UPDATE change SET body='garbage'", "UPDATE case_ SET revision=99"}) {
    damage_records(home_ / "shop" / "records.db", sql);
    const auto verified = records_->verify();
    ASSERT_FALSE(verified) << sql;
    EXPECT_EQ(verified.error().code, ErrorCode::kDamagedStore) << sql;
    std::stringstream out;
    EXPECT_FALSE(records_->export_to(out)) << sql;
  }
}

TEST_F(RecordsTest, HalfAShopAsksForTheMissingCopy) {
  const ShopFolder folder{home_ / "shop"};
  std::filesystem::rename(folder.key(), folder.root / "key.away");
  const auto opened = Records::open(folder);
  ASSERT_FALSE(opened);
  EXPECT_EQ(opened.error().place, folder.key().string());
  EXPECT_NE(opened.error().message.find("put back its copy"), std::string::npos);
}

TEST_F(RecordsTest, ReindexingTwiceChangesNothing) {
  ASSERT_TRUE(records_->add({closed_case(), {}}, Role::kTechnician));
  for (int i = 0; i < 2; ++i) {
    ASSERT_TRUE(records_->reindex(kPatience));
    EXPECT_TRUE(records_->verify());
    EXPECT_EQ(records_->follow(kPatience)->followed, Followed::kNothingToDo);
  }
}

}  // namespace
}  // namespace shoplore
