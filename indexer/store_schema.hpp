// The tables of records.db, and how a file of an earlier program becomes one of this one.
//
// A file's version is its PRAGMA user_version. Every version is reached from the one before by one
// step; a new file takes all of them, so that a new file and an upgraded one cannot differ.
// | version | brought                                                                    |
// |---------|----------------------------------------------------------------------------|
// | 1       | about, case_, change                                                       |
// | 2       | columns of case_ that lists look at; request_key (repeated requests)       |
// One transaction for all steps: a crash leaves the old version. A program of an older version
// that still has the file open goes on writing without the new columns: stop it first.
// Throws SQLite::Exception; the store turns it into an Error.
#pragma once

#include <string>

#include "indexer/case_record.hpp"
#include "indexer/quantities.hpp"
#include "indexer/result.hpp"

namespace SQLite {
class Database;
}

namespace shoplore {

inline constexpr int kStoreSchema = 2;

// All tables, in an empty file. Requires: a transaction.
void make_tables(SQLite::Database& database);

// Brings a file of an earlier version to this one; does nothing to one of this version.
// kDamagedStore for a version this program does not know.
[[nodiscard]] Result<void> upgrade(SQLite::Database& database, const std::string& path);

// Sets the columns of case_ that lists look at, and its latest revision. Requires: a transaction.
void write_listed_columns(SQLite::Database& database, CaseId id, Revision revision,
                          const Case& record);

}  // namespace shoplore
