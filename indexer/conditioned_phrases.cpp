#include "indexer/conditioned_phrases.hpp"

#include <algorithm>
#include <optional>
#include <set>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestGap = 2;  // words that say nothing between the two

// Words that begin too many things to tell one with a condition alone.
bool is_too_little(const std::vector<std::string>& stems) {
  static const std::set<std::string, std::less<>> vague{
      "run", "work", "start", "go", "on", "off", "only", "stop", "turn", "come", "stay", "drive"};
  return stems.size() == 1 &&
         (vague.contains(stems[0]) || is_negation(stems[0]) || is_particle(stems[0]));
}

std::optional<PhraseMatch> ends_at(const std::vector<std::string>& stems,
                                   const std::vector<Token>& tokens, std::size_t end) {
  std::size_t i = end;
  for (std::size_t k = stems.size(); k > 0; --k) {
    const auto fits = [&] {
      return i > 0 && tokens[i - 1].clause == tokens[end].clause &&
             tokens[i - 1].stem == stems[k - 1];
    };
    for (std::size_t gap = 0; gap < kLongestGap && !fits(); ++gap) {
      if (i == 0 || tokens[i - 1].clause != tokens[end].clause) return std::nullopt;
      const std::string& word = tokens[i - 1].text;
      if (!says_nothing(word) && !(k == stems.size() && is_filler(word))) return std::nullopt;
      --i;
    }
    if (!fits()) return std::nullopt;
    if (k == stems.size()) end = i;
    --i;
  }
  return PhraseMatch{EntryKind::kSymptom, "", i, end};
}

}  // namespace

ConditionedPhrases::ConditionedPhrases(const PhraseMatcher& matcher) {
  std::map<std::vector<std::string>, std::string> conditions;
  for (const PhraseMatcher::Phrase& phrase : matcher.phrases()) {
    if (phrase.kind == EntryKind::kCondition) conditions.emplace(phrase.stems, phrase.id);
  }
  std::map<std::pair<std::string, std::vector<std::string>>, Beginning> known;
  for (const PhraseMatcher::Phrase& phrase : matcher.phrases()) {
    if (phrase.kind != EntryKind::kSymptom || phrase.state == Presence::kAbsent) continue;
    for (std::size_t k = 1; k < phrase.stems.size(); ++k) {
      const std::vector<std::string> end(phrase.stems.begin() + static_cast<std::ptrdiff_t>(k),
                                         phrase.stems.end());
      const auto condition = conditions.find(end);
      if (condition == conditions.end()) continue;
      std::vector<std::string> stems(phrase.stems.begin(),
                                     phrase.stems.begin() + static_cast<std::ptrdiff_t>(k));
      if (is_too_little(stems)) continue;
      const auto [one, is_new] =
          known.try_emplace({condition->second, stems}, Beginning{stems, phrase.id, phrase.state});
      if (!is_new && one->second.id != phrase.id) one->second.id.clear();
      break;
    }
  }
  for (auto& [key, beginning] : known) by_condition_[key.first].push_back(std::move(beginning));
  for (auto& [condition, beginnings] : by_condition_) {
    std::stable_sort(beginnings.begin(), beginnings.end(),
                     [](const auto& a, const auto& b) { return a.stems.size() > b.stems.size(); });
  }
}

std::vector<PhraseMatch> ConditionedPhrases::matches(
    const std::vector<Token>& tokens, const std::vector<PhraseMatch>& conditions) const {
  std::vector<PhraseMatch> found;
  for (const PhraseMatch& condition : conditions) {
    const auto beginnings = by_condition_.find(condition.id);
    if (beginnings == by_condition_.end()) continue;
    for (const Beginning& beginning : beginnings->second) {
      auto match = ends_at(beginning.stems, tokens, condition.first);
      if (!match) continue;
      match->id = beginning.id;
      if (!match->id.empty()) found.push_back(std::move(*match));
      break;
    }
  }
  return found;
}

}  // namespace shoplore
