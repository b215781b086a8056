// records.db: the workshop's truth. One append-only table of changes is history, replay log, ETag
// and undo at once.
//
// Takes only cases whose identities were removed (CleanCase). Checks no rules: records.hpp does.
// Lifetime: one Store is one SQLite connection. Threads: one at a time; open another for another
// thread. Processes: any number may read and write; a writer waits for another, at most 30 s.
// Fails with kDamagedStore when the file is not our readable database, kNoPermission when it
// cannot be written, kBusy after the wait. Every write that returned success survives a crash of
// the process or of the machine (WAL, synchronous=FULL).
//
// | table  | columns                                                                            |
// |--------|------------------------------------------------------------------------------------|
// | case_  | id (AUTOINCREMENT: never reused), ref (unique), revision (its latest change)       |
// | change | revision (AUTOINCREMENT), case_id, at (UTC second), role, body (case_json.hpp)     |
// | about  | name, value: store id                                                              |
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "indexer/identity_removal.hpp"
#include "indexer/quantities.hpp"
#include "indexer/result.hpp"

namespace shoplore {

// Who made a change: a role, never a person.
enum class Role { kOwner, kTechnician, kApprentice, kImport };
template <>
inline constexpr EnumTable<Role, 4> kEnumNames<Role>{{{Role::kOwner, "owner"},
                                                      {Role::kTechnician, "technician"},
                                                      {Role::kApprentice, "apprentice"},
                                                      {Role::kImport, "import"}}};

struct StoredCase {
  CaseId id;
  Revision revision;
  Case record;
};

struct Change {
  Revision revision;
  CaseId id;
  std::int64_t at = 0;  // seconds since 1970-01-01 UTC
  Role role = Role::kTechnician;
  std::string body;
};

enum class Addition { kAdded, kSameAlready };
struct Added {
  StoredCase stored;
  Addition addition = Addition::kAdded;
};

class Store {
 public:
  // Makes records.db; kConflict when it exists.
  [[nodiscard]] static Result<Store> create(const std::filesystem::path& path);
  [[nodiscard]] static Result<Store> open(const std::filesystem::path& path);
  ~Store();
  Store(Store&&) noexcept;
  Store& operator=(Store&&) noexcept;

  // All in one transaction, in order: either all are stored or none. An empty ref becomes
  // "case-<id>". A ref that is there already with the same body is left alone and reported as
  // kSameAlready; with another body it is kConflict, whose place is the position in `cases`.
  [[nodiscard]] Result<std::vector<Added>> add(std::span<const CleanCase> cases, Role role);

  // Appends a change. kConflict when `expected` is given and is not the case's latest revision.
  // The ref of a case never changes. An identical body appends nothing.
  [[nodiscard]] Result<StoredCase> change(CaseId id, std::optional<Revision> expected,
                                          const CleanCase& record, Role role);

  // The latest record, or the latest at or before `as_of`; kNotFound.
  [[nodiscard]] Result<StoredCase> read(CaseId id, std::optional<Revision> as_of = {}) const;
  [[nodiscard]] Result<StoredCase> read(std::string_view ref) const;

  // Every change of the case, oldest first; kNotFound.
  [[nodiscard]] Result<std::vector<Change>> history(CaseId id) const;

  // At most `limit` changes with revision > after, oldest first.
  [[nodiscard]] Result<std::vector<Change>> changes_after(Revision after, std::size_t limit) const;

  // Calls `visit` with the latest change of every case, in id order; stops at its first error.
  [[nodiscard]] Result<void> for_each_latest(
      const std::function<Result<void>(const Change&)>& visit) const;

  [[nodiscard]] Result<Revision> revision() const;
  [[nodiscard]] Result<std::int64_t> case_count() const;

  // Random, fixed for the life of the database: an index made from another store is refused.
  [[nodiscard]] const std::string& store_id() const;

  // Changes when another connection wrote (PRAGMA data_version); compare with an earlier value.
  [[nodiscard]] Result<std::int64_t> data_version() const;

  // SQLite's own integrity check; kDamagedStore with its first finding.
  [[nodiscard]] Result<void> verify() const;

 private:
  struct Impl;
  explicit Store(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace shoplore
