// The records as a running server holds them: written by one, read by many, answered from a
// snapshot that a thread of its own keeps in step.
//
// A case acknowledged here is answerable within half a second; what another process writes is
// noticed within a tenth of a second (PRAGMA data_version) and followed likewise.
// Lifetime: stops its thread when it dies. Threads: every function from any.
// Fails as records.hpp and ask.hpp; kBusy of a moving index is retried here.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "indexer/records.hpp"
#include "query/ask.hpp"

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
  [[nodiscard]] Result<StoredCase> read(std::string_view ref) const;
  [[nodiscard]] Result<Recorded> add(Intake intake);
  [[nodiscard]] Result<Recorded> change(std::string_view ref, std::optional<Revision> expected,
                                        std::string_view patch);

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
