// BM25 with Xapian's defaults (k1 = 1, k2 = 0, k3 = 1, b = 0.5, min_normlen = 0.5) over the
// unprefixed stems, restricted by the filter; ties break by case id.
#include "query/similar_cases.hpp"

#include <fmt/format.h>
#include <xapian.h>

#include <algorithm>
#include <charconv>
#include <set>

#include "indexer/case_keys.hpp"
#include "indexer/quantities.hpp"
#include "indexer/text.hpp"
#include "query/filter_query.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kSnippetBytes = 160;

// "no" and a lone number stand in every other note: they would only stir the order.
bool finds_something(const std::string& word) {
  const bool number = word.find_first_not_of("0123456789") == word.npos;
  return word != "no" && word != "not" && (!number || word.size() > 3);
}

// The words typed, and the names the records use for what was recognised in them. "No whistle"
// is left out: searched for, it would bring the cases that whistle.
std::set<std::string> query_words(const SearchQuestion& question, const Vocabulary& vocabulary,
                                  const Recogniser& recogniser) {
  std::set<std::string> words;
  const auto add = [&](std::string_view text) {
    for (std::string& word : index_words(text)) {
      if (finds_something(word)) words.insert(std::move(word));
    }
  };
  const Recognised recognised = recogniser.recognise(question.text);
  std::string text = question.text;
  for (const RecognisedItem& item : recognised.items) {
    if (item.state == Presence::kPresent) continue;
    std::fill_n(text.begin() + static_cast<std::ptrdiff_t>(item.span.begin),
                item.span.end - item.span.begin, ' ');
  }
  add(text);
  Case record;
  add_recognised(record, recognised);
  for (const Symptom& symptom : record.symptoms) {
    if (symptom.state == Presence::kPresent) {
      add(vocabulary.display_name(EntryKind::kSymptom, symptom.id));
    }
  }
  for (const Code& code : record.codes) add(code.code);
  return words;
}

Xapian::Query query_of(const SearchQuestion& question, const std::set<std::string>& words) {
  std::vector<Xapian::Query> parts;
  for (const std::string& word : words) parts.emplace_back(word);
  const Xapian::Query any(Xapian::Query::OP_OR, parts.begin(), parts.end());
  return Xapian::Query(Xapian::Query::OP_FILTER, any, filter_query(question.filter));
}

// FNV-1a over everything that decides the order: a cursor belongs to one question.
std::string question_mark(const SearchQuestion& question, const Xapian::Query& query) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : question.text + query.get_description()) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  }
  return fmt::format("{:016x}", hash);
}

// "<revision>-<offset>-<question>"
Result<std::uint32_t> offset_of(const std::string& cursor, Revision revision,
                                const std::string& mark) {
  if (cursor.empty()) return 0;
  std::int64_t at = 0;
  std::uint32_t offset = 0;
  const char* const end = cursor.data() + cursor.size();
  const auto first = std::from_chars(cursor.data(), end, at);
  const bool dash = first.ec == std::errc() && first.ptr != end && *first.ptr == '-';
  const auto second = dash ? std::from_chars(first.ptr + 1, end, offset) : first;
  const bool whole = dash && second.ec == std::errc() && std::string(second.ptr, end) == "-" + mark;
  if (!whole) {
    return fail(ErrorCode::kInvalidInput, "cursor", "is not one of this question's; begin again");
  }
  if (at != revision.value) {
    return fail(ErrorCode::kConflict, "cursor", "the records have changed meanwhile; begin again");
  }
  return offset;
}

bool begins_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

bool is_space(char c) {
  return c == ' ' || c == '\n';
}

// About kSnippetBytes from `begin`, widened or cut to whole words; to whole characters where a
// text has no spaces.
Span whole_words(const std::string& text, std::size_t begin) {
  constexpr std::size_t kLongestWord = 30;
  Span span{begin, std::min(begin + kSnippetBytes, text.size())};
  const std::size_t first = begin > kLongestWord ? begin - kLongestWord : 0;
  while (span.begin > first && !is_space(text[span.begin - 1])) --span.begin;
  while (span.begin > 0 && !begins_character(text[span.begin])) --span.begin;
  if (span.end == text.size()) return span;
  std::size_t space = span.end;
  while (space > span.begin && !is_space(text[space])) --space;
  if (space + kLongestWord > span.end) {
    span.end = space;
  } else {
    while (!begins_character(text[span.end])) --span.end;
  }
  return span;
}

// The stretch of the text with the most matching words.
Snippet snippet_of(const std::string& text, const std::set<std::string>& wanted) {
  std::vector<Word> hits;
  for (Word& word : words_of(text)) {
    if (!is_stop_word(word.text) && wanted.contains(stem(word.text)))
      hits.push_back(std::move(word));
  }
  std::size_t begin = 0, most = 0;
  for (std::size_t i = 0; i < hits.size(); ++i) {
    std::size_t n = 0;
    while (i + n < hits.size() && hits[i + n].end <= hits[i].begin + kSnippetBytes - 20) ++n;
    if (n > most) most = n, begin = hits[i].begin > 20 ? hits[i].begin - 20 : 0;
  }
  const Span cut = whole_words(text, begin);
  Snippet snippet{text.substr(cut.begin, cut.end - cut.begin), {}};
  std::replace(snippet.text.begin(), snippet.text.end(), '\n', ' ');
  for (const Word& hit : hits) {
    if (hit.begin >= cut.begin && hit.end <= cut.end)
      snippet.marked.push_back({hit.begin - cut.begin, hit.end - cut.begin});
  }
  return snippet;
}

SimilarCase similar_case(const StoredCase& stored, double score,
                         const std::set<std::string>& wanted, const Vocabulary& vocabulary) {
  const Case& record = stored.record;
  SimilarCase similar;
  similar.id = stored.id;
  similar.ref = record.ref;
  similar.opened = record.opened;
  similar.vehicle = vehicle_text(record.vehicle);
  similar.score = score;
  if (record.cause) {
    similar.cause = vocabulary.display_name(EntryKind::kComponent, record.cause->component) + ", " +
                    vocabulary.display_name(EntryKind::kFailure, record.cause->failure);
  }
  similar.fixes = fix_keys(record, vocabulary);
  if (record.outcome) similar.outcome = record.outcome->status;
  std::string text = record.complaint;
  if (!record.notes.empty()) text += (text.empty() ? "" : " / ") + record.notes;
  similar.snippet = snippet_of(text, wanted);
  return similar;
}

}  // namespace

std::string vehicle_text(const Vehicle& vehicle) {
  std::string text;
  const auto add = [&](const std::string& part) {
    if (!part.empty()) text += (text.empty() ? "" : " ") + part;
  };
  if (vehicle.model_year) add(std::to_string(*vehicle.model_year));
  add(vehicle.make);
  add(vehicle.model);
  add(vehicle.engine_family);
  if (vehicle.mileage_km) text += ", " + thousands(vehicle.mileage_km->value) + " km";
  return text;
}

Result<SearchPage> find_similar(const SearchQuestion& question, const Snapshot& snapshot,
                                const Store& store, const Vocabulary& vocabulary,
                                const Recogniser& recogniser) {
  if (question.page_size < 1 || question.page_size > 100) {
    return fail(ErrorCode::kInvalidInput, "page_size", "expected 1 to 100");
  }
  if (question.text.size() > kMaxSearchBytes) {
    return fail(
        ErrorCode::kInvalidInput, "question",
        fmt::format("{} bytes long, at most {} are taken", question.text.size(), kMaxSearchBytes));
  }
  if (!is_utf8(question.text)) {
    return fail(ErrorCode::kInvalidInput, "question", "is not valid UTF-8");
  }
  const auto words = query_words(question, vocabulary, recogniser);
  const Xapian::Query query = query_of(question, words);
  const std::string mark = question_mark(question, query);
  const auto offset = offset_of(question.cursor, snapshot.revision(), mark);
  if (!offset) return fail(offset.error());

  SearchPage page;
  page.revision = snapshot.revision();
  auto searched = snapshot.with_index([&](Xapian::Database& index) -> Result<void> {
    Xapian::Enquire enquire(index);
    enquire.set_query(query);
    enquire.set_docid_order(Xapian::Enquire::ASCENDING);
    const Xapian::MSet found = enquire.get_mset(*offset, question.page_size, index.get_doccount());
    page.matches = found.get_matches_estimated();
    for (auto it = found.begin(); it != found.end(); ++it) {
      const auto stored = store.read(CaseId{*it}, snapshot.revision());
      if (!stored) return fail(stored.error());
      page.cases.push_back(similar_case(*stored, it.get_weight(), words, vocabulary));
    }
    return {};
  });
  if (!searched) return fail(searched.error());
  const auto next = *offset + static_cast<std::uint32_t>(page.cases.size());
  if (next < page.matches && !page.cases.empty()) {
    page.next_cursor = fmt::format("{}-{}-{}", snapshot.revision().value, next, mark);
  }
  return page;
}

}  // namespace shoplore
