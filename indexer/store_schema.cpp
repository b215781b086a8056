// The steps. Listed columns repeat what the latest body says, so that a list neither parses bodies
// it will not show nor walks JSON inside SQLite: a page of 100,000 cases is found by walking ids
// downward and stopping when it is full. Open and waiting cases, few among many, have an index of
// their own, and so have the visits of one vehicle.
#include "indexer/store_schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include "indexer/case_json.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr const char* kFirst = R"(
CREATE TABLE about(name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE case_(id INTEGER PRIMARY KEY AUTOINCREMENT, ref TEXT NOT NULL UNIQUE,
                   revision INTEGER NOT NULL) STRICT;
CREATE TABLE change(revision INTEGER PRIMARY KEY AUTOINCREMENT,
                    case_id INTEGER NOT NULL REFERENCES case_(id), at INTEGER NOT NULL,
                    role TEXT NOT NULL, body TEXT NOT NULL) STRICT;
CREATE INDEX change_of_case ON change(case_id, revision);
)";

constexpr const char* kSecond = R"(
ALTER TABLE case_ ADD COLUMN state TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN opened TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN closed TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN make TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN engine_family TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN component TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN failure TEXT NOT NULL DEFAULT '';
ALTER TABLE case_ ADD COLUMN vehicle TEXT NOT NULL DEFAULT '';
CREATE INDEX case_unfinished ON case_(id) WHERE state IN ('open', 'waiting');
CREATE INDEX case_of_vehicle ON case_(vehicle, id) WHERE vehicle <> '';
CREATE TABLE request_key(key TEXT PRIMARY KEY, request TEXT NOT NULL, at INTEGER NOT NULL,
                         case_id INTEGER NOT NULL REFERENCES case_(id),
                         revision INTEGER NOT NULL, status INTEGER NOT NULL,
                         warnings TEXT NOT NULL) STRICT;
CREATE INDEX request_key_age ON request_key(at);
)";

std::int64_t version_of(SQLite::Database& database) {
  return database.execAndGet("PRAGMA user_version").getInt64();
}

// A body that cannot be read stays unlisted: `verify` names it, and an upgrade that stopped at it
// would keep everything else from being read, too.
void list_all(SQLite::Database& database) {
  SQLite::Statement cases(database,
                          "SELECT c.id, h.revision, h.body FROM case_ c "
                          "JOIN change h ON h.revision = c.revision AND h.case_id = c.id");
  while (cases.executeStep()) {
    const auto record = case_from_json(cases.getColumn(2).getString());
    if (!record) continue;
    write_listed_columns(database,
                         CaseId{static_cast<std::uint32_t>(cases.getColumn(0).getInt64())},
                         Revision{cases.getColumn(1).getInt64()}, *record);
  }
}

void take_steps(SQLite::Database& database, std::int64_t version) {
  if (version < 1) database.exec(kFirst);
  if (version < 2) {
    database.exec(kSecond);
    list_all(database);
  }
  database.exec(fmt::format("PRAGMA user_version={}", kStoreSchema));
}

}  // namespace

void make_tables(SQLite::Database& database) {
  take_steps(database, 0);
}

Result<void> upgrade(SQLite::Database& database, const std::string& path) {
  if (version_of(database) == kStoreSchema) return {};
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  const std::int64_t version = version_of(database);  // another program may have been faster
  // Version 0 is an empty file: making tables in it would hide that the records are gone.
  if (version < 1 || version > kStoreSchema) {
    return fail(ErrorCode::kDamagedStore, path,
                fmt::format("has schema {}, this program knows 1 to {}", version, kStoreSchema));
  }
  take_steps(database, version);
  transaction.commit();
  return {};
}

void write_listed_columns(SQLite::Database& database, CaseId id, Revision revision,
                          const Case& record) {
  SQLite::Statement update(database,
                           "UPDATE case_ SET revision = ?, state = ?, opened = ?, closed = ?, "
                           "make = ?, engine_family = ?, component = ?, failure = ?, vehicle = ? "
                           "WHERE id = ?");
  update.bind(1, revision.value);
  update.bind(2, std::string(name_of(record.state)));
  update.bind(3, format_date(record.opened));
  update.bind(4, record.closed ? format_date(*record.closed) : "");
  update.bind(5, lower_case(record.vehicle.make));
  update.bind(6, lower_case(record.vehicle.engine_family));
  update.bind(7, record.cause ? record.cause->component : "");
  update.bind(8, record.cause ? record.cause->failure : "");
  update.bind(9, record.vehicle.token);
  update.bind(10, static_cast<std::int64_t>(id.value));
  update.exec();
}

}  // namespace shoplore
