// RFC 9457 section 3.1: type, title, status and detail; about:blank means that title is the
// status's phrase (section 4.2.1). Phrases: RFC 9110 section 15.
#include "api/wire/problem_json.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace shoplore {
namespace {

using nlohmann::ordered_json;

struct CodeRow {
  ErrorCode code;
  int status;
  const char* name;
};

const CodeRow kCodes[] = {
    {ErrorCode::kInvalidInput, 400, "invalid_input"},
    {ErrorCode::kTooLarge, 413, "too_large"},
    {ErrorCode::kNotFound, 404, "not_found"},
    {ErrorCode::kConflict, 409, "conflict"},
    {ErrorCode::kNoPermission, 500, "no_permission"},
    {ErrorCode::kDamagedStore, 500, "damaged_store"},
    {ErrorCode::kDamagedIndex, 503, "damaged_index"},
    {ErrorCode::kBusy, 503, "busy"},
    {ErrorCode::kInternal, 500, "internal"},
};

TEST(ProblemJson, EveryErrorHasItsStatusAndExitCodeTwo) {
  ASSERT_EQ(std::size(kCodes), kEnumNames<ErrorCode>.size());
  for (const CodeRow& row : kCodes) {
    SCOPED_TRACE(row.name);
    EXPECT_EQ(http_status(row.code), row.status);
    EXPECT_EQ(name_of(row.code), row.name);
    EXPECT_EQ(static_cast<int>(exit_code(row.code)), 2);
  }
}

TEST(ProblemJson, ExitCodesAreZeroOneTwo) {
  EXPECT_EQ(static_cast<int>(ExitCode::kAnswered), 0);
  EXPECT_EQ(static_cast<int>(ExitCode::kNothingFound), 1);
  EXPECT_EQ(static_cast<int>(ExitCode::kError), 2);
}

TEST(ProblemJson, NamesEveryPlace) {
  const Error error{ErrorCode::kInvalidInput,
                    "/opened",
                    "the case is not as expected",
                    {{"/opened", "2026-02-30 is not a day"}, {"/colour", "is not a known field"}}};
  EXPECT_EQ(ordered_json::parse(problem_json(error)), ordered_json::parse(R"({
      "type":"about:blank","title":"Bad Request","status":400,"code":"invalid_input",
      "detail":"/opened: the case is not as expected","place":"/opened",
      "problems":[{"place":"/opened","expected":"2026-02-30 is not a day"},
                  {"place":"/colour","expected":"is not a known field"}]})"));
}

TEST(ProblemJson, LeavesOutAPlaceThatIsNotThere) {
  const Error error{ErrorCode::kBusy, "", "try again", {}};
  EXPECT_EQ(ordered_json::parse(problem_json(error)), ordered_json::parse(R"({
      "type":"about:blank","title":"Service Unavailable","status":503,"code":"busy",
      "detail":"try again","problems":[]})"));
}

TEST(ProblemJson, TakesAnotherStatusWithItsPhrase) {
  const Error error{ErrorCode::kConflict, "case-7", "is at revision 12 now", {}};
  const auto json = ordered_json::parse(problem_json(error, 412));
  EXPECT_EQ(json["status"], 412);
  EXPECT_EQ(json["title"], "Precondition Failed");
}

}  // namespace
}  // namespace shoplore
