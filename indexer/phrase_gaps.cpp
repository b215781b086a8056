#include "indexer/phrase_gaps.hpp"

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

}  // namespace shoplore
