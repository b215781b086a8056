#include "indexer/note_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/text.hpp"

namespace shoplore {

NotePage::NotePage(const PhraseMatcher& matcher, const CarriedPhrases& carried,
                   std::string_view text, const std::set<std::string>& keep)
    : matcher_(matcher),
      carried_(carried),
      text_(text),
      tokens_(matcher.tokens_of(text, keep)),
      claimed_(tokens_.size(), 0) {}

bool NotePage::same_clause(std::size_t i, std::size_t j) const {
  return i < size() && j < size() && tokens_[i].clause == tokens_[j].clause;
}

TokenRange NotePage::tokens_at(Span span) const {
  const auto first = std::partition_point(tokens_.begin(), tokens_.end(),
                                          [&](const Token& t) { return t.end <= span.begin; });
  const auto last = std::partition_point(first, tokens_.end(),
                                         [&](const Token& t) { return t.begin < span.end; });
  return {static_cast<std::size_t>(first - tokens_.begin()),
          static_cast<std::size_t>(last - tokens_.begin())};
}

Span NotePage::span_of(TokenRange range) const {
  return {tokens_[range.first].begin, tokens_[range.last - 1].end};
}

std::vector<PhraseMatch> NotePage::matches(const std::set<EntryKind>& kinds) const {
  auto found = matcher_.matches(tokens_, claimed_, kinds);
  for (PhraseMatch& match : found) {
    if (match.kind != EntryKind::kSymptom && match.kind != EntryKind::kCheck) continue;
    if (std::string sense = carried_.sense_of(tokens_, match); !sense.empty()) {
      match.id = std::move(sense);
    }
  }
  return found;
}

std::vector<PhraseMatch> NotePage::loose_matches(const std::set<EntryKind>& kinds) const {
  return matcher_.loose_matches(tokens_, claimed_, kinds);
}

std::vector<PhraseMatch> NotePage::carried_matches(const std::set<EntryKind>& kinds) const {
  return carried_.matches(tokens_, claimed_, kinds);
}

void NotePage::claim(TokenRange range) {
  for (std::size_t i = range.first; i < range.last; ++i) claimed_[i] = 1;
}

void NotePage::take(RecognisedItem item) {
  const TokenRange range = tokens_at(item.span);
  for (std::size_t i = range.first; i < range.last; ++i) {
    if (is_claimed(i)) return;
  }
  claim(range);
  keep(std::move(item));
}

std::string NotePage::unread_text() const {
  constexpr char kBlot = '|';  // joins no words and no digits
  std::string unread(text_);
  for (std::size_t i = 0; i < size(); ++i) {
    if (!is_claimed(i)) continue;
    for (std::size_t k = tokens_[i].begin; k < tokens_[i].end; ++k) unread[k] = kBlot;
  }
  return unread;
}

std::vector<Span> NotePage::leftover() const {
  std::vector<Span> spans;
  for (std::size_t i = 0; i < size();) {
    // The words of one shorthand are one word of the note: understood when any of them is.
    std::size_t end = i;
    bool understood = false, says_something = false;
    for (; end < size() && tokens_[end].begin == tokens_[i].begin; ++end) {
      understood = understood || is_claimed(end);
      says_something = says_something || !is_stop_word(tokens_[end].text);
    }
    const Span span = span_of({i, end});
    i = end;
    if (understood || !says_something) continue;
    // "12.6" is one thing that was not understood.
    const bool joined = !spans.empty() && spans.back().end + 1 == span.begin &&
                        (text_[spans.back().end] == '.' || text_[spans.back().end] == ',');
    if (joined) {
      spans.back().end = span.end;
    } else {
      spans.push_back(span);
    }
  }
  return spans;
}

void NotePage::name_unit(std::size_t reading, std::string_view unit) {
  RecognisedItem& item = items_[reading];
  item.unit = unit;
  item.id = fmt::format("{:.10g} {}", *item.reading->number, unit);
}

Recognised NotePage::finish() {
  Recognised out;
  std::stable_sort(items_.begin(), items_.end(),
                   [](const auto& a, const auto& b) { return a.span.begin < b.span.begin; });
  out.leftover = leftover();
  out.items = std::move(items_);
  return out;
}

RecognisedItem recognised_item(ItemKind kind, std::string id, Span span) {
  RecognisedItem item;
  item.kind = kind;
  item.id = std::move(id);
  item.span = span;
  return item;
}

}  // namespace shoplore
