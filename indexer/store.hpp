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
// | table       | columns                                                                       |
// |-------------|-------------------------------------------------------------------------------|
// | case_       | id (AUTOINCREMENT: never reused), ref (unique), revision (its latest change), |
// |             | state, opened, closed, make, engine_family, component, failure, vehicle: what |
// |             | the latest body says, for lists; makes and families in lower case             |
// | change      | revision (AUTOINCREMENT), case_id, at (UTC second), role, body (case_json.hpp)|
// | request_key | key, request (keyed hashes), at, case_id, revision, status, warnings          |
// | about       | name, value: store id                                                         |
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <set>
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

// Which cases a list shows. Empty: all.
struct CaseListFilter {
  std::set<CaseState> states;
  std::string make, engine_family;                 // compared in lower case
  std::vector<std::string> components, failures;   // of the main cause, as recorded: any of
  std::string vehicle;                             // its token
  std::optional<Date> opened_since, closed_since;  // that day included
};

// What is kept of a request that may be sent again: nothing of what it said.
struct Receipt {
  std::string key, request;             // keyed hashes (IdentityKey::token_of_request)
  int status = 200;                     // of the reply
  std::vector<std::string> notes = {};  // of the reply, besides what removing identities warns of
};

// What a request did when it came first: enough to answer it again word for word.
struct KeptReply {
  std::string request;  // as in its Receipt: another one is another request under the same key
  int status = 200;
  StoredCase stored;  // as of the revision it made
  std::vector<std::string> warnings;
};

// How long a receipt is kept at least; removed with the next one after that.
inline constexpr std::int64_t kReceiptSeconds = 48 * 60 * 60;

class Store {
 public:
  // Makes records.db; kConflict when it exists.
  [[nodiscard]] static Result<Store> create(const std::filesystem::path& path);
  // Upgrades a file of an earlier version (store_schema.hpp).
  [[nodiscard]] static Result<Store> open(const std::filesystem::path& path);
  ~Store();
  Store(Store&&) noexcept;
  Store& operator=(Store&&) noexcept;

  // All in one transaction, in order: either all are stored or none. An empty ref becomes
  // "case-<id>". A ref that is there already with the same body is left alone and reported as
  // kSameAlready; with another body it is kConflict, whose place is the position in `cases`.
  // A receipt is kept in the same transaction; kConflict at Idempotency-Key, and nothing stored,
  // when its key is there already. Requires: one case when there is a receipt.
  [[nodiscard]] Result<std::vector<Added>> add(std::span<const CleanCase> cases, Role role,
                                               const std::optional<Receipt>& receipt = {});

  // Appends a change. kConflict when `expected` is given and is not the case's latest revision.
  // The ref of a case never changes. An identical body appends nothing. A receipt as in add().
  [[nodiscard]] Result<StoredCase> change(CaseId id, std::optional<Revision> expected,
                                          const CleanCase& record, Role role,
                                          const std::optional<Receipt>& receipt = {});

  // What was done under the key, unless its time is over.
  [[nodiscard]] Result<std::optional<KeptReply>> kept_reply(const std::string& key) const;

  // The latest record, or the latest at or before `as_of`; kNotFound.
  [[nodiscard]] Result<StoredCase> read(CaseId id, std::optional<Revision> as_of = {}) const;
  [[nodiscard]] Result<StoredCase> read(std::string_view ref) const;

  // Their refs, in the same order, without reading their bodies; kNotFound.
  [[nodiscard]] Result<std::vector<std::string>> refs(std::span<const CaseId> ids) const;

  // Changes of the case after that revision, at most `limit`, oldest first; kNotFound when there
  // is no such case, an empty list after its last change.
  [[nodiscard]] Result<std::vector<Change>> history(CaseId id, Revision after = {},
                                                    std::size_t limit = SIZE_MAX) const;

  // Cases with an id below `before` (0: any), the last recorded first, at most `limit`, each as it
  // is now. A page is a walk down the ids, so cases added meanwhile move nothing.
  [[nodiscard]] Result<std::vector<StoredCase>> list(const CaseListFilter& filter, CaseId before,
                                                     std::size_t limit) const;

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
