#include "indexer/bare_parts.hpp"

#include <algorithm>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kClausesBack = 3;
constexpr double kWordSaid = 1;      // a word of its name in the clause
constexpr double kWordBefore = 0.6;  // in one of the clauses before

}  // namespace

BareParts::BareParts(const Vocabulary& vocabulary) {
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kComponent)) {
    if (!entry.retired.empty() || !entry.alias_of.empty()) continue;
    std::map<std::string, std::set<std::string>> names;  // by noun
    const auto add = [&](std::string_view name) {
      std::vector<std::string> stems;
      for (const Word& word : words_of(name)) {
        if (!says_nothing(word.text)) stems.push_back(comparable(word.text));
      }
      if (stems.size() < 2) return;
      names[stems.back()].insert(stems.begin(), stems.end() - 1);
    };
    add(entry.name);
    for (const std::string& phrase : entry.phrases) add(phrase);
    const std::vector<Word> words = words_of(entry.name);
    const std::string noun = words.empty() ? "" : comparable(words.back().text);
    if (const auto own = names.find(noun); own != names.end()) {
      by_noun_[noun].push_back({id, std::move(own->second)});
    }
  }
}

std::optional<std::string> BareParts::at(const NotePage& page, std::size_t token,
                                         const std::map<std::string, double>& told) const {
  const auto parts = by_noun_.find(page.token(token).stem);
  if (parts == by_noun_.end()) return std::nullopt;
  const std::string* best = nullptr;
  double most = 0;
  bool is_tied = false;
  for (const Part& part : parts->second) {
    double score = 0;
    std::set<std::string_view> said;
    for (std::size_t i = token; i > 0; --i) {
      const Token& before = page.token(i - 1);
      const std::size_t back = page.token(token).clause - before.clause;
      if (back > kClausesBack) break;
      if (!part.words.contains(before.stem) || !said.insert(before.stem).second) continue;
      score += back == 0 ? kWordSaid : kWordBefore;
    }
    if (const auto finding = told.find(part.id); finding != told.end()) score += finding->second;
    if (score <= 0 || score < most) continue;
    is_tied = score == most && best != nullptr;
    most = score;
    best = &part.id;
  }
  return best == nullptr || is_tied ? std::nullopt : std::optional(*best);
}

std::map<std::string, double> components_told(const Vocabulary& vocabulary,
                                              const std::vector<PhraseMatch>& findings) {
  std::map<std::string, double> told;
  for (const PhraseMatch& match : findings) {
    const Entry* entry = vocabulary.find(match.kind, match.id);
    // What is well ("regeneration completes") points to no part.
    if (entry == nullptr || match.state == Presence::kAbsent) continue;
    double weight = 1;
    for (const std::string& component : entry->components) {
      double& most = told[component];
      most = std::max(most, weight);
      weight /= 2;
    }
  }
  return told;
}

}  // namespace shoplore
