// The handlers of dispatch.cpp, one function a route. Any thread.
#pragma once

#include "api/http/dispatch.hpp"

namespace shoplore {

[[nodiscard]] Reply get_health(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_openapi(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_ask(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_plan(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_approval(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_watch_out(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_watch_out(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_find(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_patterns(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_recognise(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_cases(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply patch_case_by_ref(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply close_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_case_history(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_mileage(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_mileage_picture(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_comeback(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_outcome(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_outcomes_due(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_vocabulary(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_vocabulary_entry(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_lately(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_metrics(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_practice_round(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_practice_round(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_practice_belief(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_practice_check(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_practice_commit(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_practice_feedback(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_practice_progress(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply delete_practice_progress(LiveRecords& records, const Incoming& request);

// Whether the request demands another revision than the case has (If-Match), and which one counts:
// the reply that refuses, or the revision, if any.
[[nodiscard]] tl::expected<std::optional<Revision>, Reply> demanded_revision(
    const Incoming& request, const StoredCase& now);

// The refusal of a change: 412 where it lost a race against what If-Match demanded.
[[nodiscard]] Reply refused_change(const Incoming& request, const Error& error,
                                   std::string_view ref);

// The reply with its ETag, or 304 without a body when If-None-Match names it.
[[nodiscard]] Reply tagged_reply(const Incoming& request, std::string tag, std::string body);

}  // namespace shoplore
