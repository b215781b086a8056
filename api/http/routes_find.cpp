#include "api/http/filter_query.hpp"
#include "api/http/routes.hpp"
#include "api/wire/answer_json.hpp"
#include "indexer/text.hpp"

namespace shoplore {

namespace {

constexpr std::int64_t kMaxPage = 100;
constexpr std::int64_t kDefaultPage = 10;

// Places as this route's caller knows them.
Error as_parameter(Error error) {
  if (error.place == "question") error.place = "?q";
  if (error.place == "cursor") error.place = "?cursor";
  return error;
}

}  // namespace

Reply get_find(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  SearchQuestion question;
  question.text = query.text("q");
  question.filter = filter_of(query);
  question.page_size =
      static_cast<std::uint32_t>(query.whole("limit", 1, kMaxPage).value_or(kDefaultPage));
  question.cursor = query.text("cursor");
  if (const auto read = query.finish(); !read) return refusal(read.error());
  if (const auto checked = check_filter(question.filter); !checked) return refusal(checked.error());
  if (words_of(question.text).empty()) {
    return refusal({ErrorCode::kInvalidInput, "?q", "is missing: a search needs words"});
  }
  const auto page = records.find(question);
  if (!page) return refusal(as_parameter(page.error()));
  return {200, "application/json", search_page_json(*page)};
}

}  // namespace shoplore
