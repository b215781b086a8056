// Writes one generation of the index: documents in, committed batches out.
//
// Knows nothing of records.db. Lifetime: holds Xapian's write lock of its folder. Threads: one.
// Every batch is one transaction that ends with its metadata, so documents are never visible
// without the revision they belong to. Xapian's exceptions are caught here and become
// kDamagedIndex, kNoPermission or kBusy.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "indexer/index_document.hpp"
#include "indexer/result.hpp"

namespace shoplore {

// What a generation was made from; anything else on disk is out of date.
struct IndexOrigin {
  std::string store_id, vocabulary;
  friend bool operator==(const IndexOrigin&, const IndexOrigin&) = default;
};

// Whether the generation is being built out of sight or is being read meanwhile.
enum class Writing { kOffline, kLive };

class IndexWriter {
 public:
  // Opens the folder, making it when kOffline.
  [[nodiscard]] static Result<IndexWriter> open(const std::filesystem::path& folder,
                                                Writing writing);
  ~IndexWriter();
  IndexWriter(IndexWriter&&) noexcept;

  // A document for each id, or nothing where the case does not count (any more); then the
  // revision, in one transaction.
  [[nodiscard]] Result<void> write(const std::map<CaseId, std::optional<IndexDocument>>& batch,
                                   Revision revision, const IndexOrigin& origin);

 private:
  struct Impl;
  explicit IndexWriter(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

// What an existing generation says of itself.
struct IndexState {
  Revision revision;
  int format = 0;
  IndexOrigin origin;
};
[[nodiscard]] Result<IndexState> index_state(const std::filesystem::path& folder);

// Every document's boolean terms and values as one text a case, for comparing with the records.
[[nodiscard]] Result<std::map<CaseId, std::string>> index_contents(
    const std::filesystem::path& folder);

// The same text of a document that was never written.
[[nodiscard]] std::string document_contents(const IndexDocument& document);

}  // namespace shoplore
