// From a request to a reply, without a network: the routes, what they take, what they refuse.
//
// | path                      | method | body                             | reply                |
// |---------------------------|--------|----------------------------------|----------------------|
// | /healthz                  | GET    |                                  | 200, 503             |
// | /v1/ask                   | POST   | question (request_json.hpp)      | 200 answer           |
// | /v1/cases                 | POST   | case (case_json.hpp, Intake)     | 201, Location, ETag  |
// | /v1/cases/{ref}           | GET    |                                  | 200 record, ETag     |
// | /v1/cases/{ref}           | PATCH  | application/merge-patch+json     | 200 recorded, ETag   |
// | /v1/cases/{ref}/close     | POST   | closing (request_json.hpp)       | 200 recorded, ETag   |
//
// The ETag of a case is its revision. If-Match on a change: 412 when it is no longer that.
// Everything refused is application/problem+json (problem_json.hpp). Any thread.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "api/http/live_records.hpp"

namespace shoplore {

struct Incoming {
  std::string method, path;  // path decoded, without query
  std::string content_type, if_match, body;
  std::string ref;  // set by dispatch: the {ref} of the path
};

struct Reply {
  int status = 200;
  std::string content_type = "application/json";
  std::string body;
  std::vector<std::pair<std::string, std::string>> headers = {};
};

[[nodiscard]] Reply dispatch(LiveRecords& records, Incoming request);

// The reply to an error: its own status, or the one given.
[[nodiscard]] Reply refusal(const Error& error);
[[nodiscard]] Reply refusal(const Error& error, int status);

}  // namespace shoplore
