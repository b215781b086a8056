#include "api/http/once.hpp"

#include <fmt/format.h>

#include "api/http/preconditions.hpp"
#include "api/wire/record_json.hpp"

namespace shoplore {

namespace {

constexpr std::size_t kMaxKeyBytes = 128;

Error refused_key(ErrorCode code, std::string message) {
  return {code, "Idempotency-Key", std::move(message), {}};
}

// The text of a structured field's string (RFC 9651 section 3.3.3).
Result<std::string> key_of(std::string_view header) {
  const auto malformed = [] {
    return fail(refused_key(
        ErrorCode::kInvalidInput,
        fmt::format("expected 1 to {} characters of ASCII in quotes, as in \"8e03978e-40d5\"",
                    kMaxKeyBytes)));
  };
  if (header.size() < 2 || header.front() != '"' || header.back() != '"') return malformed();
  std::string key;
  for (std::size_t i = 1; i + 1 < header.size(); ++i) {
    char c = header[i];
    if (c == '"' || c < 0x20 || c > 0x7e) return malformed();
    if (c == '\\') {
      c = header[++i];
      const bool inside = i + 1 < header.size() && (c == '"' || c == '\\');
      if (!inside) return malformed();
    }
    key += c;
  }
  if (key.empty() || key.size() > kMaxKeyBytes) return malformed();
  return key;
}

}  // namespace

Reply recorded_reply(int status, const Recorded& recorded) {
  Reply reply{status, "application/json", recorded_json(recorded)};
  reply.headers.emplace_back("ETag", entity_tag(recorded.stored.revision));
  if (status == 201) {
    reply.headers.emplace_back("Location", "/v1/cases/" + recorded.stored.record.ref);
  }
  return reply;
}

Reply once(LiveRecords& records, const Incoming& request, int status,
           const std::function<Reply(const std::optional<Receipt>&)>& change) {
  if (!request.idempotency_key) return change(std::nullopt);
  const auto key = key_of(*request.idempotency_key);
  if (!key) return refusal(key.error());
  const std::string said =
      fmt::format("{} {}\n{}\n{}", request.method, request.path, request.if_match, request.body);
  const Receipt receipt = records.receipt_of(*key, said, status);
  const auto claim = records.claim(receipt.key);
  if (!claim) {
    Reply reply =
        refusal(refused_key(ErrorCode::kConflict, "the first request with this key is under way"));
    reply.headers.emplace_back("Retry-After", "1");
    return reply;
  }
  const auto kept = records.kept_reply(receipt.key);
  if (!kept) return refusal(kept.error());
  if (!*kept) return change(receipt);
  if ((*kept)->request != receipt.request) {
    return refusal(refused_key(ErrorCode::kInvalidInput,
                               "this key came with another request before; take a new one"),
                   422);
  }
  Reply reply = recorded_reply((*kept)->status, {(*kept)->stored, (*kept)->warnings});
  reply.headers.emplace_back("Shoplore-Repeated", "true");
  return reply;
}

}  // namespace shoplore
