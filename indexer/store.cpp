// Schema and queries of records.db. The only source that knows SQLite.
//
// Every write is one IMMEDIATE transaction, so two writers queue instead of failing halfway; the
// busy timeout is the patience of a person at a counter.
#include "indexer/store.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <chrono>
#include <random>
#include <system_error>

#include "indexer/case_json.hpp"

namespace shoplore {
namespace {

constexpr int kBusyMilliseconds = 30'000;
constexpr int kStoreSchema = 1;

constexpr const char* kSchema = R"(
CREATE TABLE about(name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE case_(id INTEGER PRIMARY KEY AUTOINCREMENT, ref TEXT NOT NULL UNIQUE,
                   revision INTEGER NOT NULL) STRICT;
CREATE TABLE change(revision INTEGER PRIMARY KEY AUTOINCREMENT,
                    case_id INTEGER NOT NULL REFERENCES case_(id), at INTEGER NOT NULL,
                    role TEXT NOT NULL, body TEXT NOT NULL) STRICT;
CREATE INDEX change_of_case ON change(case_id, revision);
)";

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

constexpr const char* kChangeColumns = "SELECT revision, case_id, at, role, body FROM change ";

}  // namespace

struct Store::Impl {
  std::string path;
  SQLite::Database database;
  std::string id;

  Impl(std::string file, int flags)
      : path(std::move(file)), database(path, flags, kBusyMilliseconds) {
    database.exec("PRAGMA foreign_keys=ON");
    database.exec("PRAGMA synchronous=FULL");
  }

  std::int64_t number(const char* query) {
    SQLite::Statement statement(database, query);
    return statement.executeStep() ? statement.getColumn(0).getInt64() : 0;
  }

  // Runs a read or write, turning the library's exceptions into errors once.
  template <class Work>
  auto guarded(Work work) -> decltype(work()) {
    try {
      return work();
    } catch (const SQLite::Exception& error) {
      return translated(error, path);
    }
  }

  Revision append(CaseId case_id, Role role, const std::string& body) {
    SQLite::Statement insert(database,
                             "INSERT INTO change(case_id, at, role, body) VALUES(?, ?, ?, ?)");
    insert.bind(1, static_cast<std::int64_t>(case_id.value));
    insert.bind(2, now_in_seconds());
    insert.bind(3, std::string(name_of(role)));
    insert.bind(4, body);
    insert.exec();
    const Revision revision{database.getLastInsertRowid()};
    SQLite::Statement update(database, "UPDATE case_ SET revision = ? WHERE id = ?");
    update.bind(1, revision.value);
    update.bind(2, static_cast<std::int64_t>(case_id.value));
    update.exec();
    return revision;
  }

  std::optional<Change> latest(CaseId case_id, std::optional<Revision> as_of) {
    SQLite::Statement select(database, std::string(kChangeColumns) +
                                           "WHERE case_id = ? AND revision <= ? "
                                           "ORDER BY revision DESC LIMIT 1");
    select.bind(1, static_cast<std::int64_t>(case_id.value));
    select.bind(2, as_of ? as_of->value : INT64_MAX);
    if (!select.executeStep()) return std::nullopt;
    return change_of(select);
  }

  std::optional<CaseId> id_of(std::string_view ref) {
    SQLite::Statement select(database, "SELECT id FROM case_ WHERE ref = ?");
    select.bind(1, std::string(ref));
    if (!select.executeStep()) return std::nullopt;
    return CaseId{static_cast<std::uint32_t>(select.getColumn(0).getInt64())};
  }

  // A row for a new case; an empty ref is named after the id.
  CaseId insert_case(std::string& ref) {
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

  Result<Added> add_one(const Case& given, Role role, std::size_t position) {
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
    const Revision revision = append(case_id, role, case_to_json(record));
    return Added{{case_id, revision, std::move(record)}, Addition::kAdded};
  }

  Result<StoredCase> stored_case(const Change& change) const {
    auto record = case_from_json(change.body);
    if (!record) {
      return fail(ErrorCode::kDamagedStore, fmt::format("{}: case {}", path, change.id.value),
                  describe(record.error()));
    }
    return StoredCase{change.id, change.revision, std::move(*record)};
  }
};

Store::Store(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Store::~Store() = default;
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;

Result<Store> Store::create(const std::filesystem::path& path) {
  std::error_code ignored;
  if (std::filesystem::exists(path, ignored)) {
    return fail(ErrorCode::kConflict, path.string(), "exists already");
  }
  try {
    auto impl = std::make_unique<Impl>(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Database& database = impl->database;
    database.exec("PRAGMA journal_mode=WAL");
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    database.exec(kSchema);
    impl->id = random_id();
    SQLite::Statement about(database, "INSERT INTO about VALUES('store_id', ?)");
    about.bind(1, impl->id);
    about.exec();
    database.exec(fmt::format("PRAGMA user_version={}", kStoreSchema));
    transaction.commit();
    return Store(std::move(impl));
  } catch (const SQLite::Exception& error) {
    return translated(error, path.string());
  }
}

Result<Store> Store::open(const std::filesystem::path& path) {
  try {
    auto impl = std::make_unique<Impl>(path.string(), SQLite::OPEN_READWRITE);
    const auto schema = impl->number("PRAGMA user_version");
    if (schema != kStoreSchema) {
      return fail(ErrorCode::kDamagedStore, path.string(),
                  fmt::format("has schema {}, this program knows {}", schema, kStoreSchema));
    }
    SQLite::Statement about(impl->database, "SELECT value FROM about WHERE name = 'store_id'");
    if (about.executeStep()) impl->id = about.getColumn(0).getString();
    return Store(std::move(impl));
  } catch (const SQLite::Exception& error) {
    return translated(error, path.string());
  }
}

Result<std::vector<Added>> Store::add(std::span<const CleanCase> cases, Role role) {
  return impl_->guarded([&]() -> Result<std::vector<Added>> {
    SQLite::Transaction transaction(impl_->database, SQLite::TransactionBehavior::IMMEDIATE);
    std::vector<Added> added;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      auto one = impl_->add_one(cases[i].record(), role, i);
      if (!one) return fail(std::move(one.error()));
      added.push_back(std::move(*one));
    }
    transaction.commit();
    return added;
  });
}

Result<StoredCase> Store::change(CaseId id, std::optional<Revision> expected,
                                 const CleanCase& clean, Role role) {
  return impl_->guarded([&]() -> Result<StoredCase> {
    SQLite::Transaction transaction(impl_->database, SQLite::TransactionBehavior::IMMEDIATE);
    const auto before = impl_->latest(id, std::nullopt);
    if (!before)
      return fail(ErrorCode::kNotFound, fmt::format("case {}", id.value), "no such case");
    auto old = impl_->stored_case(*before);
    if (!old) return old;
    if (expected && *expected != before->revision) {
      return fail(ErrorCode::kConflict, old->record.ref,
                  fmt::format("is at revision {} now, not {}: somebody changed it meanwhile",
                              before->revision.value, expected->value));
    }
    if (clean.record().ref != old->record.ref) {
      return fail(ErrorCode::kInvalidInput, "/ref", "the ref of a case never changes");
    }
    const std::string body = case_to_json(clean.record());
    if (body == before->body) return old;
    const Revision revision = impl_->append(id, role, body);
    transaction.commit();
    return StoredCase{id, revision, clean.record()};
  });
}

Result<StoredCase> Store::read(CaseId id, std::optional<Revision> as_of) const {
  return impl_->guarded([&]() -> Result<StoredCase> {
    const auto change = impl_->latest(id, as_of);
    if (!change)
      return fail(ErrorCode::kNotFound, fmt::format("case {}", id.value), "no such case");
    return impl_->stored_case(*change);
  });
}

Result<StoredCase> Store::read(std::string_view ref) const {
  return impl_->guarded([&]() -> Result<StoredCase> {
    const auto id = impl_->id_of(ref);
    if (!id) return fail(ErrorCode::kNotFound, std::string(ref), "no such case");
    return read(*id);
  });
}

Result<std::vector<Change>> Store::history(CaseId id) const {
  return impl_->guarded([&]() -> Result<std::vector<Change>> {
    SQLite::Statement select(impl_->database,
                             std::string(kChangeColumns) + "WHERE case_id = ? ORDER BY revision");
    select.bind(1, static_cast<std::int64_t>(id.value));
    std::vector<Change> changes;
    while (select.executeStep()) changes.push_back(change_of(select));
    if (changes.empty()) {
      return fail(ErrorCode::kNotFound, fmt::format("case {}", id.value), "no such case");
    }
    return changes;
  });
}

Result<std::vector<Change>> Store::changes_after(Revision after, std::size_t limit) const {
  return impl_->guarded([&]() -> Result<std::vector<Change>> {
    SQLite::Statement select(impl_->database, std::string(kChangeColumns) +
                                                  "WHERE revision > ? ORDER BY revision LIMIT ?");
    select.bind(1, after.value);
    select.bind(2, static_cast<std::int64_t>(limit));
    std::vector<Change> changes;
    while (select.executeStep()) changes.push_back(change_of(select));
    return changes;
  });
}

Result<void> Store::for_each_latest(const std::function<Result<void>(const Change&)>& visit) const {
  return impl_->guarded([&]() -> Result<void> {
    SQLite::Statement select(impl_->database,
                             "SELECT h.revision, h.case_id, h.at, h.role, h.body FROM case_ c "
                             "LEFT JOIN change h ON h.revision = c.revision AND h.case_id = c.id "
                             "ORDER BY c.id");
    while (select.executeStep()) {
      if (select.getColumn(0).isNull()) {
        return fail(ErrorCode::kDamagedStore, impl_->path,
                    "a case has lost its latest change; restore a backup");
      }
      if (auto visited = visit(change_of(select)); !visited) return visited;
    }
    return {};
  });
}

Result<Revision> Store::revision() const {
  return impl_->guarded([&]() -> Result<Revision> {
    return Revision{impl_->number("SELECT coalesce(max(revision), 0) FROM change")};
  });
}

Result<std::int64_t> Store::case_count() const {
  return impl_->guarded(
      [&]() -> Result<std::int64_t> { return impl_->number("SELECT count(*) FROM case_"); });
}

const std::string& Store::store_id() const {
  return impl_->id;
}

Result<std::int64_t> Store::data_version() const {
  return impl_->guarded(
      [&]() -> Result<std::int64_t> { return impl_->number("PRAGMA data_version"); });
}

Result<void> Store::verify() const {
  return impl_->guarded([&]() -> Result<void> {
    SQLite::Statement check(impl_->database, "PRAGMA integrity_check(1)");
    if (check.executeStep() && check.getColumn(0).getString() != "ok") {
      return fail(ErrorCode::kDamagedStore, impl_->path, check.getColumn(0).getString());
    }
    return {};
  });
}

}  // namespace shoplore
