#include "indexer/carried_phrases.hpp"

#include <algorithm>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kMostStems = 3;

std::optional<std::size_t> nearest_before(const std::vector<Token>& tokens, std::string_view stem,
                                          std::size_t at) {
  for (std::size_t i = at; i > 0; --i) {
    if (tokens[at].clause - tokens[i - 1].clause > CarriedPhrases::kClausesBack) break;
    if (tokens[i - 1].stem == stem) return i - 1;
  }
  return std::nullopt;
}

bool is_vague_thing(std::string_view word) {
  static const std::unordered_set<std::string_view> vague{
      "pressure", "temperature", "level",    "position", "control", "unit", "air",
      "high",     "low",         "position", "speed",    "angle",   "rest", "of",
      "and",      "main",        "big",      "end",      "relief",  "stem", "external",
      "interior", "ambient",     "the",      "actuator", "running", "volt", "metal",
      "one",      "reversing",   "charging", "charge",   "key"};
  return vague.contains(word);
}

// Words that say too little without their thing beside them.
bool tells_alone(const std::vector<std::string_view>& stems) {
  static const std::unordered_set<std::string_view> vague{
      "on",    "leak",  "nois",  "smoke", "play",   "level", "long",   "hard",  "flat", "floor",
      "charg", "test",  "oil",   "two",   "turn",   "work",  "start",  "run",   "stay", "come",
      "go",    "lose",  "drop",  "hot",   "cold",   "warm",  "stop",   "light", "lamp", "tight",
      "pull",  "fault", "cabin", "key",   "gone",   "water", "voltag", "look",  "live", "pour",
      "warn",  "minut", "ten",   "read",  "measur", "open"};
  return std::any_of(stems.begin(), stems.end(), [](std::string_view stem) {
    return !vague.contains(stem) && !is_particle(stem) && !says_pass(stem) && !says_fail(stem) &&
           !is_stop_word(stem);
  });
}

}  // namespace

CarriedPhrases::CarriedPhrases(const Vocabulary& vocabulary, const PhraseMatcher& matcher) {
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kComponent)) {
    const std::vector<Word> words = words_of(entry.name);
    if (!words.empty()) things_.insert(comparable(words.back().text));
    for (const Word& word : words) {
      if (!is_vague_thing(word.text)) things_.insert(comparable(word.text));
    }
  }
  for (const char* group : {"brake", "engine", "exhaust", "steering", "pedal", "gear", "heater",
                            "wheel", "fuel", "oil", "lamp", "abs"}) {
    things_.insert(comparable(group));
  }
  for (const PhraseMatcher::Phrase& phrase : matcher.phrases()) add(phrase);
}

void CarriedPhrases::add(const PhraseMatcher::Phrase& phrase) {
  const bool may = phrase.kind == EntryKind::kSymptom || phrase.kind == EntryKind::kCheck;
  if (!may || phrase.stems.size() < 2 || phrase.stems.size() > kMostStems) return;
  if (phrase.state == Presence::kAbsent) return;
  for (const std::string& stem : phrase.stems) {
    if (is_negation(stem)) return;
  }
  for (std::size_t thing = 0; thing < phrase.stems.size(); ++thing) {
    if (!things_.contains(phrase.stems[thing])) continue;
    Rest rest{phrase.kind, &phrase.id, phrase.stems[thing], {}, phrase.state};
    for (std::size_t i = 0; i < phrase.stems.size(); ++i) {
      if (i != thing) rest.stems.push_back(phrase.stems[i]);
    }
    const bool says_thing_only =
        std::all_of(rest.stems.begin(), rest.stems.end(),
                    [&](std::string_view stem) { return things_.contains(std::string(stem)); });
    if (says_thing_only || !tells_alone(rest.stems)) continue;
    by_first_[rest.stems.front()].push_back(std::move(rest));
  }
}

CarriedPhrases::Found CarriedPhrases::best_at(const std::vector<Token>& tokens,
                                              const std::vector<char>& claimed,
                                              const std::set<EntryKind>& kinds,
                                              std::size_t at) const {
  Found best;
  const auto rests = by_first_.find(tokens[at].stem);
  if (rests == by_first_.end()) return best;
  for (const Rest& rest : rests->second) {
    if (!kinds.contains(rest.kind)) continue;
    std::size_t last = at + 1;
    bool fits = true;
    for (std::size_t k = 1; k < rest.stems.size() && fits; ++k) {
      while (last < tokens.size() && claimed[last] == 0 &&
             tokens[last].clause == tokens[at].clause && tokens[last].stem != rest.stems[k] &&
             says_nothing(tokens[last].text)) {
        ++last;
      }
      fits = last < tokens.size() && claimed[last] == 0 &&
             tokens[last].clause == tokens[at].clause && tokens[last].stem == rest.stems[k];
      ++last;
    }
    if (!fits) continue;
    const auto thing = nearest_before(tokens, rest.thing, at);
    if (!thing) continue;
    const std::size_t words = rest.stems.size();
    const std::size_t best_words = best.rest == nullptr ? 0 : best.rest->stems.size();
    if (best.rest != nullptr && *best.rest->id == *rest.id && best.rest->kind == rest.kind)
      continue;
    const bool same = best.rest != nullptr && words == best_words && *thing == best.thing;
    if (same) best.is_tied = true;
    // "clutch pedal heavy, judders": the first word of the pair tells which pedal.
    const bool is_nearer = *thing > best.thing && *thing != best.thing + 1;
    const bool is_which = *thing + 1 == best.thing;
    if (words > best_words ||
        (words == best_words && best.rest != nullptr && (is_nearer || is_which))) {
      best = {&rest, at, last, *thing, false};
    }
  }
  return best;
}

std::string CarriedPhrases::sense_of(const std::vector<Token>& tokens,
                                     const PhraseMatch& match) const {
  const auto rests = by_first_.find(tokens[match.first].stem);
  if (rests == by_first_.end()) return "";
  std::vector<std::string_view> stems;
  for (std::size_t i = match.first; i < match.last; ++i) {
    if (!says_nothing(tokens[i].text)) stems.push_back(tokens[i].stem);
  }
  if (match.kind == EntryKind::kSymptom) {
    for (const std::string_view stem : stems) {
      if (things_.contains(std::string(stem))) return "";
    }
  }
  const Rest* best = nullptr;
  std::size_t nearest = 0;
  bool is_tied = false;
  for (const Rest& rest : rests->second) {
    if (rest.kind != match.kind || rest.stems != stems) continue;
    const auto thing = nearest_before(tokens, rest.thing, match.first);
    if (!thing) continue;
    if (best != nullptr && *thing == nearest && *rest.id != *best->id) is_tied = true;
    const bool is_which = best != nullptr && *thing + 1 == nearest;
    const bool is_nearer = best == nullptr || (*thing > nearest && *thing != nearest + 1);
    if (!is_nearer && !is_which) continue;
    best = &rest;
    nearest = *thing;
    is_tied = false;
  }
  return best == nullptr || is_tied || *best->id == match.id ? "" : *best->id;
}

std::vector<PhraseMatch> CarriedPhrases::matches(const std::vector<Token>& tokens,
                                                 const std::vector<char>& claimed,
                                                 const std::set<EntryKind>& kinds) const {
  std::vector<PhraseMatch> found;
  for (std::size_t at = 0; at < tokens.size(); ++at) {
    if (claimed[at] != 0) continue;
    const Found best = best_at(tokens, claimed, kinds, at);
    if (best.rest == nullptr || best.is_tied) continue;
    found.push_back({best.rest->kind, *best.rest->id, best.first, best.last, best.rest->state});
    at = best.last - 1;
  }
  return found;
}

}  // namespace shoplore
