// From a request to a reply, without a network: the routes, what they take, what they refuse.
//
// | path                       | method | body                           | reply               |
// |----------------------------|--------|--------------------------------|---------------------|
// | /healthz                   | GET    |                                | 200, 503            |
// | /openapi.json              | GET    |                                | 200 this, in full   |
// | /metrics                   | GET    |                                | 200 text, 503       |
// | /v1/ask                    | POST   | question (request_json.hpp)    | 200 answer          |
// | /v1/watch-out              | GET    |                                | 200 warnings        |
// | /v1/watch-out              | POST   | question (request_json.hpp)    | 200 warnings        |
// | /v1/find                   | GET    |                                | 200 search page     |
// | /v1/plan                   | GET    |                                | 200 repair plan     |
// | /v1/patterns               | GET    |                                | 200 patterns        |
// | /v1/recognise              | POST   | text (request_json.hpp)        | 200 understood      |
// | /v1/cases                  | GET    |                                | 200 list            |
// | /v1/cases                  | POST   | case (case_json.hpp, Intake)   | 201, Location, ETag |
// | /v1/cases/{ref}            | GET    |                                | 200 record, ETag    |
// | /v1/cases/{ref}            | PATCH  | application/merge-patch+json   | 200 recorded, ETag  |
// | /v1/cases/{ref}/close      | POST   | closing (request_json.hpp)     | 200 recorded, ETag  |
// | /v1/cases/{ref}/comeback   | GET    |                                | 200 offers          |
// | /v1/cases/{ref}/outcome    | POST   | report (outcomes_json.hpp)     | 200 recorded, ETag  |
// | /v1/cases/{ref}/approval   | GET    |                                | 200 page (HTML)     |
// | /v1/cases/{ref}/history    | GET    |                                | 200 changes         |
// | /v1/lately                 | GET    |                                | 200 as kept         |
// | /v1/mileage                | GET    |                                | 200 failure mileage |
// | /v1/mileage.svg            | GET    |                                | 200 its picture     |
// | /v1/outcomes/due           | GET    |                                | 200 repairs         |
// | /v1/practice/rounds        | POST   | new round (practice_json.hpp)  | 201 round, Location |
// |   /{id}                    | GET    |                                | 200 round           |
// |   /{id}/belief, check      | POST   | belief, check                  | 200 round           |
// |   /{id}/commit             | POST   | commitment                     | 200 committed       |
// |   /{id}/feedback           | GET    |                                | 200 committed       |
// | /v1/practice/progress      | GET    |                                | 200 progress        |
// | /v1/practice/progress      | DELETE |                                | 204                 |
// | /v1/vocabulary             | GET    |                                | 200 entries         |
// | /v1/vocabulary/{kind}/{id} | GET    |                                | 200 entry, ETag     |
//
// openapi.json, beside this file, describes all of it; a test holds the two together.
// The ETag of a case is its revision, that of an entry the vocabulary's fingerprint. If-Match on a
// change: 412 when it is no longer that. If-None-Match on what has an ETag: 304. Idempotency-Key
// on what records: once.hpp. Query parameters are read strictly (query_string.hpp).
// Everything refused is application/problem+json (problem_json.hpp). Any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "api/http/live_records.hpp"
#include "api/http/query_string.hpp"

namespace shoplore {

struct Incoming {
  std::string method, path;  // path decoded, without query
  std::string raw_query;     // what follows the "?", undecoded
  std::string content_type, if_match, if_none_match;
  std::optional<std::string> idempotency_key;
  std::string body;
  // Set by dispatch: what stands for {..} in the path, in order, and the query.
  std::vector<std::string> parts = {};
  QueryString query = {};
};

struct Reply {
  int status = 200;
  std::string content_type = "application/json";
  std::string body;
  std::vector<std::pair<std::string, std::string>> headers = {};
};

// A route as documented: what its path, body and query may be.
struct RouteDescription {
  std::string_view method, path;
  std::string_view takes;       // content type of the body; empty: no body
  std::string_view parameters;  // names with spaces between; "state*" may stand several times
};
[[nodiscard]] std::vector<RouteDescription> route_descriptions();

// Counts the request in records.requests(), but for those that ask for the counts.
[[nodiscard]] Reply dispatch(LiveRecords& records, Incoming request);

// The reply to an error: its own status, or the one given.
[[nodiscard]] Reply refusal(const Error& error);
[[nodiscard]] Reply refusal(const Error& error, int status);

}  // namespace shoplore
