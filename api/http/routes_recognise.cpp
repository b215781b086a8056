#include "api/http/routes.hpp"
#include "api/wire/answer_json.hpp"
#include "api/wire/request_json.hpp"

namespace shoplore {

Reply post_recognise(LiveRecords& records, const Incoming& request) {
  const auto text = text_from_json(request.body);
  if (!text) return refusal(text.error());
  return {200, "application/json",
          understood_json(records.understand(*text), records.vocabulary())};
}

}  // namespace shoplore
