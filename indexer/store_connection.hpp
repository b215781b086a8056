// The SQLite connection behind a Store, shared by the sources that make up the store.
//
// Not for anybody else: only store*.cpp include it. Lifetime and threads: as the Store's. Its
// functions throw SQLite::Exception; guarded() turns that into an Error, once, at the edge.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <string>
#include <string_view>

#include "indexer/store.hpp"

namespace shoplore {

// What a library failure means to the person at the desk.
[[nodiscard]] tl::unexpected<Error> translated(const SQLite::Exception& error,
                                               const std::string& path);

[[nodiscard]] std::int64_t now_in_seconds();

// 32 hex digits from the system's random source.
[[nodiscard]] std::string random_id();

// The columns of change that change_of reads, for tables called so.
inline constexpr const char* kChangeColumns =
    "SELECT h.revision, h.case_id, h.at, h.role, h.body FROM change h ";
[[nodiscard]] Change change_of(SQLite::Statement& row);

struct Store::Impl {
  std::string path;
  SQLite::Database database;
  std::string id;

  // Requires: flags of SQLite::OPEN_...
  Impl(std::string file, int flags);

  // Runs a read or write, turning the library's exceptions into errors once.
  template <class Work>
  auto guarded(Work work) -> decltype(work()) {
    try {
      return work();
    } catch (const SQLite::Exception& error) {
      return translated(error, path);
    }
  }

  // The first column of the first row, 0 without one.
  std::int64_t number(const char* query);

  // Writes a change and what lists look at. Requires: body is the record's.
  Revision append(CaseId case_id, Role role, const Case& record, const std::string& body);

  // The latest change of the case, at or before `as_of` when given.
  std::optional<Change> latest(CaseId case_id, std::optional<Revision> as_of);
  std::optional<CaseId> id_of(std::string_view ref);

  // A row for a new case; an empty ref is named after the id.
  CaseId insert_case(std::string& ref);
  Result<Added> add_one(const Case& given, Role role, std::size_t position);
  [[nodiscard]] Result<StoredCase> stored_case(const Change& change) const;

  // Keeps what a request did, within the transaction that did it; kConflict when its key is there
  // already. Keys whose time is over are removed.
  Result<void> keep(const Receipt& receipt, CaseId id, Revision revision,
                    const std::vector<std::string>& warnings);
};

}  // namespace shoplore
