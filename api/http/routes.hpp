// The handlers of dispatch.cpp, one function a route. Any thread.
#pragma once

#include "api/http/dispatch.hpp"

namespace shoplore {

[[nodiscard]] Reply get_health(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_ask(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply post_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply get_case(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply patch_case_by_ref(LiveRecords& records, const Incoming& request);
[[nodiscard]] Reply close_case(LiveRecords& records, const Incoming& request);

}  // namespace shoplore
