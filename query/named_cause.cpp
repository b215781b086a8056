// The words are cut in two in every place; one half is looked up among parts, the other among
// failures, both ways round. An empty half fits every seen cause of the other.
#include "query/named_cause.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_search.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kMostShown = 12;

// Entries that words mean, by how well.
struct Meant {
  MatchedBy by = MatchedBy::kWholePhrase;
  std::vector<std::string> ids;  // canonical
};

Meant meant_by(const std::string& words, EntryKind kind, const Vocabulary& vocabulary) {
  Meant meant;
  const auto found = vocabulary_search(vocabulary, {words, kind, RetiredEntries::kIncluded});
  for (const VocabularyMatch& match : found.matches) {
    if (meant.ids.empty()) meant.by = match.by;
    if (match.by != meant.by) break;  // best first
    meant.ids.push_back(vocabulary.canonical(kind, match.entry->id));
  }
  return meant;
}

std::string joined(std::span<const Word> words) {
  std::string text;
  for (const Word& word : words) text += (text.empty() ? "" : " ") + word.text;
  return text;
}

// Cause keys that the words fit, kept by how well: the better of two ways pushes out the other.
class Fitting {
 public:
  explicit Fitting(const std::set<std::string>& seen) : seen_(seen) {}

  void add(MatchedBy by, const std::string& key) {
    if (best_ && by > *best_) return;
    if (best_ && by < *best_) keys_.clear();
    best_ = by;
    keys_.insert(key);
  }
  void add_seen(MatchedBy by, const std::string& component, const std::string& failure) {
    for (const std::string& key : seen_) {
      const CauseParts parts = cause_parts(key);
      if (!component.empty() && parts.component != component) continue;
      if (!failure.empty() && parts.failure != failure) continue;
      add(by, key);
    }
  }
  // Those the records hold, when they hold any of them.
  [[nodiscard]] std::set<std::string> keys() const {
    std::set<std::string> held;
    std::set_intersection(keys_.begin(), keys_.end(), seen_.begin(), seen_.end(),
                          std::inserter(held, held.end()));
    return held.empty() ? keys_ : held;
  }

 private:
  const std::set<std::string>& seen_;
  std::optional<MatchedBy> best_;
  std::set<std::string> keys_;
};

void fit_halves(const std::string& part, const std::string& failure, const Vocabulary& vocabulary,
                Fitting& fitting) {
  const Meant parts = part.empty() ? Meant{} : meant_by(part, EntryKind::kComponent, vocabulary);
  const Meant failures =
      failure.empty() ? Meant{} : meant_by(failure, EntryKind::kFailure, vocabulary);
  if (failure.empty()) {
    for (const std::string& id : parts.ids) fitting.add_seen(parts.by, id, "");
    return;
  }
  if (part.empty()) {
    for (const std::string& id : failures.ids) fitting.add_seen(failures.by, "", id);
    return;
  }
  // Beginnings of words fit much that never fails so: only whole names may make a cause unseen.
  const MatchedBy by = std::max(parts.by, failures.by);
  for (const std::string& component : parts.ids) {
    for (const std::string& how : failures.ids) {
      if (by == MatchedBy::kWholePhrase) fitting.add(by, component + ":" + how);
      fitting.add_seen(by, component, how);
    }
  }
}

Result<std::string> by_ids(std::string_view text, std::size_t colon, const Vocabulary& vocabulary) {
  const auto id_of = [&](EntryKind kind, std::string_view id) -> Result<std::string> {
    if (vocabulary.find(kind, id) != nullptr) return vocabulary.canonical(kind, id);
    const auto near = near_ids(vocabulary, kind, id);
    return fail(ErrorCode::kInvalidInput, std::string(text),
                fmt::format("there is no {} \"{}\"{}{}", name_of(kind), id,
                            near.empty() ? "" : "; near it: ", fmt::join(near, ", ")));
  };
  const auto component = id_of(EntryKind::kComponent, text.substr(0, colon));
  if (!component) return component;
  const auto failure = id_of(EntryKind::kFailure, text.substr(colon + 1));
  if (!failure) return failure;
  return *component + ":" + *failure;
}

Error several(std::string_view text, const std::set<std::string>& keys) {
  Error error{ErrorCode::kInvalidInput, std::string(text), "may mean several causes: name one", {}};
  for (const std::string& key : keys) {
    if (error.problems.size() == kMostShown) {
      error.message += fmt::format(" ({} in all, the first {} are shown)", keys.size(), kMostShown);
      break;
    }
    error.problems.push_back({key, "is one of them"});
  }
  return error;
}

}  // namespace

Result<std::string> named_cause(std::string_view text, const Vocabulary& vocabulary,
                                const std::set<std::string>& seen) {
  const auto colon = text.find(':');
  if (colon != std::string_view::npos) return by_ids(text, colon, vocabulary);
  std::string plain(text);
  std::replace(plain.begin(), plain.end(), '_', ' ');
  const std::vector<Word> words = words_of(plain);
  if (words.empty() || words.size() > kMostCauseWords) {
    return fail(ErrorCode::kInvalidInput, std::string(text),
                fmt::format("expected a cause of 1 to {} words, as in wastegate linkage seized "
                            "open",
                            kMostCauseWords));
  }
  Fitting fitting(seen);
  for (std::size_t cut = 0; cut <= words.size(); ++cut) {
    const std::string first = joined({words.data(), cut});
    const std::string second = joined({words.data() + cut, words.size() - cut});
    fit_halves(first, second, vocabulary, fitting);
    fit_halves(second, first, vocabulary, fitting);
  }
  const auto keys = fitting.keys();
  if (keys.size() == 1) return *keys.begin();
  if (keys.size() > 1) return fail(several(text, keys));
  return fail(ErrorCode::kInvalidInput, std::string(text),
              "names no cause these records hold: give the part and how it failed, as in "
              "wastegate linkage seized open; shoplore vocabulary search finds names");
}

}  // namespace shoplore
