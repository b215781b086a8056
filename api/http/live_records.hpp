// The records as a running server holds them: written by one, read by many, answered from a
// snapshot that a thread of its own keeps in step.
//
// A case acknowledged here is answerable within half a second; what another process writes is
// noticed within a tenth of a second (PRAGMA data_version) and followed likewise.
// Lifetime: stops its thread when it dies. Threads: every function from any.
// Fails as records.hpp and ask.hpp; kBusy of a moving index is retried here.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>

#include "indexer/records.hpp"
#include "query/ask.hpp"
#include "query/patterns/pattern_book.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {

class LiveRecords {
 public:
  // Brings the index in step and opens the first snapshot. `notes` gets lines for the person who
  // starts the server, such as that the index was rebuilt.
  [[nodiscard]] static Result<LiveRecords> open(const ShopFolder& folder,
                                                std::vector<std::string>& notes);
  ~LiveRecords();
  LiveRecords(LiveRecords&&) noexcept;

  [[nodiscard]] Result<Answer> ask(const Question& question) const;
  // Past cases like these words (similar_cases.hpp).
  [[nodiscard]] Result<SearchPage> find(const SearchQuestion& question) const;
  // A page of what recurs (pattern_book.hpp), mined once a revision: at most `limit` patterns after
  // as many as `skip` says of that revision; its error is handed on.
  struct PatternsPage {
    std::shared_ptr<const PatternBook> book;
    PatternList list;
    std::vector<OpenedPattern> shown;
    std::size_t skipped = 0;
    Revision revision;
  };
  using Skip = std::function<Result<std::size_t>(Revision)>;
  [[nodiscard]] Result<PatternsPage> patterns(const PatternChoice& choice, const Skip& skip,
                                              std::size_t limit) const;
  // What a text says, identities removed first; asks nothing.
  [[nodiscard]] Understood understand(std::string_view text) const;

  // The record as it is, or as it was at that revision; kNotFound.
  [[nodiscard]] Result<StoredCase> read(std::string_view ref,
                                        std::optional<Revision> as_of = {}) const;
  [[nodiscard]] Result<std::vector<StoredCase>> list(const CaseListFilter& filter, CaseId before,
                                                     std::size_t limit) const;
  // Changes after that revision, oldest first, and the body before the first of them ("" when it
  // is the first of all).
  struct History {
    std::string before;
    std::vector<Change> changes;
  };
  [[nodiscard]] Result<History> history(std::string_view ref, Revision after,
                                        std::size_t limit) const;

  [[nodiscard]] Result<Recorded> add(Intake intake, const std::optional<Receipt>& receipt = {});
  [[nodiscard]] Result<Recorded> change(std::string_view ref, std::optional<Revision> expected,
                                        std::string_view patch,
                                        const std::optional<Receipt>& receipt = {});

  // Requests that may be sent again: records.hpp and store.hpp.
  [[nodiscard]] Receipt receipt_of(std::string_view key, std::string_view request,
                                   int status) const;
  [[nodiscard]] Result<std::optional<KeptReply>> kept_reply(const std::string& key) const;
  // Holds a key until it dies; nothing when somebody else of this server holds it.
  [[nodiscard]] std::shared_ptr<void> claim(const std::string& key);

  struct Health {
    Revision records, snapshot;
    std::int64_t cases = 0;
    std::string trouble;  // why the index does not follow; empty when it does
  };
  [[nodiscard]] Result<Health> health() const;

  [[nodiscard]] const Vocabulary& vocabulary() const;

 private:
  struct Impl;
  explicit LiveRecords(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace shoplore
