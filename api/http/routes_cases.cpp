#include <fmt/format.h>

#include <charconv>

#include "api/http/routes.hpp"
#include "api/wire/record_json.hpp"
#include "api/wire/request_json.hpp"

namespace shoplore {

namespace {

std::string etag(Revision revision) {
  return fmt::format("\"{}\"", revision.value);
}

// The revision an If-Match demands; nothing for none or "*". A weak or foreign tag never matches
// (RFC 9110 section 13.1.1 compares strongly), so it becomes a revision no case has.
std::optional<Revision> demanded(std::string_view header) {
  if (header.empty() || header == "*") return std::nullopt;
  constexpr Revision kNever{-1};
  if (header.size() < 3 || header.front() != '"' || header.back() != '"') return kNever;
  const auto digits = header.substr(1, header.size() - 2);
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  const bool whole = error == std::errc{} && end == digits.data() + digits.size();
  return whole ? Revision{value} : kNever;
}

Reply recorded_reply(int status, const Recorded& recorded) {
  Reply reply{status, "application/json", recorded_json(recorded)};
  reply.headers.emplace_back("ETag", etag(recorded.stored.revision));
  return reply;
}

Reply changed(LiveRecords& records, const Incoming& request, const std::string& patch) {
  const auto expected = demanded(request.if_match);
  const auto recorded = records.change(request.ref, expected, patch);
  if (recorded) return recorded_reply(200, *recorded);
  const bool precondition = expected && recorded.error().code == ErrorCode::kConflict;
  return precondition ? refusal(recorded.error(), 412) : refusal(recorded.error());
}

}  // namespace

Reply post_case(LiveRecords& records, const Incoming& request) {
  auto intake = intake_from_json(request.body);
  if (!intake) return refusal(intake.error());
  const auto recorded = records.add(std::move(*intake));
  if (!recorded) return refusal(recorded.error());
  Reply reply = recorded_reply(201, *recorded);
  reply.headers.emplace_back("Location", "/v1/cases/" + recorded->stored.record.ref);
  return reply;
}

Reply get_case(LiveRecords& records, const Incoming& request) {
  const auto stored = records.read(request.ref);
  if (!stored) return refusal(stored.error());
  Reply reply{200, "application/json", case_to_json(stored->record)};
  reply.headers.emplace_back("ETag", etag(stored->revision));
  return reply;
}

Reply patch_case_by_ref(LiveRecords& records, const Incoming& request) {
  return changed(records, request, request.body);
}

Reply close_case(LiveRecords& records, const Incoming& request) {
  const auto patch = closing_patch_from_json(request.body, today());
  if (!patch) return refusal(patch.error());
  const auto stored = records.read(request.ref);
  if (!stored) return refusal(stored.error());
  const CaseState state = stored->record.state;
  if (state != CaseState::kOpen && state != CaseState::kWaiting) {
    return refusal(
        {ErrorCode::kConflict,
         request.ref,
         "is " + std::string(name_of(state)) + "; only an open or waiting case is closed",
         {}});
  }
  return changed(records, request, *patch);
}

}  // namespace shoplore
