// What a store does with its connection, below the public calls.
#include "indexer/store_connection.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

#include <chrono>
#include <random>

#include "indexer/case_json.hpp"
#include "indexer/store_schema.hpp"

namespace shoplore {
namespace {

constexpr int kBusyMilliseconds = 30'000;

}  // namespace

std::string random_id() {
  std::random_device source;
  return fmt::format("{:08x}{:08x}{:08x}{:08x}", source(), source(), source(), source());
}

std::int64_t now_in_seconds() {
  return std::chrono::duration_cast<std::chrono::seconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

tl::unexpected<Error> translated(const SQLite::Exception& error, const std::string& path) {
  switch (error.getErrorCode()) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return fail(ErrorCode::kBusy, path, "another program is writing; try again");
    case SQLITE_READONLY:
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
      return fail(ErrorCode::kNoPermission, path,
                  fmt::format("cannot be opened for writing: {}", error.what()));
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return fail(
          ErrorCode::kDamagedStore, path,
          fmt::format("is not a readable records file: {}; restore a backup", error.what()));
    case SQLITE_FULL:
      return fail(ErrorCode::kInternal, path, "the disk is full; nothing was stored");
    default:
      return fail(ErrorCode::kInternal, path, error.what());
  }
}

Change change_of(SQLite::Statement& row) {
  Change change;
  change.revision = Revision{row.getColumn(0).getInt64()};
  change.id = CaseId{static_cast<std::uint32_t>(row.getColumn(1).getInt64())};
  change.at = row.getColumn(2).getInt64();
  change.role = enum_from_name<Role>(row.getColumn(3).getString()).value_or(Role::kImport);
  change.body = row.getColumn(4).getString();
  return change;
}

Store::Impl::Impl(std::string file, int flags)
    : path(std::move(file)), database(path, flags, kBusyMilliseconds) {
  database.exec("PRAGMA foreign_keys=ON");
  database.exec("PRAGMA synchronous=FULL");
}

std::int64_t Store::Impl::number(const char* query) {
  SQLite::Statement statement(database, query);
  return statement.executeStep() ? statement.getColumn(0).getInt64() : 0;
}

Revision Store::Impl::append(CaseId case_id, Role role, const Case& record,
                             const std::string& body) {
  SQLite::Statement insert(database,
                           "INSERT INTO change(case_id, at, role, body) VALUES(?, ?, ?, ?)");
  insert.bind(1, static_cast<std::int64_t>(case_id.value));
  insert.bind(2, now_in_seconds());
  insert.bind(3, std::string(name_of(role)));
  insert.bind(4, body);
  insert.exec();
  const Revision revision{database.getLastInsertRowid()};
  write_listed_columns(database, case_id, revision, record);
  return revision;
}

std::optional<Change> Store::Impl::latest(CaseId case_id, std::optional<Revision> as_of) {
  SQLite::Statement select(database, std::string(kChangeColumns) +
                                         "WHERE case_id = ? AND revision <= ? "
                                         "ORDER BY revision DESC LIMIT 1");
  select.bind(1, static_cast<std::int64_t>(case_id.value));
  select.bind(2, as_of ? as_of->value : INT64_MAX);
  if (!select.executeStep()) return std::nullopt;
  return change_of(select);
}

std::optional<CaseId> Store::Impl::id_of(std::string_view ref) {
  SQLite::Statement select(database, "SELECT id FROM case_ WHERE ref = ?");
  select.bind(1, std::string(ref));
  if (!select.executeStep()) return std::nullopt;
  return CaseId{static_cast<std::uint32_t>(select.getColumn(0).getInt64())};
}

CaseId Store::Impl::insert_case(std::string& ref) {
  SQLite::Statement insert(database, "INSERT INTO case_(ref, revision) VALUES(?, 0)");
  insert.bind(1, ref.empty() ? "new-" + random_id() : ref);
  insert.exec();
  const CaseId case_id{static_cast<std::uint32_t>(database.getLastInsertRowid())};
  if (!ref.empty()) return case_id;
  ref = "case-" + std::to_string(case_id.value);
  if (id_of(ref)) ref += "-" + random_id().substr(0, 6);  // an imported case has that name
  SQLite::Statement rename(database, "UPDATE case_ SET ref = ? WHERE id = ?");
  rename.bind(1, ref);
  rename.bind(2, static_cast<std::int64_t>(case_id.value));
  rename.exec();
  return case_id;
}

Result<Added> Store::Impl::add_one(const Case& given, Role role, std::size_t position) {
  Case record = given;
  if (const auto existing = record.ref.empty() ? std::nullopt : id_of(record.ref)) {
    const auto stored = latest(*existing, std::nullopt);
    if (stored && stored->body == case_to_json(record)) {
      return Added{{*existing, stored->revision, std::move(record)}, Addition::kSameAlready};
    }
    return fail(ErrorCode::kConflict, std::to_string(position),
                fmt::format("case '{}' is there already with other content", record.ref));
  }
  const CaseId case_id = insert_case(record.ref);
  const Revision revision = append(case_id, role, record, case_to_json(record));
  return Added{{case_id, revision, std::move(record)}, Addition::kAdded};
}

Result<StoredCase> Store::Impl::stored_case(const Change& change) const {
  auto record = case_from_json(change.body);
  if (!record) {
    return fail(ErrorCode::kDamagedStore, fmt::format("{}: case {}", path, change.id.value),
                describe(record.error()));
  }
  return StoredCase{change.id, change.revision, std::move(*record)};
}

}  // namespace shoplore
