#include <fmt/format.h>

#include <algorithm>

#include "api/http/page_cursor.hpp"
#include "api/http/preconditions.hpp"
#include "api/http/routes.hpp"
#include "api/wire/vocabulary_json.hpp"
#include "indexer/vocabulary_search.hpp"

namespace shoplore {

namespace {

constexpr std::int64_t kMaxPage = 200;
constexpr std::int64_t kDefaultPage = 50;
constexpr std::size_t kWholeVocabulary = 1'000'000;

}  // namespace

Reply get_vocabulary(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  const auto kinds = query.names<EntryKind>("kind");
  const auto limit =
      static_cast<std::size_t>(query.whole("limit", 1, kMaxPage).value_or(kDefaultPage));
  if (const auto read = query.finish(); !read) return refusal(read.error());
  if (kinds.size() > 1) return refusal({ErrorCode::kInvalidInput, "?kind", "expected one kind"});
  const Vocabulary& vocabulary = records.vocabulary();
  // Entries stand still for as long as the vocabulary is this one.
  const std::string question =
      request.path + "?" + request.query.question() + vocabulary.fingerprint();
  const auto start = cursor_position(query.text("cursor"), question);
  if (!start) return refusal(start.error());

  const auto kind = kinds.empty() ? std::nullopt : std::optional<EntryKind>(*kinds.begin());
  VocabularySearch search{std::string(query.text("q")), kind};
  search.retired = RetiredEntries::kIncluded;
  search.limit = kWholeVocabulary;
  std::vector<const Entry*> found;
  for (const VocabularyMatch& match : vocabulary_search(vocabulary, search).matches) {
    found.push_back(match.entry);
  }
  const std::size_t first = std::min(static_cast<std::size_t>(*start), found.size());
  const std::size_t count = std::min(limit, found.size() - first);
  const std::size_t next = first + count;
  const std::string cursor =
      next < found.size() ? page_cursor(static_cast<std::int64_t>(next), question) : std::string();
  return {200, "application/json",
          vocabulary_page_json({found.data() + first, count}, found.size(), cursor)};
}

Reply get_vocabulary_entry(LiveRecords& records, const Incoming& request) {
  const std::string& id = request.parts[1];
  const auto kind = enum_from_name<EntryKind>(request.parts[0]);
  const Vocabulary& vocabulary = records.vocabulary();
  const Entry* entry = kind ? vocabulary.find(*kind, id) : nullptr;
  if (entry == nullptr) {
    return refusal({ErrorCode::kNotFound, request.path, "there is no such entry"});
  }
  return tagged_reply(request, "\"" + vocabulary.fingerprint() + "\"", entry_json(*entry));
}

}  // namespace shoplore
