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

#include "api/http/request_counts.hpp"
#include "api/wire/kept_lately.hpp"
#include "indexer/outcome_report.hpp"
#include "indexer/records.hpp"
#include "query/ask.hpp"
#include "query/failure_mileage/failure_mileage.hpp"
#include "query/outcomes/comeback_offer.hpp"
#include "query/outcomes/outcomes_due.hpp"
#include "query/patterns/pattern_book.hpp"
#include "query/repair_plan/repair_plan.hpp"
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
  // At what mileage a failure comes (failure_mileage.hpp). Reads every record.
  [[nodiscard]] Result<FailureMileage> mileage(const MileageQuestion& question) const;
  // What putting a cause right takes.
  [[nodiscard]] Result<RepairPlan> plan(const PlanQuestion& question) const;
  // As records.hpp; nothing of the identity is kept.
  [[nodiscard]] Result<std::string> token_of(const Identity& identity) const;
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

  // What became of repairs: outcomes_due.hpp, comeback_offer.hpp, outcome_report.hpp. Offers of a
  // case given, as it is or as it is about to be.
  [[nodiscard]] Result<OutcomesDue> due(std::size_t limit) const;
  [[nodiscard]] Result<std::vector<ComebackOffer>> comebacks(const Case& record) const;
  [[nodiscard]] Result<Recorded> record_outcome(std::string_view ref,
                                                std::optional<Revision> expected,
                                                const OutcomeReport& report,
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
    std::uint32_t counted = 0;  // of them, in answers
    std::string trouble;        // why the index does not follow; empty when it does
  };
  [[nodiscard]] Result<Health> health() const;

  // What was seen more or less often lately, as last kept; made now when there is none.
  [[nodiscard]] Result<KeptLately> lately() const;
  // The same, or nothing when there is none that can be read.
  [[nodiscard]] std::optional<KeptLately> lately_as_kept() const;

  // Requests answered from these records.
  [[nodiscard]] RequestCounts& requests() const;

  // Runs `use` on the snapshot in use and a store lent for it; anew when the index moved on
  // (kBusy), so it must bear being run twice.
  [[nodiscard]] Result<void> read_with(
      const std::function<Result<void>(const Snapshot&, const Store&)>& use) const;

  [[nodiscard]] const Vocabulary& vocabulary() const;
  [[nodiscard]] const ShopFolder& folder() const;

 private:
  struct Impl;
  explicit LiveRecords(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace shoplore
