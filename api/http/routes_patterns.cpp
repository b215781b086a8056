#include <fmt/format.h>

#include "api/http/page_cursor.hpp"
#include "api/http/routes.hpp"
#include "api/wire/patterns_json.hpp"

namespace shoplore {

namespace {

constexpr std::int64_t kMaxPage = 200;
constexpr std::int64_t kDefaultPage = 50;

// Places as this route's caller knows them.
Error as_parameter(Error error) {
  if (error.place == "make") error.place = "?make";
  if (error.place == "engine_family") error.place = "?engine_family";
  if (error.place == "cause") error.place = "?cause";
  return error;
}

}  // namespace

Reply get_patterns(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  const PatternChoice choice{query.text("make"), query.text("engine_family"), query.text("cause")};
  const auto limit =
      static_cast<std::size_t>(query.whole("limit", 1, kMaxPage).value_or(kDefaultPage));
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const auto question_at = [&](Revision revision) {
    // Patterns stand still for as long as the records do.
    return fmt::format("{}?{}#{}", request.path, request.query.question(), revision.value);
  };
  const auto skip = [&](Revision revision) -> Result<std::size_t> {
    const auto position = cursor_position(query.text("cursor"), question_at(revision));
    if (!position) return fail(position.error());
    return static_cast<std::size_t>(*position);
  };
  const auto page = records.patterns(choice, skip, limit);
  if (!page) return refusal(as_parameter(page.error()));
  const std::size_t next = page->skipped + page->shown.size();
  const std::string cursor =
      next < page->list.patterns.size()
          ? page_cursor(static_cast<std::int64_t>(next), question_at(page->revision))
          : std::string();
  return {200, "application/json",
          patterns_json(*page->book, page->list, page->shown, cursor, records.vocabulary())};
}

}  // namespace shoplore
