// The handlers of dispatch.cpp, one function a route. Any thread.
#pragma once

#include "api/http/dispatch.hpp"

namespace shoplore {

[[nodiscard]] Reply get_health(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_openapi(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_ask(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_find(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_patterns(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_recognise(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_cases(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply patch_case_by_ref(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply close_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_case_history(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_vocabulary(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_vocabulary_entry(LiveRecords& records, const Incoming& request);

// The reply with its ETag, or 304 without a body when If-None-Match names it.
[[nodiscard]] Reply tagged_reply(const Incoming& request, std::string tag, std::string body);

}  // namespace shoplore
