#include "indexer/telling_words.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_files.hpp"

namespace shoplore {
namespace {

constexpr double kPull = 2;  // texts the background counts for
// Set so that on the notes of tuning few guesses are wrong.
constexpr double kLeastScore = 5, kLeastLeadOfCheck = 4, kLeastLeadOfSymptom = 7;
constexpr std::size_t kLeastWords = 2;

std::vector<std::string> telling_stems(std::string_view text, EntryKind kind) {
  std::vector<std::string> stems;
  for (const Word& word : words_of(text)) {
    for (const std::string& plain : written_out(word.text)) {
      const bool tells = kind == EntryKind::kCheck ? tells_check(plain) : tells_symptom(plain);
      if (tells) stems.push_back(comparable(plain));
    }
  }
  return stems;
}

// What was done to the thing; nothing it does by itself ("gearbox stripped here").
bool says_taken_apart(std::string_view word) {
  return says_look(word) || word == "pulled" || word == "stripped" || word == "removed" ||
         word == "dismantled" || word == "opened" || word == "refitted" || word == "rebuilt" ||
         word == "inspected";
}

bool says_well(std::string_view word) {
  return word == "ok" || word == "okay" || word == "fine" || word == "good";
}

// What is measured or how much; no finding by itself ("adaptation values at limit").
bool says_measure(std::string_view word) {
  return word == "limit" || word == "limits" || word == "value" || word == "values" ||
         word == "spec" || word == "reading" || word == "readings";
}

bool tells_when(std::string_view word) {
  return says_how_often(word) || small_number(word) || word == "minutes" || word == "seconds" ||
         word == "hours" || word == "single" || word == "time" || word == "times" ||
         word == "day" || word == "days" || word == "once" || word == "twice" || word == "often";
}

}  // namespace

bool tells_check(std::string_view word) {
  return !is_stop_word(word) && !says_pass(word) && !says_fail(word) && !is_negation(word) &&
         !is_particle(word) && !is_noticed(word) && !says_position(word) &&
         !is_reading_unit(word) && word.find_first_of("0123456789") == word.npos;
}

bool tells_symptom(std::string_view word) {
  return !is_stop_word(word) && !says_taken_apart(word) && !says_measure(word) &&
         !tells_when(word) && !says_well(word) && word.find_first_of("0123456789") == word.npos;
}

TellingWords::TellingWords(const Vocabulary& vocabulary, EntryKind kind)
    : kind_(kind),
      least_{kind == EntryKind::kCheck ? kLeastLeadOfCheck : kLeastLeadOfSymptom, kLeastScore} {
  std::map<std::string, std::map<std::size_t, double>> counts;
  std::vector<double> texts;
  double all = 0;
  const auto add = [&](std::size_t at, std::string_view text) {
    const auto stems = telling_stems(text, kind_);
    for (const std::string& stem : std::set<std::string>(stems.begin(), stems.end())) {
      counts[stem][at] += 1;
    }
    texts[at] += 1;
    all += 1;
  };
  for (const auto& [id, entry] : vocabulary.entries(kind)) {
    if (!entry.retired.empty() || !entry.alias_of.empty()) continue;
    const std::size_t at = ids_.size();
    ids_.push_back(id);
    texts.push_back(0);
    add(at, entry.name);
    for (const std::string& phrase : entry.phrases) add(at, phrase);
    if (kind == EntryKind::kSymptom) continue;
    for (const std::string& part : entry.components) {
      add(at, vocabulary.display_name(EntryKind::kComponent, part));
    }
  }
  if (kind == EntryKind::kSymptom) {
    for (const auto& [id, part] : vocabulary.entries(EntryKind::kComponent)) {
      for (const Word& word : words_of(part.name)) part_stems_.insert(comparable(word.text));
    }
  }
  for (const auto& [stem, by_entry] : counts) {
    double sum = 0;
    for (const auto& [at, n] : by_entry) sum += n;
    const double background = (sum + 0.5) / (all + 1);
    for (const auto& [at, n] : by_entry) {
      const double rate = (n + kPull * background) / (texts[at] + kPull);
      uses_[stem].push_back({at, std::log(rate / background)});
    }
    const double typical = all / static_cast<double>(ids_.size());
    missing_[stem] = std::log(kPull / (typical + kPull));
  }
}

std::optional<TellingWords::Guess> TellingWords::guess(
    const std::vector<std::string>& stems) const {
  if (ids_.empty()) return std::nullopt;
  std::vector<double> scores(ids_.size(), 0);
  std::vector<std::vector<std::size_t>> telling(ids_.size());
  std::set<std::string_view> met;
  double base = 0;
  for (std::size_t i = 0; i < stems.size(); ++i) {
    const auto uses = uses_.find(stems[i]);
    if (uses == uses_.end() || !met.insert(stems[i]).second) continue;
    const double missing = missing_.at(stems[i]);
    base += missing;
    for (const WordUse& use : uses->second) {
      scores[use.entry] += use.weight - missing;
      if (use.weight > 0.5 && !is_negation(stems[i])) telling[use.entry].push_back(i);
    }
  }
  std::size_t best = 0;
  for (std::size_t c = 1; c < scores.size(); ++c) {
    if (scores[c] > scores[best]) best = c;
  }
  double next = -1e9;
  for (std::size_t c = 0; c < scores.size(); ++c) {
    if (c != best) next = std::max(next, scores[c]);
  }
  // "timing chain is original": a part alone does nothing.
  const bool says_more =
      std::any_of(telling[best].begin(), telling[best].end(),
                  [&](std::size_t i) { return !part_stems_.contains(stems[i]); });
  const bool is_clear = scores[best] - next >= least_.lead && scores[best] + base >= least_.score &&
                        telling[best].size() >= kLeastWords && says_more;
  if (!is_clear) return std::nullopt;
  return Guess{ids_[best], scores[best] - next, telling[best]};
}

}  // namespace shoplore
