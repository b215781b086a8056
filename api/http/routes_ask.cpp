#include "api/http/filter_query.hpp"
#include "api/http/openapi_document.hpp"
#include "api/http/preconditions.hpp"
#include "api/http/routes.hpp"
#include "api/wire/answer_json.hpp"
#include "api/wire/record_json.hpp"
#include "api/wire/request_json.hpp"
#include "indexer/text.hpp"

namespace shoplore {

namespace {

Result<Question> question_of(const LiveRecords& records, const Incoming& request) {
  auto question = question_from_json(
      request.body, [&](const Identity& identity) { return records.token_of(identity); });
  if (question) question->day = today();
  return question;
}

Reply watch_out_reply(const LiveRecords& records, Question question) {
  question.similar_cases = 0;
  const auto answer = records.ask(question);
  if (!answer) return refusal(answer.error());
  return {200, "application/json", watch_out_json(*answer, records.vocabulary())};
}

}  // namespace

Reply post_ask(LiveRecords& records, const Incoming& request) {
  const auto question = question_of(records, request);
  if (!question) return refusal(question.error());
  const auto answer = records.ask(*question);
  if (!answer) return refusal(answer.error());
  return {200, "application/json", answer_json(*answer, records.vocabulary())};
}

Reply post_watch_out(LiveRecords& records, const Incoming& request) {
  auto question = question_of(records, request);
  if (!question) return refusal(question.error());
  return watch_out_reply(records, std::move(*question));
}

Reply get_watch_out(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  Question question;
  question.text = query.text("q");
  question.filter = filter_of(query);
  question.day = today();
  const std::string ref = query.text("case");
  if (const auto read = query.finish(); !read) return refusal(read.error());
  if (const auto checked = check_filter(question.filter); !checked) return refusal(checked.error());
  if (words_of(question.text).empty()) {
    return refusal({ErrorCode::kInvalidInput, "?q", "is missing: a question needs words"});
  }
  if (!ref.empty()) {
    auto stored = records.read(ref);
    if (!stored) return refusal(stored.error());
    if (stored->record.state == CaseState::kClosed) {
      return refusal({ErrorCode::kInvalidInput, "?case",
                      "is closed and among the cases counted: name an open one"});
    }
    question.record = std::move(stored->record);
  }
  return watch_out_reply(records, std::move(question));
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
