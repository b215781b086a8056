// What a monitor wants to know of a running server, as Prometheus' text exposition format 0.0.4.
//
// | name                             | kind    | labels                | meaning |
// |----------------------------------|---------|-----------------------|-----------------------------|
// | shoplore_cases                   | gauge   |                       | counted cases in answers |
// | shoplore_records_revision        | gauge   |                       | the latest recorded | |
// shoplore_index_lag_revisions     | gauge   |                       | recorded, not answered from
// | | shoplore_index_follows           | gauge   |                       | 1, or 0 in trouble | |
// shoplore_requests_total          | counter | method, route, status | answered; "2xx" ... | |
// shoplore_lately_changes          | gauge   | change                | rows risen, fallen | |
// shoplore_lately_pairings         | gauge   |                       | never seen together before |
//
// The lately gauges are left out until there is a kept result. Requests for the metrics themselves
// are not counted. Nothing in it tells a case, a vehicle or a person.
// Pure function, any thread.
#pragma once

#include <optional>
#include <string>

#include "api/http/live_records.hpp"
#include "api/wire/kept_lately.hpp"

namespace shoplore {

inline constexpr const char* kMetricsType = "text/plain; version=0.0.4; charset=utf-8";

[[nodiscard]] std::string metrics_text(const LiveRecords::Health& health,
                                       const std::map<RequestKind, std::uint64_t>& requests,
                                       const std::optional<KeptLately>& lately);

}  // namespace shoplore
