// The public calls of records.db; store_list.cpp and store_keys.cpp hold the rest. Only the
// store*.cpp sources know SQLite.
//
// Every write is one IMMEDIATE transaction, so two writers queue instead of failing halfway; the
// busy timeout is the patience of a person at a counter.
#include "indexer/store.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "indexer/case_json.hpp"
#include "indexer/store_connection.hpp"
#include "indexer/store_schema.hpp"

namespace shoplore {

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
    make_tables(database);
    impl->id = random_id();
    SQLite::Statement about(database, "INSERT INTO about VALUES('store_id', ?)");
    about.bind(1, impl->id);
    about.exec();
    transaction.commit();
    return Store(std::move(impl));
  } catch (const SQLite::Exception& error) {
    return translated(error, path.string());
  }
}

Result<Store> Store::open(const std::filesystem::path& path) {
  try {
    auto impl = std::make_unique<Impl>(path.string(), SQLite::OPEN_READWRITE);
    if (auto present = upgrade(impl->database, impl->path); !present) return fail(present.error());
    SQLite::Statement about(impl->database, "SELECT value FROM about WHERE name = 'store_id'");
    if (about.executeStep()) impl->id = about.getColumn(0).getString();
    return Store(std::move(impl));
  } catch (const SQLite::Exception& error) {
    return translated(error, path.string());
  }
}

Result<std::vector<Added>> Store::add(std::span<const CleanCase> cases, Role role,
                                      const std::optional<Receipt>& receipt) {
  return impl_->guarded([&]() -> Result<std::vector<Added>> {
    SQLite::Transaction transaction(impl_->database, SQLite::TransactionBehavior::IMMEDIATE);
    std::vector<Added> added;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      auto one = impl_->add_one(cases[i].record(), role, i);
      if (!one) return fail(std::move(one.error()));
      if (receipt) {
        const StoredCase& stored = one->stored;
        auto kept = impl_->keep(*receipt, stored.id, stored.revision, cases[i].warnings());
        if (!kept) return fail(kept.error());
      }
      added.push_back(std::move(*one));
    }
    transaction.commit();
    return added;
  });
}

Result<StoredCase> Store::change(CaseId id, std::optional<Revision> expected,
                                 const CleanCase& clean, Role role,
                                 const std::optional<Receipt>& receipt) {
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
    const bool same = body == before->body;
    if (same && !receipt) return old;
    const Revision revision =
        same ? before->revision : impl_->append(id, role, clean.record(), body);
    if (receipt) {
      auto kept = impl_->keep(*receipt, id, revision, clean.warnings());
      if (!kept) return fail(kept.error());
    }
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

Result<std::vector<std::string>> Store::refs(std::span<const CaseId> ids) const {
  return impl_->guarded([&]() -> Result<std::vector<std::string>> {
    // One transaction: else SQLite would take and leave its lock for each of them.
    const SQLite::Transaction transaction(impl_->database);
    SQLite::Statement select(impl_->database, "SELECT ref FROM case_ WHERE id = ?");
    std::vector<std::string> refs;
    for (const CaseId id : ids) {
      select.reset();
      select.bind(1, static_cast<std::int64_t>(id.value));
      if (!select.executeStep()) {
        return fail(ErrorCode::kNotFound, fmt::format("case {}", id.value), "no such case");
      }
      refs.push_back(select.getColumn(0).getString());
    }
    return refs;
  });
}

Result<std::vector<Change>> Store::history(CaseId id, Revision after, std::size_t limit) const {
  return impl_->guarded([&]() -> Result<std::vector<Change>> {
    SQLite::Statement select(impl_->database, std::string(kChangeColumns) +
                                                  "WHERE h.case_id = ? AND h.revision > ? "
                                                  "ORDER BY h.revision LIMIT ?");
    select.bind(1, static_cast<std::int64_t>(id.value));
    select.bind(2, after.value);
    select.bind(3, static_cast<std::int64_t>(std::min<std::size_t>(limit, INT64_MAX)));
    std::vector<Change> changes;
    while (select.executeStep()) changes.push_back(change_of(select));
    if (changes.empty() && !impl_->latest(id, std::nullopt)) {
      return fail(ErrorCode::kNotFound, fmt::format("case {}", id.value), "no such case");
    }
    return changes;
  });
}

Result<std::vector<Change>> Store::changes_after(Revision after, std::size_t limit) const {
  return impl_->guarded([&]() -> Result<std::vector<Change>> {
    SQLite::Statement select(
        impl_->database,
        std::string(kChangeColumns) + "WHERE h.revision > ? ORDER BY h.revision LIMIT ?");
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
