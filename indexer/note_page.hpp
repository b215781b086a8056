// One note while it is read: its tokens, and which of them a reader has claimed.
//
// Readers (number_readers.hpp, vehicle_reader.hpp, repair_reader.hpp, finding_reader.hpp) take
// turns on one page, the surest first, and claim what they understood; what nobody claimed is left
// over. Does not interpret anything itself.
// Lifetime: refers to the text and the matcher, which must outlive it. One thread at a time.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/carried_phrases.hpp"
#include "indexer/conditioned_phrases.hpp"
#include "indexer/phrase_matcher.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {

// A half-open range of tokens.
struct TokenRange {
  std::size_t first = 0, last = 0;
};

class NotePage {
 public:
  // keep: words that are never respelt.
  NotePage(const PhraseMatcher& matcher, const CarriedPhrases& carried, std::string_view text,
           const std::set<std::string>& keep);

  [[nodiscard]] std::string_view text() const { return text_; }
  [[nodiscard]] std::size_t size() const { return tokens_.size(); }
  [[nodiscard]] const Token& token(std::size_t i) const { return tokens_[i]; }
  [[nodiscard]] const std::string& word(std::size_t i) const { return tokens_[i].text; }
  [[nodiscard]] bool is_claimed(std::size_t i) const { return claimed_[i] != 0; }

  // Whether both are tokens of one clause; false beyond the ends.
  [[nodiscard]] bool same_clause(std::size_t i, std::size_t j) const;
  // The text from the end of one token to the beginning of a later one.
  [[nodiscard]] std::string_view between(std::size_t i, std::size_t later) const {
    return text().substr(tokens_[i].end, tokens_[later].begin - tokens_[i].end);
  }
  // The tokens that touch these bytes.
  [[nodiscard]] TokenRange tokens_at(Span span) const;
  [[nodiscard]] Span span_of(TokenRange range) const;
  [[nodiscard]] std::vector<PhraseMatch> matches(const std::set<EntryKind>& kinds) const;
  [[nodiscard]] std::vector<PhraseMatch> loose_matches(const std::set<EntryKind>& kinds) const;
  [[nodiscard]] std::vector<PhraseMatch> carried_matches(const std::set<EntryKind>& kinds) const;
  // Of symptoms named together with one of these conditions (conditioned_phrases.hpp).
  [[nodiscard]] std::vector<PhraseMatch> conditioned_matches(
      const ConditionedPhrases& phrases, const std::vector<PhraseMatch>& conditions) const {
    return phrases.matches(tokens_, conditions);
  }

  void claim(std::size_t i) { claimed_[i] = 1; }
  void claim(TokenRange range);

  // The text with everything claimed blotted out, of the same length.
  [[nodiscard]] std::string unread_text() const;

  // Claims the item's tokens and keeps it, unless one of them is claimed already.
  void take(RecognisedItem item);
  // Keeps an item whose tokens are claimed.
  void keep(RecognisedItem item) { items_.push_back(std::move(item)); }
  [[nodiscard]] const std::vector<RecognisedItem>& items() const { return items_; }
  // The reading at that place of items() is in this unit. Requires: it has a number.
  void name_unit(std::size_t reading, std::string_view unit);
  // Takes items back; their words stay claimed.
  void drop(const std::function<bool(const RecognisedItem&)>& which) {
    std::erase_if(items_, which);
  }

  // Items in text order, and the words nobody claimed. The page is empty afterwards.
  [[nodiscard]] Recognised finish();

 private:
  [[nodiscard]] std::vector<Span> leftover() const;

  const PhraseMatcher& matcher_;
  const CarriedPhrases& carried_;
  std::string_view text_;
  std::vector<Token> tokens_;
  std::vector<char> claimed_;  // by token; not vector<bool>, which hands out proxies
  std::vector<RecognisedItem> items_;
};

[[nodiscard]] RecognisedItem recognised_item(ItemKind kind, std::string id, Span span);

}  // namespace shoplore
