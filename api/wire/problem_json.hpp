// What an Error is to the outside: an exit code, an HTTP status, a problem details object.
//
// Problem details follow RFC 9457; type is about:blank, so title is the status's own phrase, and
// "code" tells kinds of failure apart:
//   {"type":"about:blank","title":"Bad Request","status":400,"code":"invalid_input",
//    "detail":"/opened: 2026-02-30 is not a day","place":"/opened",
//    "problems":[{"place":"/opened","expected":"2026-02-30 is not a day"}]}
// "place" is left out when there is none; "problems" is always there.
// Pure functions, any thread.
#pragma once

#include <string>

#include "indexer/enum_names.hpp"
#include "indexer/result.hpp"

namespace shoplore {

template <>
inline constexpr EnumTable<ErrorCode, 9> kEnumNames<ErrorCode>{
    {{ErrorCode::kInvalidInput, "invalid_input"},
     {ErrorCode::kTooLarge, "too_large"},
     {ErrorCode::kNotFound, "not_found"},
     {ErrorCode::kConflict, "conflict"},
     {ErrorCode::kNoPermission, "no_permission"},
     {ErrorCode::kDamagedStore, "damaged_store"},
     {ErrorCode::kDamagedIndex, "damaged_index"},
     {ErrorCode::kBusy, "busy"},
     {ErrorCode::kInternal, "internal"}}};

// How a verb ends.
enum class ExitCode { kAnswered = 0, kNothingFound = 1, kError = 2 };

// Every error ends with kError: "nothing found" is an answer, an error is not.
[[nodiscard]] ExitCode exit_code(ErrorCode code);

// 400, 413, 404 or 409 for what the caller can mend; 500 or 503 for what this machine must mend,
// a refusing file system among them; 503 means that trying again may help.
[[nodiscard]] int http_status(ErrorCode code);

// "Not Found" of 404 (RFC 9110 section 15); "Error" of a status unknown here.
[[nodiscard]] std::string status_phrase(int status);

// One line. The second form overrides the status, as a failed If-Match does.
[[nodiscard]] std::string problem_json(const Error& error);
[[nodiscard]] std::string problem_json(const Error& error, int status);

}  // namespace shoplore
