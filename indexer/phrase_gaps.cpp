#include "indexer/phrase_gaps.hpp"

#include <algorithm>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"

namespace shoplore {

bool may_stand_between(EntryKind kind, std::string_view word) {
  if (kind == EntryKind::kCheck && (says_pass(word) || says_fail(word))) return true;
  // "keeps running on" is no "engine running".
  if (kind == EntryKind::kCondition) return says_nothing(word);
  if (kind == EntryKind::kSymptom && (word == "will" || word == "would")) return true;
  return says_nothing(word) || is_filler(word);
}

bool shares_lamp(const std::vector<Token>& tokens, const std::vector<char>& claimed,
                 std::size_t at) {
  constexpr std::size_t kReach = 4;
  bool joins = false;
  for (std::size_t i = at; i < tokens.size() && i < at + kReach; ++i) {
    if (claimed[i] != 0 || tokens[i].clause != tokens[at].clause) return false;
    if (i == at && tokens[i].text != "and" && tokens[i].text != "or") return false;
    joins = joins || i > at;
    if (tokens[i].stem == "lamp") return joins && i > at + 1;
  }
  return false;
}

bool denies_within(EntryKind kind, const std::vector<Token>& tokens, std::size_t at) {
  if (kind != EntryKind::kSymptom) return false;
  const std::string& word = tokens[at].text;
  const std::string_view next =
      at + 1 < tokens.size() ? std::string_view(tokens[at + 1].text) : std::string_view();
  if (word == "stopped" || word == "ceased") return next.ends_with("ing");
  return word == "not" || word == "never" || word == "neither" ||
         (word == "no" && next == "longer");
}

bool goes_on_past_comma(const PhraseMatcher::Phrase& phrase, std::size_t k,
                        const std::vector<Token>& tokens, std::size_t next, std::size_t clause) {
  return phrase.kind == EntryKind::kSymptom && is_negation(phrase.stems[k]) &&
         !is_negation(phrase.stems[0]) && next < tokens.size() &&
         tokens[next].clause == clause + 1 && tokens[next].after_comma &&
         tokens[next].stem == phrase.stems[k];
}

std::size_t heavy_words(const std::vector<std::string>& stems) {
  const auto is_heavy = [](const std::string& word) {
    return !says_nothing(word) && !is_particle(word) && !is_preposition(word) &&
           !small_number(word) && !says_position(word) && !is_filler(word);
  };
  return static_cast<std::size_t>(std::count_if(stems.begin(), stems.end(), is_heavy));
}

}  // namespace shoplore
