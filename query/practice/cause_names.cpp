#include "query/practice/cause_names.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/case_keys.hpp"
#include "indexer/edit_distance.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

// Letters of a word that may be misspelt, and how far.
constexpr std::size_t kMisspellable = 5, kMostEdits = 2;

std::vector<std::string> stems_of(std::string_view words) {
  std::vector<std::string> stems;
  for (const Word& word : words_of(words)) {
    if (!is_stop_word(word.text)) stems.push_back(stem(word.text));
  }
  return stems;
}

void add_entry(std::vector<std::string>& stems, EntryKind kind, std::string_view id,
               const Vocabulary& vocabulary) {
  const auto add = [&](std::string_view text) {
    for (std::string& each : stems_of(text)) stems.push_back(std::move(each));
  };
  add(vocabulary.display_name(kind, id));
  const Entry* entry = vocabulary.find(kind, id);
  if (entry == nullptr) return;
  for (const std::string& phrase : entry->phrases) add(phrase);
}

bool begins_one(const std::string& stem, const std::vector<std::string>& stems) {
  return std::any_of(stems.begin(), stems.end(),
                     [&](const std::string& each) { return each.starts_with(stem); });
}

bool is_near_one(const std::string& stem, const std::vector<std::string>& stems) {
  if (begins_one(stem, stems)) return true;
  if (stem.size() < kMisspellable) return false;
  return std::any_of(stems.begin(), stems.end(), [&](const std::string& each) {
    return edits_between(stem, each, kMostEdits).has_value();
  });
}

}  // namespace

CauseNames::CauseNames(const CauseTable& causes, const std::vector<std::uint32_t>& seen,
                       const Vocabulary& vocabulary) {
  for (CauseNumber c = 0; c < seen.size(); ++c) {
    if (seen[c] == 0) continue;
    Named named;
    named.key = causes.key(c);
    const auto [component, failure] = cause_parts(named.key);
    named.name = display_cause(component, failure, vocabulary);
    named.name_stems = stems_of(named.name);
    std::sort(named.name_stems.begin(), named.name_stems.end());
    add_entry(named.stems, EntryKind::kComponent, component, vocabulary);
    add_entry(named.stems, EntryKind::kFailure, failure, vocabulary);
    causes_.push_back(std::move(named));
  }
  std::sort(causes_.begin(), causes_.end(),
            [](const Named& a, const Named& b) { return a.name < b.name; });
}

std::vector<const CauseNames::Named*> CauseNames::all_matching(
    const std::vector<std::string>& stems) const {
  std::vector<const Named*> found;
  for (const Named& named : causes_) {
    const bool all = std::all_of(stems.begin(), stems.end(), [&](const std::string& each) {
      return begins_one(each, named.stems);
    });
    if (all) found.push_back(&named);
  }
  return found;
}

// Those that most of the words fit, allowing for a misspelling.
std::vector<const CauseNames::Named*> CauseNames::nearest(
    const std::vector<std::string>& stems) const {
  std::vector<const Named*> best;
  std::ptrdiff_t most = 1;
  for (const Named& named : causes_) {
    const auto fit = std::count_if(stems.begin(), stems.end(), [&](const std::string& each) {
      return is_near_one(each, named.stems);
    });
    if (fit > most) best.clear();
    if (fit >= most) best.push_back(&named);
    most = std::max(most, fit);
  }
  return best;
}

std::string CauseNames::offered(const std::vector<const Named*>& causes) const {
  const std::size_t shown = std::min(causes.size(), kCausesOffered);
  std::vector<std::string> names;
  for (std::size_t i = 0; i < shown; ++i) names.push_back(causes[i]->name);
  std::string text = fmt::format("{}", fmt::join(names, "; "));
  if (causes.size() > shown) text += fmt::format("; and {} more", causes.size() - shown);
  return text;
}

Result<std::string> CauseNames::find(std::string_view words, std::string place) const {
  for (const Named& named : causes_) {
    if (named.key == words) return named.key;
  }
  std::vector<std::string> stems = stems_of(words);
  if (stems.empty()) {
    return fail(ErrorCode::kInvalidInput, std::move(place), "expected the name of a cause");
  }
  const auto found = all_matching(stems);
  if (found.size() == 1) return found.front()->key;
  std::sort(stems.begin(), stems.end());
  for (const Named* named : found) {
    if (named->name_stems == stems) return named->key;
  }
  if (!found.empty()) {
    return fail(ErrorCode::kInvalidInput, std::move(place),
                fmt::format("\"{}\" leaves open which of: {}", words, offered(found)));
  }
  std::string why = fmt::format("no cause in these records is called \"{}\"", words);
  if (const auto near = nearest(stems); !near.empty()) why += "; near: " + offered(near);
  return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
}

std::vector<std::string> CauseNames::matching(std::string_view words) const {
  std::vector<std::string> keys;
  for (const Named* named : all_matching(stems_of(words))) keys.push_back(named->key);
  return keys;
}

}  // namespace shoplore
