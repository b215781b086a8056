#include "api/http/dispatch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "api/http/routes.hpp"
#include "api/wire/problem_json.hpp"
#include "indexer/text.hpp"

namespace shoplore {

namespace {

constexpr std::string_view kJsonType = "application/json";
constexpr std::string_view kPatchType = "application/merge-patch+json";

struct Route {
  RouteDescription described;
  Reply (*handle)(LiveRecords&, const Incoming&);
};

constexpr std::string_view kFindParameters =
    "q make engine_family mileage_km_low mileage_km_high model_year_low model_year_high "
    "closed_since proof* limit cursor";
constexpr std::string_view kWatchOutParameters =
    "q case make engine_family mileage_km_low mileage_km_high model_year_low model_year_high "
    "closed_since proof*";
constexpr std::string_view kListParameters =
    "state* make engine_family cause vehicle opened_since closed_since limit cursor";
constexpr std::string_view kMileageParameters = "cause make engine_family";

constexpr std::string_view kMetricsPath = "/metrics";

constexpr std::array kRoutes = {
    Route{{"GET", "/healthz", "", ""}, get_health},
    Route{{"GET", "/openapi.json", "", ""}, get_openapi},
    Route{{"GET", kMetricsPath, "", ""}, get_metrics},
    Route{{"POST", "/v1/ask", kJsonType, ""}, post_ask},
    Route{{"GET", "/v1/watch-out", "", kWatchOutParameters}, get_watch_out},
    Route{{"POST", "/v1/watch-out", kJsonType, ""}, post_watch_out},
    Route{{"GET", "/v1/find", "", kFindParameters}, get_find},
    Route{{"GET", "/v1/plan", "", "cause make engine_family vehicle case open*"}, get_plan},
    Route{{"GET", "/v1/patterns", "", "make engine_family cause limit cursor"}, get_patterns},
    Route{{"POST", "/v1/recognise", kJsonType, ""}, post_recognise},
    Route{{"GET", "/v1/cases", "", kListParameters}, get_cases},
    Route{{"POST", "/v1/cases", kJsonType, ""}, post_case},
    Route{{"GET", "/v1/cases/{ref}", "", "as_of"}, get_case},
    Route{{"PATCH", "/v1/cases/{ref}", kPatchType, ""}, patch_case_by_ref},
    Route{{"POST", "/v1/cases/{ref}/close", kJsonType, ""}, close_case},
    Route{{"GET", "/v1/cases/{ref}/comeback", "", ""}, get_comeback},
    Route{{"POST", "/v1/cases/{ref}/outcome", kJsonType, ""}, post_outcome},
    Route{{"GET", "/v1/cases/{ref}/approval", "", "cause"}, get_approval},
    Route{{"GET", "/v1/cases/{ref}/history", "", "full limit cursor"}, get_case_history},
    Route{{"GET", "/v1/mileage", "", kMileageParameters}, get_mileage},
    Route{{"GET", "/v1/mileage.svg", "", kMileageParameters}, get_mileage_picture},
    Route{{"GET", "/v1/outcomes/due", "", "limit"}, get_outcomes_due},
    Route{{"GET", "/v1/lately", "", ""}, get_lately},
    Route{{"POST", "/v1/practice/rounds", kJsonType, ""}, post_practice_round},
    Route{{"GET", "/v1/practice/rounds/{id}", "", ""}, get_practice_round},
    Route{{"POST", "/v1/practice/rounds/{id}/belief", kJsonType, ""}, post_practice_belief},
    Route{{"POST", "/v1/practice/rounds/{id}/check", kJsonType, ""}, post_practice_check},
    Route{{"POST", "/v1/practice/rounds/{id}/commit", kJsonType, ""}, post_practice_commit},
    Route{{"GET", "/v1/practice/rounds/{id}/feedback", "", ""}, get_practice_feedback},
    Route{{"GET", "/v1/practice/progress", "", "apprentice"}, get_practice_progress},
    Route{{"DELETE", "/v1/practice/progress", "", "apprentice"}, delete_practice_progress},
    Route{{"GET", "/v1/vocabulary", "", "kind q limit cursor"}, get_vocabulary},
    Route{{"GET", "/v1/vocabulary/{kind}/{id}", "", ""}, get_vocabulary_entry},
};

// The piece up to the next slash; takes it and the slash off the front.
std::string_view next_segment(std::string_view& path) {
  const auto slash = std::min(path.find('/'), path.size());
  const auto segment = path.substr(0, slash);
  path.remove_prefix(std::min(slash + 1, path.size()));
  return segment;
}

// What stands for the {..} of a pattern, in order; nothing when the path is another.
std::optional<std::vector<std::string>> matched(std::string_view pattern, std::string_view path) {
  if (std::count(pattern.begin(), pattern.end(), '/') !=
      std::count(path.begin(), path.end(), '/')) {
    return std::nullopt;
  }
  std::vector<std::string> parts;
  while (!pattern.empty()) {
    const auto wanted = next_segment(pattern);
    const auto given = next_segment(path);
    const bool hole = wanted.starts_with('{');
    if (hole ? given.empty() : wanted != given) return std::nullopt;
    if (hole) parts.emplace_back(given);
  }
  return parts;
}

// The media type without parameters, in lower case.
std::string media_type(std::string_view header) {
  header = header.substr(0, header.find(';'));
  while (!header.empty() && header.back() == ' ') header.remove_suffix(1);
  return lower_case(header);
}

Reply wrong_type(const RouteDescription& route) {
  Reply reply = refusal(
      {ErrorCode::kInvalidInput, "Content-Type", fmt::format("expected {}", route.takes)}, 415);
  reply.headers.emplace_back(route.method == "PATCH" ? "Accept-Patch" : "Accept",
                             std::string(route.takes));
  return reply;
}

Reply no_route(const Incoming& request, const std::vector<std::string_view>& allowed) {
  if (allowed.empty()) {
    return refusal({ErrorCode::kNotFound, request.path, "there is nothing at this path"}, 404);
  }
  const std::string methods = fmt::format("{}", fmt::join(allowed, ", "));
  Reply reply = refusal({ErrorCode::kInvalidInput, request.path,
                         fmt::format("does not take {}, only {}", request.method, methods)},
                        405);
  reply.headers.emplace_back("Allow", methods);
  return reply;
}

}  // namespace

Reply refusal(const Error& error) {
  return refusal(error, http_status(error.code));
}

Reply refusal(const Error& error, int status) {
  Reply reply{status, "application/problem+json", problem_json(error, status)};
  if (status == 503) reply.headers.emplace_back("Retry-After", "1");
  return reply;
}

std::vector<RouteDescription> route_descriptions() {
  std::vector<RouteDescription> all;
  for (const Route& route : kRoutes) all.push_back(route.described);
  return all;
}

namespace {

// What is answered, and by which route: none when no route fits.
std::pair<Reply, const RouteDescription*> dispatched(LiveRecords& records, Incoming request) {
  const std::string_view method =
      request.method == "HEAD" ? "GET" : std::string_view(request.method);
  std::vector<std::string_view> allowed;
  for (const Route& each : kRoutes) {
    const RouteDescription& route = each.described;
    auto parts = matched(route.path, request.path);
    if (!parts) continue;
    if (route.method != method) {
      allowed.push_back(route.method);
      if (route.method == "GET") allowed.push_back("HEAD");
      continue;
    }
    auto query = QueryString::parse(request.raw_query, route.parameters);
    if (!query) return {refusal(query.error()), &route};
    if (!route.takes.empty() && media_type(request.content_type) != route.takes) {
      return {wrong_type(route), &route};
    }
    request.parts = std::move(*parts);
    request.query = std::move(*query);
    return {each.handle(records, request), &route};
  }
  return {no_route(request, allowed), nullptr};
}

}  // namespace

Reply dispatch(LiveRecords& records, Incoming request) {
  auto [reply, route] = dispatched(records, std::move(request));
  if (route == nullptr)
    records.requests().add("other", "other", reply.status);
  else if (route->path != kMetricsPath)
    records.requests().add(route->method, route->path, reply.status);
  return std::move(reply);
}

}  // namespace shoplore
