// Finding vocabulary entries by what somebody remembers of them: an id, a name, a phrase, the
// beginnings of their words, or a word with a letter wrong.
//
// For people who look for a word, on the command line or the page; notes are read by the
// recogniser, which knows negation and clauses (recogniser.hpp). Looks through all entries: a
// few milliseconds, no index.
// Matches point into the vocabulary and live as long as it does. Pure functions, any thread; any
// text, nothing fails.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/vocabulary.hpp"

namespace shoplore {

// How an entry was found, best first.
enum class MatchedBy { kWholePhrase, kWordStarts, kOneEdit };
template <>
inline constexpr EnumTable<MatchedBy, 3> kEnumNames<MatchedBy>{
    {{MatchedBy::kWholePhrase, "whole_phrase"},
     {MatchedBy::kWordStarts, "word_starts"},
     {MatchedBy::kOneEdit, "one_edit"}}};

enum class RetiredEntries { kLeftOut, kIncluded };

struct VocabularySearch {
  std::string words = {};              // empty: every entry
  std::optional<EntryKind> kind = {};  // only this kind
  RetiredEntries retired = RetiredEntries::kLeftOut;
  std::size_t limit = 50;  // matches handed back at most
};

struct VocabularyMatch {
  const Entry* entry = nullptr;
  std::string phrase;  // the name, phrase or id that matched best
  MatchedBy by = MatchedBy::kWholePhrase;
};

struct VocabularyMatches {
  std::vector<VocabularyMatch> matches;  // best first, each entry once
  std::size_t found = 0;                 // without the limit
};

// An entry matches by one of its texts (name, phrase, or id with its underscores as spaces):
// - whole phrase: the same words in order, stems compared;
// - word starts: every word searched for begins a word of the text;
// - one edit: as word starts, but a word of four letters or more may be one edit off a whole word;
//   only when no entry matches in a better way, for "coil" is one edit from "oil".
// Among equals the text with fewer words comes first, then a name before a phrase, then in the
// order of kinds and ids. An alias is found under its own id.
[[nodiscard]] VocabularyMatches vocabulary_search(const Vocabulary& vocabulary,
                                                  const VocabularySearch& search);

// Up to three ids of the kind that may have been meant by an unknown one, nearest first; retired
// ones are left out.
[[nodiscard]] std::vector<std::string> near_ids(const Vocabulary& vocabulary, EntryKind kind,
                                                std::string_view id);

}  // namespace shoplore
