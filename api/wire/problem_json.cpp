#include "api/wire/problem_json.hpp"

#include "indexer/json_form.hpp"

namespace shoplore {

ExitCode exit_code(ErrorCode code) {
  switch (code) {
    case ErrorCode::kInvalidInput:
    case ErrorCode::kTooLarge:
    case ErrorCode::kNotFound:
    case ErrorCode::kConflict:
    case ErrorCode::kNoPermission:
    case ErrorCode::kDamagedStore:
    case ErrorCode::kDamagedIndex:
    case ErrorCode::kBusy:
    case ErrorCode::kInternal:
      return ExitCode::kError;
  }
  return ExitCode::kError;
}

int http_status(ErrorCode code) {
  switch (code) {
    case ErrorCode::kInvalidInput:
      return 400;
    case ErrorCode::kTooLarge:
      return 413;
    case ErrorCode::kNotFound:
      return 404;
    case ErrorCode::kConflict:
      return 409;
    case ErrorCode::kNoPermission:
      return 500;
    case ErrorCode::kDamagedStore:
      return 500;
    case ErrorCode::kDamagedIndex:
      return 503;
    case ErrorCode::kBusy:
      return 503;
    case ErrorCode::kInternal:
      return 500;
  }
  return 500;
}

std::string status_phrase(int status) {
  switch (status) {
    case 400:
      return "Bad Request";
    case 404:
      return "Not Found";
    case 405:
      return "Method Not Allowed";
    case 408:
      return "Request Timeout";
    case 409:
      return "Conflict";
    case 411:
      return "Length Required";
    case 412:
      return "Precondition Failed";
    case 413:
      return "Content Too Large";
    case 414:
      return "URI Too Long";
    case 415:
      return "Unsupported Media Type";
    case 422:
      return "Unprocessable Content";
    case 421:
      return "Misdirected Request";
    case 500:
      return "Internal Server Error";
    case 503:
      return "Service Unavailable";
    default:
      return "Error";
  }
}

std::string problem_json(const Error& error) {
  return problem_json(error, http_status(error.code));
}

std::string problem_json(const Error& error, int status) {
  Json json = {{"type", "about:blank"}, {"title", status_phrase(status)}, {"status", status}};
  json["code"] = name_of(error.code);
  json["detail"] = error.place.empty() ? error.message : error.place + ": " + error.message;
  if (!error.place.empty()) json["place"] = error.place;
  json["problems"] = Json::array();
  for (const Problem& problem : error.problems) {
    json["problems"].push_back({{"place", problem.place}, {"expected", problem.expected}});
  }
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace shoplore
