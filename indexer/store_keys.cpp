// Receipts of requests that may be sent again. A receipt is written in the transaction of the
// change it is of, so that after a crash there are both or neither. Warnings are our own sentences
// and hold nothing of what was removed; they are kept a line each.
#include <fmt/format.h>

#include "indexer/store_connection.hpp"

namespace shoplore {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    lines.push_back(text.substr(at, end - at));
    at = end == text.npos ? end : end + 1;
  }
  return lines;
}

}  // namespace

Result<void> Store::Impl::keep(const Receipt& receipt, CaseId case_id, Revision revision,
                               const std::vector<std::string>& warnings) {
  const std::int64_t now = now_in_seconds();
  SQLite::Statement forget(database, "DELETE FROM request_key WHERE at < ?");
  forget.bind(1, now - kReceiptSeconds);
  forget.exec();
  std::string lines;
  for (const auto* notes : {&warnings, &receipt.notes}) {
    for (const std::string& note : *notes) lines += note + "\n";
  }
  SQLite::Statement insert(database,
                           "INSERT INTO request_key(key, request, at, case_id, revision, status, "
                           "warnings) VALUES(?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING");
  insert.bind(1, receipt.key);
  insert.bind(2, receipt.request);
  insert.bind(3, now);
  insert.bind(4, static_cast<std::int64_t>(case_id.value));
  insert.bind(5, revision.value);
  insert.bind(6, receipt.status);
  insert.bind(7, lines);
  if (insert.exec() == 1) return {};
  return fail(ErrorCode::kConflict, "Idempotency-Key",
              "another request with this key was done just now; send it again to see its reply");
}

Result<std::optional<KeptReply>> Store::kept_reply(const std::string& key) const {
  return impl_->guarded([&]() -> Result<std::optional<KeptReply>> {
    SQLite::Statement select(impl_->database,
                             "SELECT request, case_id, revision, status, warnings "
                             "FROM request_key WHERE key = ? AND at >= ?");
    select.bind(1, key);
    select.bind(2, now_in_seconds() - kReceiptSeconds);
    if (!select.executeStep()) return std::optional<KeptReply>();
    KeptReply kept;
    kept.request = select.getColumn(0).getString();
    kept.status = select.getColumn(3).getInt();
    kept.warnings = lines_of(select.getColumn(4).getString());
    const CaseId id{static_cast<std::uint32_t>(select.getColumn(1).getInt64())};
    auto stored = read(id, Revision{select.getColumn(2).getInt64()});
    if (!stored) return fail(stored.error());
    kept.stored = std::move(*stored);
    return kept;
  });
}

}  // namespace shoplore
