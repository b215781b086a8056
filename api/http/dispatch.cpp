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
  std::string_view method, path;  // "{ref}" stands for one segment
  std::string_view takes;         // content type of the body; empty: no body
  Reply (*handle)(LiveRecords&, const Incoming&);
};

constexpr std::array kRoutes = {
    Route{"GET", "/healthz", "", get_health},
    Route{"POST", "/v1/ask", kJsonType, post_ask},
    Route{"POST", "/v1/cases", kJsonType, post_case},
    Route{"GET", "/v1/cases/{ref}", "", get_case},
    Route{"PATCH", "/v1/cases/{ref}", kPatchType, patch_case_by_ref},
    Route{"POST", "/v1/cases/{ref}/close", kJsonType, close_case},
};

// What stands for {ref}, "" for a route without one; nothing when the path is another.
std::optional<std::string> matched(std::string_view pattern, std::string_view path) {
  const auto hole = pattern.find("{ref}");
  if (hole == std::string_view::npos) {
    return pattern == path ? std::optional<std::string>("") : std::nullopt;
  }
  const auto before = pattern.substr(0, hole);
  const auto after = pattern.substr(hole + 5);
  if (path.size() <= before.size() + after.size()) return std::nullopt;
  if (path.substr(0, before.size()) != before) return std::nullopt;
  if (path.substr(path.size() - after.size()) != after) return std::nullopt;
  const auto ref = path.substr(before.size(), path.size() - before.size() - after.size());
  if (ref.find('/') != std::string_view::npos) return std::nullopt;
  return std::string(ref);
}

// The media type without parameters, in lower case.
std::string media_type(std::string_view header) {
  header = header.substr(0, header.find(';'));
  while (!header.empty() && header.back() == ' ') header.remove_suffix(1);
  return lower_case(header);
}

Reply wrong_type(const Route& route) {
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

Reply dispatch(LiveRecords& records, Incoming request) {
  const std::string_view method =
      request.method == "HEAD" ? "GET" : std::string_view(request.method);
  std::vector<std::string_view> allowed;
  for (const Route& route : kRoutes) {
    auto ref = matched(route.path, request.path);
    if (!ref) continue;
    if (route.method != method) {
      allowed.push_back(route.method);
      if (route.method == "GET") allowed.push_back("HEAD");
      continue;
    }
    if (!route.takes.empty() && media_type(request.content_type) != route.takes) {
      return wrong_type(route);
    }
    request.ref = std::move(*ref);
    return route.handle(records, request);
  }
  return no_route(request, allowed);
}

}  // namespace shoplore
