#include "indexer/phrase_matcher.hpp"

#include <algorithm>

#include "indexer/clause_marks.hpp"
#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/phrase_gaps.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestShorthand = 3;
constexpr std::size_t kLooseGap = 2;    // other words among the words of a loose match
constexpr std::size_t kLongestGap = 2;  // words that say nothing between two words of a phrase

// A word that keeps what stands on its two sides apart.
template <class Phrase>
bool joins_or_denies(const std::string& word, const Phrase& phrase) {
  const bool parts = word == "and" || word == "or" || word == "but" || is_negation(word);
  return parts && std::find(phrase.stems.begin(), phrase.stems.end(), word) == phrase.stems.end();
}

// "check brakes", "service steering" are what a display asks for; "brakes checked" is what was
// done.
bool is_an_order(std::string_view stem) {
  return stem == "check" || stem == "servic";
}

// Whether the word may stand before word k of the phrase; one that denies a symptom from within
// turns the match round.
bool passes_gap(const PhraseMatcher::Phrase& phrase, std::size_t k,
                const std::vector<Token>& tokens, PhraseMatch& match) {
  const std::string& word = tokens[match.last].text;
  // "not at start up" is no "not starting".
  if (k == 1 && is_negation(phrase.stems[0]) && is_preposition(word)) return false;
  if (denies_within(phrase.kind, tokens, match.last) && match.state == phrase.state) {
    const bool was_present = phrase.state == Presence::kPresent;
    match.state = was_present ? Presence::kAbsent : Presence::kPresent;
    return true;
  }
  const bool is_longer = word == "longer" && match.state != phrase.state;
  return is_longer || may_stand_between(phrase.kind, word);
}

bool is_vague(const std::string& stemmed) {
  for (const char* word :
       {"car", "completely", "totally", "absolutely", "stone", "stops", "goes", "cuts", "drops"}) {
    if (stemmed == comparable(word)) return true;
  }
  return false;
}

std::vector<std::string> word_texts(std::string_view text) {
  std::vector<std::string> texts;
  for (const Word& word : words_of(text)) texts.push_back(word.text);
  return texts;
}

}  // namespace

PhraseMatcher::PhraseMatcher(const Vocabulary& vocabulary) {
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kShorthand)) {
    if (!entry.retired.empty()) continue;
    const auto expansion = word_texts(entry.expands_to);
    for (const std::string& phrase : entry.phrases) {
      auto written = word_texts(phrase);
      shorthand_starts_.insert(written.front());
      shorthand_[std::move(written)] = expansion;
    }
    for (const std::string& word : expansion) respelling_.add_word(word);
  }
  for (const EntryKind kind : {EntryKind::kSymptom, EntryKind::kCondition, EntryKind::kCheck,
                               EntryKind::kWorkSign, EntryKind::kComponent, EntryKind::kAction}) {
    for (const auto& [id, entry] : vocabulary.entries(kind)) {
      if (!entry.retired.empty()) continue;
      const std::string target = vocabulary.canonical(kind, id);
      add(kind, target, entry.name);
      for (const std::string& phrase : entry.phrases) add(kind, target, phrase);
      for (const std::string& phrase : entry.contraries) {
        add(kind, target, phrase, Presence::kAbsent);
      }
    }
  }
  index_by_rarest();
  add_contraries();
  add_turned_round();
  for (const Phrase& phrase : phrases_) by_first_stem_[phrase.stems.front()].push_back(&phrase);
  for (auto& [first, phrases] : by_first_stem_) {
    std::stable_sort(phrases.begin(), phrases.end(), [](const Phrase* a, const Phrase* b) {
      return a->stems.size() > b->stems.size();
    });
  }
}

void PhraseMatcher::add(EntryKind kind, const std::string& id, std::string_view text,
                        Presence state) {
  Phrase phrase{kind, id, {}, state, ""};
  const std::vector<Word> words = words_of(text);
  std::vector<std::string> written;
  for (std::size_t i = 0; i < words.size();) {
    const Written part = expanded(text, words, i);
    written.insert(written.end(), part.words.begin(), part.words.end());
    respelling_.add_word(words[i].text);
    i += part.taken;
  }
  phrase.stems = phrase_form(written);
  if (phrase.stems.empty()) return;
  for (const std::string& stemmed : phrase.stems) respelling_.add_stem(stemmed);
  const bool is_exact =
      kind == EntryKind::kCondition || kind == EntryKind::kCheck || kind == EntryKind::kWorkSign;
  if (is_exact && written.size() == 1) phrase.exact = written.front();
  phrases_.push_back(std::move(phrase));
}

// Every phrase under the word of it that fewest phrases hold.
void PhraseMatcher::index_by_rarest() {
  std::unordered_map<std::string_view, std::size_t> uses;
  for (const Phrase& phrase : phrases_) {
    for (const std::string& stemmed : phrase.stems) ++uses[stemmed];
  }
  for (const Phrase& phrase : phrases_) {
    // A negation must stand where the phrase has it.
    const bool denies = std::any_of(phrase.stems.begin(), phrase.stems.end(),
                                    [](const std::string& word) { return is_negation(word); });
    // "steering rack ok" is no "steering ok"; "two of us on the bar" is no "running on two".
    if (denies || phrase.state == Presence::kAbsent || heavy_words(phrase.stems) < 2) continue;
    const auto rarest = std::min_element(
        phrase.stems.begin(), phrase.stems.end(),
        [&](const std::string& a, const std::string& b) { return uses[a] < uses[b]; });
    by_rarest_stem_[*rarest].push_back(&phrase);
  }
}

// "horn ok", "window works" deny "horn dead", "window dead"; "the car is fine" denies nothing.
void PhraseMatcher::add_contraries() {
  const std::string dead = comparable("dead");
  const std::size_t as_written = phrases_.size();
  for (std::size_t i = 0; i < as_written; ++i) {
    const bool is_dead = phrases_[i].kind == EntryKind::kSymptom && phrases_[i].stems.size() >= 2 &&
                         phrases_[i].state == Presence::kPresent &&
                         phrases_[i].stems.back() == dead && !is_vague(phrases_[i].stems.front());
    if (!is_dead) continue;
    for (const char* well : {"ok", "fine", "works", "good", "okay"}) {
      Phrase contrary = phrases_[i];
      contrary.stems.back() = comparable(well);
      contrary.state = Presence::kAbsent;
      phrases_.push_back(std::move(contrary));
    }
  }
}

// "steering heavy" for "heavy steering"; not "fine clutch [fluid]" for "clutch fine". Added after
// every phrase as it is written, which stays the first choice.
void PhraseMatcher::add_turned_round() {
  const auto stays = [](const std::string& word) {
    // "window stopped" is not "stopped the window misting up", "brakes pull" not "pulled the brake
    // disc", "remote fails" not "a fail, remote".
    return is_negation(word) || is_stop_word(word) || small_number(word) || word == "stop" ||
           word == "pull" || word == "fail";
  };
  std::unordered_set<std::string> nouns;
  for (const Phrase& phrase : phrases_) {
    if (phrase.kind == EntryKind::kComponent) nouns.insert(phrase.stems.back());
  }
  const auto is_noun = [&](const std::string& word) { return nouns.contains(word); };
  const std::size_t so_far = phrases_.size();
  for (std::size_t i = 0; i < so_far; ++i) {
    const Phrase& phrase = phrases_[i];
    const bool may_turn = phrase.state == Presence::kPresent &&
                          (phrase.kind == EntryKind::kSymptom ||
                           phrase.kind == EntryKind::kWorkSign || phrase.kind == EntryKind::kCheck);
    if (!may_turn || phrase.stems.size() != 2) continue;
    if (stays(phrase.stems[0]) || stays(phrase.stems[1])) continue;
    // "sensor battery" is no "battery sensor".
    if (is_noun(phrase.stems[0]) && is_noun(phrase.stems[1])) continue;
    if (is_particle(phrase.stems[1])) continue;  // "bottoms out" is not "out at the bottom"
    // "low side" is where; "left side low" is how it is.
    if (phrase.kind == EntryKind::kCheck &&
        (phrase.stems[0] == "low" || phrase.stems[0] == "high")) {
      continue;
    }
    phrases_.push_back(
        {phrase.kind, phrase.id, {phrase.stems[1], phrase.stems[0]}, phrase.state, ""});
  }
}

PhraseMatcher::Written PhraseMatcher::expanded(std::string_view text,
                                               const std::vector<Word>& words,
                                               std::size_t at) const {
  const bool may_begin =
      shorthand_starts_.contains(words[at].text) || words[at].text.ends_with("'d");
  for (std::size_t n = may_begin ? std::min(kLongestShorthand, words.size() - at) : 0; n > 0; --n) {
    if (!written_together(text, words[at], words[at + n - 1])) continue;
    std::vector<std::string> key;
    for (std::size_t k = 0; k < n; ++k) key.push_back(words[at + k].text);
    auto found = shorthand_.find(key);
    // "R&R'd" is "R&R" in the past.
    if (found == shorthand_.end() && key.back().ends_with("'d")) {
      key.back().resize(key.back().size() - 2);
      found = shorthand_.find(key);
    }
    if (found != shorthand_.end()) return {found->second, n};
  }
  return {{words[at].text}, 1};
}

std::vector<Token> PhraseMatcher::tokens_of(std::string_view text,
                                            const std::set<std::string>& keep) const {
  const std::vector<Word> words = words_of(text);
  std::vector<Token> tokens;
  // Spelling and stem by word: reports say the same words again and again.
  std::unordered_map<std::string, std::vector<std::pair<std::string, std::string>>> seen;
  std::size_t clause = 0;
  for (std::size_t i = 0; i < words.size();) {
    const bool is_parted = i > 0 && ends_clause(text, words[i - 1], words[i]);
    if (is_parted) ++clause;
    const bool after_comma =
        is_parted && text.substr(words[i - 1].end, words[i].begin - words[i - 1].end) == ", ";
    if (auto sign = i > 0 ? sign_between(text, words[i - 1], words[i]) : std::nullopt) {
      tokens.push_back({sign->word, sign->word, sign->at, sign->at + 1, clause, false});
    }
    Written written = expanded(text, words, i);
    for (const std::string& word : written.words) {
      const auto [known, is_new] = seen.try_emplace(word);
      if (is_new) {
        for (const std::string& plain :
             written_out(keep.contains(word) ? word : respelling_.respelt(word))) {
          known->second.emplace_back(plain, comparable(plain));
        }
      }
      for (const auto& [plain, stemmed] : known->second) {
        tokens.push_back({plain, stemmed, words[i].begin, words[i + written.taken - 1].end, clause,
                          after_comma});
      }
    }
    i += written.taken;
  }
  return tokens;
}

std::optional<PhraseMatch> PhraseMatcher::match_at(const Phrase& phrase,
                                                   const std::vector<Token>& tokens,
                                                   const std::vector<char>& claimed,
                                                   std::size_t at) const {
  if (!phrase.exact.empty() && tokens[at].text != phrase.exact) return std::nullopt;
  std::size_t clause = tokens[at].clause;
  const auto is_free = [&](std::size_t i) {
    return i < tokens.size() && claimed[i] == 0 && tokens[i].clause == clause;
  };
  PhraseMatch match{phrase.kind, phrase.id, at, at, phrase.state};
  for (std::size_t k = 0; k < phrase.stems.size(); ++k) {
    const auto fits = [&](std::size_t i) {
      if (!is_free(i) || tokens[i].stem != phrase.stems[k]) return false;
      return phrase.kind != EntryKind::kSymptom || !is_an_order(phrase.stems[k]) ||
             !tokens[i].text.ends_with("ed");
    };
    const bool is_lamp = phrase.kind == EntryKind::kSymptom && k > 0 &&
                         k + 1 == phrase.stems.size() && phrase.stems[k] == "lamp";
    if (is_lamp && shares_lamp(tokens, claimed, match.last)) {
      match.shares_lamp = true;
      break;
    }
    if (k > 0 && goes_on_past_comma(phrase, k, tokens, match.last, clause)) ++clause;
    // Where it is ("driver's side front") is long to say and tells nothing else.
    for (std::size_t gap = 0; k > 0 && gap < kLongestGap && !fits(match.last);) {
      if (!is_free(match.last) || !passes_gap(phrase, k, tokens, match)) {
        return std::nullopt;
      }
      if (!says_position(tokens[match.last].text)) ++gap;
      ++match.last;
    }
    if (!fits(match.last)) return std::nullopt;
    ++match.last;
  }
  // "blower works on one speed only" is not well.
  const bool as_good_as = is_free(match.last) && tokens[match.last].text == "as" &&
                          tokens[match.last - 1].text == "good";
  const bool is_limited = phrase.state == Presence::kAbsent && is_free(match.last) &&
                          (as_good_as || limits_wellness(tokens[match.last].text));
  return is_limited ? std::nullopt : std::optional(match);
}

std::optional<PhraseMatch> PhraseMatcher::longest_at(const std::vector<Token>& tokens,
                                                     const std::vector<char>& claimed,
                                                     const std::set<EntryKind>& kinds,
                                                     std::size_t at) const {
  const auto phrases = by_first_stem_.find(tokens[at].stem);
  if (phrases == by_first_stem_.end() || claimed[at] != 0) return std::nullopt;
  std::optional<PhraseMatch> best;
  std::size_t words = 0;
  for (const Phrase* phrase : phrases->second) {
    if (best && phrase->stems.size() < words) break;
    if (!kinds.contains(phrase->kind)) continue;
    auto match = match_at(*phrase, tokens, claimed, at);
    // Of as many words the one that is denied further on: "compressor does not run constantly".
    if (!match || (best && (match->last <= best->last || match->state == phrase->state))) continue;
    words = phrase->stems.size();
    best = std::move(match);
  }
  return best;
}

// Where the phrase's words stand around `at`, which holds its rarest; nothing when one is missing.
std::optional<PhraseMatcher::TokenSpread> PhraseMatcher::spread_at(const Phrase& phrase,
                                                                   const std::vector<Token>& tokens,
                                                                   const std::vector<char>& claimed,
                                                                   std::size_t at) const {
  const std::size_t reach = phrase.stems.size() + kLooseGap;
  const std::size_t begin = at >= reach ? at - reach + 1 : 0;
  const std::size_t end = std::min(at + reach, tokens.size());
  TokenSpread spread{{}, at, at + 1};
  for (const std::string& stemmed : phrase.stems) {
    std::optional<std::size_t> nearest;
    for (std::size_t i = begin; i < end; ++i) {
      // "brake disc checked" is no "check brakes".
      const bool is_done = phrase.kind == EntryKind::kSymptom && is_an_order(stemmed) &&
                           tokens[i].text.ends_with("ed");
      const bool fits =
          tokens[i].stem == stemmed && !is_done && claimed[i] == 0 &&
          tokens[i].clause == tokens[at].clause &&
          std::find(spread.tokens.begin(), spread.tokens.end(), i) == spread.tokens.end();
      const auto distance = [&](std::size_t k) { return k > at ? k - at : at - k; };
      if (fits && (!nearest || distance(i) < distance(*nearest))) nearest = i;
    }
    if (!nearest) return std::nullopt;
    spread.tokens.push_back(*nearest);
    spread.first = std::min(spread.first, *nearest);
    spread.last = std::max(spread.last, *nearest + 1);
  }
  if (spread.last - spread.first > reach) return std::nullopt;
  // "held back", but not "back box held": a particle follows its verb.
  for (std::size_t k = 1; k < phrase.stems.size(); ++k) {
    const bool turned = spread.tokens[k] < spread.tokens[k - 1];
    if (is_particle(phrase.stems[k]) && turned) return std::nullopt;
  }
  for (std::size_t i = spread.first; i < spread.last; ++i) {
    if (claimed[i] != 0 || joins_or_denies(tokens[i].text, phrase)) return std::nullopt;
  }
  return spread;
}

std::vector<PhraseMatch> PhraseMatcher::loose_matches(const std::vector<Token>& tokens,
                                                      const std::vector<char>& claimed,
                                                      const std::set<EntryKind>& kinds) const {
  std::vector<PhraseMatch> found;
  std::vector<char> taken = claimed;
  for (std::size_t at = 0; at < tokens.size(); ++at) {
    const auto phrases = by_rarest_stem_.find(tokens[at].stem);
    if (phrases == by_rarest_stem_.end() || taken[at] != 0) continue;
    const Phrase* best = nullptr;
    std::optional<TokenSpread> where;
    for (const Phrase* phrase : phrases->second) {
      if (!kinds.contains(phrase->kind)) continue;
      auto spread = spread_at(*phrase, tokens, taken, at);
      if (!spread) continue;
      const bool better = best == nullptr || phrase->stems.size() > best->stems.size() ||
                          (phrase->stems.size() == best->stems.size() &&
                           spread->last - spread->first < where->last - where->first);
      if (!better) continue;
      best = phrase;
      where = std::move(spread);
    }
    if (best == nullptr) continue;
    for (std::size_t i = where->first; i < where->last; ++i) taken[i] = 1;
    found.push_back({best->kind, best->id, where->first, where->last, best->state});
  }
  std::sort(found.begin(), found.end(),
            [](const PhraseMatch& a, const PhraseMatch& b) { return a.first < b.first; });
  return found;
}

std::vector<PhraseMatch> PhraseMatcher::matches(const std::vector<Token>& tokens,
                                                const std::vector<char>& claimed,
                                                const std::set<EntryKind>& kinds) const {
  std::vector<PhraseMatch> found;
  for (std::size_t at = 0; at < tokens.size();) {
    auto match = longest_at(tokens, claimed, kinds, at);
    // "no boost surge" denies the surge and is no "no boost"; nor is "would not pull to one side"
    // a "would not pull".
    const std::size_t no = match && tokens[at].stem == "will" ? at + 1 : at;
    if (match && no + 1 < tokens.size() && is_negation(tokens[no].text)) {
      const auto denied = longest_at(tokens, claimed, kinds, no + 1);
      if (denied && denied->last > match->last) match.reset();
    }
    const std::size_t next = match ? match->last : at + 1;
    if (match) found.push_back(std::move(*match));
    at = next;
  }
  return found;
}

}  // namespace shoplore
