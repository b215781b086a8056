// The workshop's desk: the one way in for records. Removes identities, checks rules (of the record
// case_rules.hpp, towards the case it follows case_links.hpp), stores, and lets the index follow.
//
// Nothing given here reaches the disk before identities were removed from it.
// Lifetime: owns vocabulary, key and store of one shop folder. Threads: one at a time; a server
// opens one per worker that writes, or guards one with a mutex.
#pragma once

#include <chrono>
#include <functional>
#include <istream>
#include <memory>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_json.hpp"
#include "indexer/identity_token.hpp"
#include "indexer/index_follower.hpp"
#include "indexer/recogniser.hpp"
#include "indexer/shop_folder.hpp"
#include "indexer/store.hpp"

namespace shoplore {

struct Recorded {
  StoredCase stored;
  std::vector<std::string> warnings;  // "the VIN's check digit does not fit"
};

struct ImportReport {
  std::int64_t added = 0, same_already = 0;
  std::vector<std::string> warnings;  // first few, with their line
};

class Records {
 public:
  // Makes folder, key and records.
  [[nodiscard]] static Result<Records> create(const ShopFolder& folder);
  [[nodiscard]] static Result<Records> open(const ShopFolder& folder);
  ~Records();
  Records(Records&&) noexcept;

  // With a receipt, what was done is kept under its key in the same transaction (store.hpp).
  [[nodiscard]] Result<Recorded> add(Intake intake, Role role,
                                     const std::optional<Receipt>& receipt = {});

  // RFC 7396 merge patch of the record, of any kind: findings, closing, reopening, withdrawing.
  [[nodiscard]] Result<Recorded> change(std::string_view ref, std::optional<Revision> expected,
                                        std::string_view patch, Role role,
                                        const std::optional<Receipt>& receipt = {});

  // Puts a record in the place of the one read; kConflict when that changed meanwhile.
  [[nodiscard]] Result<Recorded> replace(const StoredCase& before, Case record, Role role,
                                         const std::optional<Receipt>& receipt = {});

  // The receipt of a request: its key and everything it said, as hashes under the shop's key.
  [[nodiscard]] Receipt receipt_of(std::string_view key, std::string_view request,
                                   int status) const;

  // The pseudonym of the vehicle that a VIN or plate names, to look for its past by: nothing of it
  // is kept. Empty when neither is given; errors as for a new case.
  [[nodiscard]] Result<std::string> token_of(const Identity& identity) const;

  // Adds what was recognised in the text to an unfinished case, and the text to its notes. The
  // identity, when known, is removed from it like everything that has the shape of one.
  [[nodiscard]] Result<Recorded> add_findings(std::string_view ref, std::string_view text,
                                              Role role, const Identity& identity = {});

  // Puts the record back as it was at that revision, as a new change.
  [[nodiscard]] Result<Recorded> restore(std::string_view ref, Revision revision, Role role);

  // JSON Lines, one case a line; blank lines are skipped. Cases may come before what they follow:
  // links are not checked. Stops at the first bad line, naming it;
  // what was acknowledged before it stays (progress: lines stored so far, a batch at a time).
  // Running it again with the same file goes on where it stopped: a line without a ref is named
  // after its content.
  [[nodiscard]] Result<ImportReport> import(std::istream& lines,
                                            const std::function<void(std::int64_t)>& progress);

  // Every case's latest record as JSON Lines, in id order, withdrawn ones included.
  [[nodiscard]] Result<std::int64_t> export_to(std::ostream& out) const;

  // Brings the index up to date, waiting at most `patience` for another process that does so.
  [[nodiscard]] Result<FollowReport> follow(std::chrono::milliseconds patience);
  [[nodiscard]] Result<FollowReport> reindex(std::chrono::milliseconds patience);

  // Everything `verify` looks at: database, every body's form and rules, index equal to the
  // records document by document. Lines for people; an error names the first thing wrong.
  [[nodiscard]] Result<std::vector<std::string>> verify();

  [[nodiscard]] const Store& store() const;
  [[nodiscard]] const Vocabulary& vocabulary() const;
  [[nodiscard]] const Recogniser& recogniser() const;
  [[nodiscard]] const ShopFolder& folder() const;

 private:
  struct Impl;
  explicit Records(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace shoplore
