// A records.db written by the first version of the program opens in this one.
#include "indexer/store_schema.hpp"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <filesystem>

#include "indexer/store.hpp"

namespace shoplore {
namespace {

// The tables of version 1, as its program made them.
constexpr const char* kVersion1 = R"(
CREATE TABLE about(name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE case_(id INTEGER PRIMARY KEY AUTOINCREMENT, ref TEXT NOT NULL UNIQUE,
                   revision INTEGER NOT NULL) STRICT;
CREATE TABLE change(revision INTEGER PRIMARY KEY AUTOINCREMENT,
                    case_id INTEGER NOT NULL REFERENCES case_(id), at INTEGER NOT NULL,
                    role TEXT NOT NULL, body TEXT NOT NULL) STRICT;
CREATE INDEX change_of_case ON change(case_id, revision);
PRAGMA user_version=1;
INSERT INTO about VALUES('store_id', 'abc');
INSERT INTO case_ VALUES(1, 'a', 2), (2, 'b', 3), (3, 'damaged', 4);
INSERT INTO change VALUES
  (1, 1, 0, 'technician', '{"schema":1,"ref":"a","state":"open","opened":"2026-01-02"}'),
  (2, 1, 0, 'technician', '{"schema":1,"ref":"a","state":"waiting","opened":"2026-01-02"}'),
  (3, 2, 0, 'import', '{"schema":1,"ref":"b","state":"closed","opened":"2026-01-02",
     "closed":"2026-01-03","vehicle":{"make":"Arlune"},
     "cause":{"component":"turbocharger","failure":"worn"}}'),
  (4, 3, 0, 'import', 'garbage');
)";

class StoreSchema : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-schema-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    path_ = home_ / "records.db";
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  void run_sql(const char* sql) const {
    sqlite3* database = nullptr;
    ASSERT_EQ(sqlite3_open(path_.c_str(), &database), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(database, sql, nullptr, nullptr, nullptr), SQLITE_OK)
        << sqlite3_errmsg(database);
    sqlite3_close(database);
  }

  std::vector<std::string> refs(const CaseListFilter& filter) const {
    std::vector<std::string> refs;
    const auto store = Store::open(path_);
    const auto cases = store ? store->list(filter, {}, 10) : fail(store.error());
    EXPECT_TRUE(cases) << describe(cases.error());
    if (!cases) return refs;
    for (const StoredCase& each : *cases) refs.push_back(each.record.ref);
    return refs;
  }

  std::filesystem::path home_, path_;
};

using Refs = std::vector<std::string>;

TEST_F(StoreSchema, AFileOfVersionOneIsUpgradedAndListed) {
  run_sql(kVersion1);
  CaseListFilter closed, waiting, open, by_make;
  closed.states = {CaseState::kClosed};
  waiting.states = {CaseState::kWaiting};
  open.states = {CaseState::kOpen};
  by_make.make = "ARLUNE";
  EXPECT_EQ(refs(closed), Refs{"b"});
  EXPECT_EQ(refs(waiting), Refs{"a"}) << "listed as it is now";
  EXPECT_EQ(refs(open), Refs{});
  EXPECT_EQ(refs(by_make), Refs{"b"});
}

TEST_F(StoreSchema, UpgradingKeepsRevisionsHistoryAndStoreId) {
  run_sql(kVersion1);
  const auto store = Store::open(path_);
  ASSERT_TRUE(store);
  EXPECT_EQ(store->store_id(), "abc");
  EXPECT_EQ(store->revision()->value, 4);
  EXPECT_EQ(store->history(CaseId{1})->size(), 2U);
  EXPECT_EQ(store->read("a")->record.state, CaseState::kWaiting);
}

TEST_F(StoreSchema, AnUpgradedFileHasTheTablesOfANewOne) {
  run_sql(kVersion1);
  ASSERT_TRUE(Store::open(path_));
  const auto tables_of = [](const std::filesystem::path& path) {
    std::string all;
    sqlite3* database = nullptr;
    sqlite3_open(path.c_str(), &database);
    const auto add = [](void* text, int, char** values, char**) {
      static_cast<std::string*>(text)->append(values[0] != nullptr ? values[0] : "").append("\n");
      return 0;
    };
    sqlite3_exec(database, "SELECT sql FROM sqlite_schema ORDER BY name", add, &all, nullptr);
    sqlite3_exec(database, "PRAGMA user_version", add, &all, nullptr);
    sqlite3_close(database);
    return all;
  };
  const auto fresh = home_ / "new.db";
  ASSERT_TRUE(Store::create(fresh));
  EXPECT_EQ(tables_of(path_), tables_of(fresh));
}

TEST_F(StoreSchema, VersionsNobodyKnowsAreRefused) {
  run_sql(kVersion1);
  for (const char* sql : {"PRAGMA user_version=0", "PRAGMA user_version=3"}) {
    run_sql(sql);
    const auto store = Store::open(path_);
    ASSERT_FALSE(store) << sql;
    EXPECT_EQ(store.error().code, ErrorCode::kDamagedStore) << sql;
  }
}

}  // namespace
}  // namespace shoplore
