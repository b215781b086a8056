#include "api/http/openapi_document.hpp"
#include "api/http/preconditions.hpp"
#include "api/http/routes.hpp"
#include "api/wire/answer_json.hpp"
#include "api/wire/record_json.hpp"
#include "api/wire/request_json.hpp"

namespace shoplore {

Reply post_ask(LiveRecords& records, const Incoming& request) {
  const auto question = question_from_json(request.body);
  if (!question) return refusal(question.error());
  const auto answer = records.ask(*question);
  if (!answer) return refusal(answer.error());
  return {200, "application/json", answer_json(*answer, records.vocabulary())};
}

Reply get_health(LiveRecords& records, const Incoming&) {
  const auto health = records.health();
  if (!health) return refusal(health.error(), 503);
  if (!health->trouble.empty()) {
    return refusal({ErrorCode::kDamagedIndex, "index", "does not follow: " + health->trouble}, 503);
  }
  return {200, "application/json", health_json(health->cases, health->records, health->snapshot)};
}

Reply get_openapi(LiveRecords&, const Incoming&) {
  return {200, "application/json", openapi_files().front().second};
}

Reply tagged_reply(const Incoming& request, std::string tag, std::string body) {
  const bool same = names_tag(request.if_none_match, tag, TagComparison::kWeak);
  Reply reply{same ? 304 : 200, "application/json", same ? "" : std::move(body)};
  reply.headers.emplace_back("ETag", std::move(tag));
  return reply;
}

}  // namespace shoplore
