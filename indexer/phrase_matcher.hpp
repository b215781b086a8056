// Finds vocabulary phrases in a text: stemmed words in order, longest phrase first, small
// misspellings forgiven.
//
// Knows nothing of negation or of what a match means (recogniser.hpp). Lifetime: refers to nothing
// after construction. Threads: read-only, any thread.
#pragma once

#include <cstddef>
#include <deque>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/respelling.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// A word of a note as the readers see it.
struct Token {
  std::string text;  // lower case, after shorthand and spelling
  std::string stem;
  std::size_t begin = 0,
              end = 0;       // bytes in the note; an expansion's words share their shorthand's
  std::size_t clause = 0;    // counts up at , ; . ! ? dashes and line ends
  bool after_comma = false;  // a comma alone parts it from the clause before
};

struct PhraseMatch {
  EntryKind kind = EntryKind::kSymptom;
  std::string id;
  std::size_t first = 0, last = 0;  // half-open range of tokens
  // kAbsent: the words themselves deny the symptom ("clutch does not slip", "horn ok").
  Presence state = Presence::kPresent;
  bool shares_lamp =
      false;  // "abs" of "abs and esp lamps": what is said of the lamp is said of both
};

class PhraseMatcher {
 public:
  struct Phrase {
    EntryKind kind;
    std::string id;
    std::vector<std::string> stems;  // phrase_form.hpp
    Presence state = Presence::kPresent;
    std::string exact;  // one word, but no symptom: as written; "towing" is not "towed"
  };

  // Phrases and names of every symptom, condition, check, work sign, component and action that
  // is neither retired nor an alias (an alias's phrases give the entry it stands for), and the
  // shorthand.
  explicit PhraseMatcher(const Vocabulary& vocabulary);
  PhraseMatcher(const PhraseMatcher&) = delete;
  PhraseMatcher& operator=(const PhraseMatcher&) = delete;

  // Whether a phrase has a word of this stem.
  [[nodiscard]] bool knows_stem(const std::string& stemmed) const {
    return respelling_.knows_stem(stemmed);
  }

  // Splits a note into tokens: shorthand expanded, & and / as "and" and "or", misspelt words of
  // five letters or more replaced by the one known word that is a single edit away, unless they are
  // ordinary words. `keep` are words to leave alone.
  [[nodiscard]] std::vector<Token> tokens_of(std::string_view text,
                                             const std::set<std::string>& keep) const;

  // All matches of these kinds within one clause each, longest first at every place, not
  // overlapping, over tokens that are not claimed. Two words that say nothing may stand between two
  // words of a phrase, in a check also the word that says how it went ("linkage stiff by hand").
  // Two words of a symptom, check or work sign may stand the other way round ("steering heavy"). A
  // symptom is denied by a negation between its words ("pedal is not soft") and, where a thing is
  // dead, by its being well ("horn ok" for "horn dead").
  [[nodiscard]] std::vector<PhraseMatch> matches(const std::vector<Token>& tokens,
                                                 const std::vector<char>& claimed,
                                                 const std::set<EntryKind>& kinds) const;

  // Phrases of two words and more of these kinds whose words all stand in one clause, in any order
  // and with up to kLooseGap other words among them, over tokens that are not claimed. For what
  // matches() leaves; the closest together comes first at every place. At least two of the words
  // must tell something by themselves, and a particle stays behind the word before it.
  [[nodiscard]] std::vector<PhraseMatch> loose_matches(const std::vector<Token>& tokens,
                                                       const std::vector<char>& claimed,
                                                       const std::set<EntryKind>& kinds) const;

  // All of them, those made of others too; in vocabulary order.
  [[nodiscard]] const std::deque<Phrase>& phrases() const { return phrases_; }

 private:
  struct Written {
    std::vector<std::string> words;
    std::size_t taken = 1;  // words of the note they stand for
  };
  // The tokens of a phrase's words, and the half-open range they lie in.
  struct TokenSpread {
    std::vector<std::size_t> tokens;
    std::size_t first = 0, last = 0;
  };
  [[nodiscard]] std::optional<TokenSpread> spread_at(const Phrase& phrase,
                                                     const std::vector<Token>& tokens,
                                                     const std::vector<char>& claimed,
                                                     std::size_t at) const;
  void add(EntryKind kind, const std::string& id, std::string_view phrase,
           Presence state = Presence::kPresent);
  void add_turned_round();
  void add_contraries();
  void index_by_rarest();
  [[nodiscard]] Written expanded(std::string_view text, const std::vector<Word>& words,
                                 std::size_t at) const;
  [[nodiscard]] std::optional<PhraseMatch> match_at(const Phrase& phrase,
                                                    const std::vector<Token>& tokens,
                                                    const std::vector<char>& claimed,
                                                    std::size_t at) const;
  [[nodiscard]] std::optional<PhraseMatch> longest_at(const std::vector<Token>& tokens,
                                                      const std::vector<char>& claimed,
                                                      const std::set<EntryKind>& kinds,
                                                      std::size_t at) const;

  std::deque<Phrase> phrases_;  // never moves: the maps point into it
  std::unordered_map<std::string, std::vector<const Phrase*>> by_first_stem_;   // longest first
  std::unordered_map<std::string, std::vector<const Phrase*>> by_rarest_stem_;  // for loose_matches
  std::unordered_set<std::string> shorthand_starts_;
  std::map<std::vector<std::string>, std::vector<std::string>> shorthand_;  // words to words
  Respelling respelling_;
};

}  // namespace shoplore
