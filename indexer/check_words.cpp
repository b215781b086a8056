#include "indexer/check_words.hpp"

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
// Log-odds before the next check, and of the clause being about this check rather than any: set so
// that on the notes of tuning few guesses are wrong.
constexpr double kLeastLead = 4, kLeastScore = 5;
constexpr std::size_t kLeastWords = 2;

std::vector<std::string> telling_stems(std::string_view text) {
  std::vector<std::string> stems;
  for (const Word& word : words_of(text)) {
    if (tells_check(word.text)) stems.push_back(comparable(word.text));
  }
  return stems;
}

}  // namespace

bool tells_check(std::string_view word) {
  return !is_stop_word(word) && !says_pass(word) && !says_fail(word) && !is_negation(word) &&
         !says_position(word) && !is_reading_unit(word) &&
         word.find_first_of("0123456789") == word.npos;
}

CheckWords::CheckWords(const Vocabulary& vocabulary) {
  std::map<std::string, std::map<std::size_t, double>> counts;
  std::vector<double> texts;
  double all = 0;
  const auto add = [&](std::size_t check, std::string_view text) {
    const auto stems = telling_stems(text);
    for (const std::string& stem : std::set<std::string>(stems.begin(), stems.end())) {
      counts[stem][check] += 1;
    }
    texts[check] += 1;
    all += 1;
  };
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kCheck)) {
    if (!entry.retired.empty() || !entry.alias_of.empty()) continue;
    const std::size_t check = ids_.size();
    ids_.push_back(id);
    texts.push_back(0);
    add(check, entry.name);
    for (const std::string& phrase : entry.phrases) add(check, phrase);
    for (const std::string& part : entry.components) {
      add(check, vocabulary.display_name(EntryKind::kComponent, part));
    }
  }
  for (const auto& [stem, by_check] : counts) {
    double sum = 0;
    for (const auto& [check, n] : by_check) sum += n;
    const double background = (sum + 0.5) / (all + 1);
    for (const auto& [check, n] : by_check) {
      const double rate = (n + kPull * background) / (texts[check] + kPull);
      uses_[stem].push_back({check, std::log(rate / background)});
    }
    const double typical = all / static_cast<double>(ids_.size());
    missing_[stem] = std::log(kPull / (typical + kPull));
  }
}

std::optional<CheckWords::Guess> CheckWords::guess(const std::vector<std::string>& stems) const {
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
      scores[use.check] += use.weight - missing;
      if (use.weight > 0.5) telling[use.check].push_back(i);
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
  const bool is_clear = scores[best] - next >= kLeastLead && scores[best] + base >= kLeastScore &&
                        telling[best].size() >= kLeastWords;
  if (!is_clear) return std::nullopt;
  return Guess{ids_[best], scores[best] - next, telling[best]};
}

}  // namespace shoplore
