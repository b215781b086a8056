#include "query/cause_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <tuple>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_search.hpp"

namespace shoplore {
namespace {

// Words that a sentence needs and a cause does not; "not" and "no" are part of names.
constexpr std::array<std::string_view, 9> kJoining{"a",  "an",  "the",  "is", "was",
                                                   "of", "has", "been", "it"};

using CasesByKey = std::map<std::string, std::uint32_t>;

// Shorter words are too often one edit from another word to name a cause: "flux" is from "flex".
constexpr std::size_t kShortestMisspelt = 5;

// How well one half of the words fits an entry.
struct Half {
  std::string id;  // canonical
  MatchedBy by = MatchedBy::kWholePhrase;
};

struct Reading {
  NamedCause cause;
  MatchedBy component_by = MatchedBy::kWholePhrase, failure_by = MatchedBy::kWholePhrase;
  auto rank() const { return std::make_tuple(component_by, cause.cases == 0, failure_by); }
};

Result<CasesByKey> cases_by_key(const CaseCounter& counter) {
  const auto counts = counter.by_cause({});
  if (!counts) return fail(counts.error());
  CasesByKey cases;
  for (CauseNumber cause = 0; cause < counts->size(); ++cause) {
    if ((*counts)[cause] > 0) cases[counter.causes().key(cause)] = (*counts)[cause];
  }
  return cases;
}

NamedCause named(const std::string& component, const std::string& failure,
                 const CasesByKey& cases) {
  NamedCause cause{component + ":" + failure, component, failure, 0};
  const auto seen = cases.find(cause.key);
  if (seen != cases.end()) cause.cases = seen->second;
  return cause;
}

tl::unexpected<Error> unknown_id(std::string_view place, EntryKind kind, const std::string& id,
                                 const Vocabulary& vocabulary) {
  std::string message = fmt::format("\"{}\" is not a known {}", id, name_of(kind));
  const std::vector<std::string> near = near_ids(vocabulary, kind, id);
  if (!near.empty()) message += fmt::format("; near it: {}", fmt::join(near, ", "));
  return fail(ErrorCode::kInvalidInput, std::string(place), message);
}

Result<NamedCause> from_key(std::string_view key, std::string_view place,
                            const Vocabulary& vocabulary, const CasesByKey& cases) {
  const auto [component, failure] = cause_parts(key);
  for (const auto& [kind, id] :
       {std::pair(EntryKind::kComponent, component), std::pair(EntryKind::kFailure, failure)}) {
    if (vocabulary.find(kind, id) == nullptr) return unknown_id(place, kind, id, vocabulary);
  }
  return named(vocabulary.canonical(EntryKind::kComponent, component),
               vocabulary.canonical(EntryKind::kFailure, failure), cases);
}

std::vector<Half> halves(EntryKind kind, const std::string& words, const Vocabulary& vocabulary) {
  constexpr std::size_t kAll = SIZE_MAX;
  std::vector<Half> found;
  const auto search = vocabulary_search(vocabulary, {words, kind, RetiredEntries::kLeftOut, kAll});
  for (const VocabularyMatch& match : search.matches) {
    if (match.by == MatchedBy::kOneEdit && words.size() < kShortestMisspelt) continue;
    found.push_back({vocabulary.canonical(kind, match.entry->id), match.by});
  }
  return found;
}

std::string joined(const std::vector<std::string>& words, std::size_t begin, std::size_t end) {
  return fmt::format("{}", fmt::join(words.begin() + static_cast<std::ptrdiff_t>(begin),
                                     words.begin() + static_cast<std::ptrdiff_t>(end), " "));
}

class Readings {
 public:
  Readings(const Vocabulary& vocabulary, const CasesByKey& cases)
      : vocabulary_(vocabulary), cases_(cases) {}

  void read(const std::vector<std::string>& words) {
    const std::string all = joined(words, 0, words.size());
    // "wheel bearing" is a component and not a bearing that failed in some way.
    if (names_one(EntryKind::kComponent, all) || names_one(EntryKind::kFailure, all)) {
      return seen_only(all);
    }
    for (std::size_t cut = 1; cut < words.size(); ++cut) {
      const std::string front = joined(words, 0, cut), back = joined(words, cut, words.size());
      pair(front, back);
      pair(back, front);
    }
    if (readings_.empty()) seen_only(all);
  }

  // Those that rank first, most cases first, each cause once.
  std::vector<NamedCause> best() const {
    std::map<std::string, Reading> by_key;
    for (const Reading& each : readings_) {
      const auto [at, is_new] = by_key.emplace(each.cause.key, each);
      if (!is_new && each.rank() < at->second.rank()) at->second = each;
    }
    std::vector<NamedCause> best;
    std::optional<decltype(Reading{}.rank())> first;
    for (const auto& [key, each] : by_key) {
      if (!first || each.rank() < *first) best.clear();
      if (!first || each.rank() <= *first) {
        best.push_back(each.cause);
        first = each.rank();
      }
    }
    std::stable_sort(best.begin(), best.end(),
                     [](const NamedCause& a, const NamedCause& b) { return a.cases > b.cases; });
    return best;
  }

 private:
  bool names_one(EntryKind kind, const std::string& words) const {
    const auto found = vocabulary_search(vocabulary_, {words, kind, RetiredEntries::kLeftOut, 1});
    return found.found > 0 && found.matches[0].by == MatchedBy::kWholePhrase;
  }

  void pair(const std::string& component_words, const std::string& failure_words) {
    const auto components = halves(EntryKind::kComponent, component_words, vocabulary_);
    if (components.empty()) return;
    for (const Half& failure : halves(EntryKind::kFailure, failure_words, vocabulary_)) {
      for (const Half& component : components) {
        Reading reading{named(component.id, failure.id, cases_), component.by, failure.by};
        // Half a word is no name for what was never seen.
        const bool in_full =
            component.by == MatchedBy::kWholePhrase && failure.by == MatchedBy::kWholePhrase;
        if (reading.cause.cases > 0 || in_full) readings_.push_back(std::move(reading));
      }
    }
  }

  // A component or a failure alone says too little of what was never seen.
  void seen_only(const std::string& words) {
    for (const auto kind : {EntryKind::kComponent, EntryKind::kFailure}) {
      for (const Half& half : halves(kind, words, vocabulary_)) {
        for (const auto& [key, count] : cases_) {
          const auto [component, failure] = cause_parts(key);
          if (half.id != (kind == EntryKind::kComponent ? component : failure)) continue;
          readings_.push_back({{key, component, failure, count}, half.by, half.by});
        }
      }
    }
  }

  const Vocabulary& vocabulary_;
  const CasesByKey& cases_;
  std::vector<Reading> readings_;
};

tl::unexpected<Error> with_candidates(std::string_view place, std::string message,
                                      const std::vector<NamedCause>& candidates,
                                      const Vocabulary& vocabulary) {
  Error error{ErrorCode::kInvalidInput, std::string(place), std::move(message), {}};
  for (const NamedCause& each : candidates) {
    if (error.problems.size() == kMostCandidates) break;
    error.problems.push_back(
        {each.key, fmt::format("{} ({} {})", display_cause_key(each.key, vocabulary), each.cases,
                               each.cases == 1 ? "case" : "cases")});
  }
  return fail(std::move(error));
}

// Causes seen here one of whose halves is found by one of the words, most cases first.
std::vector<NamedCause> sharing_a_word(const std::vector<std::string>& words,
                                       const Vocabulary& vocabulary, const CasesByKey& cases) {
  std::map<std::string, NamedCause> by_key;
  for (const std::string& word : words) {
    Readings readings(vocabulary, cases);
    readings.read({word});
    for (const NamedCause& each : readings.best()) by_key.emplace(each.key, each);
  }
  std::vector<NamedCause> found;
  for (const auto& [key, each] : by_key) found.push_back(each);
  std::stable_sort(found.begin(), found.end(),
                   [](const NamedCause& a, const NamedCause& b) { return a.cases > b.cases; });
  return found;
}

Result<NamedCause> from_words(const std::string& written, const std::vector<std::string>& words,
                              std::string_view place, const Vocabulary& vocabulary,
                              const CasesByKey& cases) {
  Readings readings(vocabulary, cases);
  readings.read(words);
  const std::vector<NamedCause> best = readings.best();
  if (best.size() == 1) return best.front();
  if (best.empty()) {
    const auto near = sharing_a_word(words, vocabulary, cases);
    const std::string hint =
        near.empty() ? "; write component:failure or their names, as in \"wastegate linkage "
                       "seized open\""
                     : "; causes in these records that share a word:";
    return with_candidates(place, fmt::format("\"{}\" names no known cause{}", written, hint), near,
                           vocabulary);
  }
  return with_candidates(
      place,
      fmt::format("\"{}\" may be one of {} causes; name one of them{}", written, best.size(),
                  best.size() > kMostCandidates ? ", such as:" : ":"),
      best, vocabulary);
}

}  // namespace

Result<NamedCause> cause_from_words(std::string_view words, std::string_view place,
                                    const Vocabulary& vocabulary, const CaseCounter& counter) {
  const auto cases = cases_by_key(counter);
  if (!cases) return fail(cases.error());
  const bool is_key = words.find(':') != words.npos && words.find(' ') == words.npos;
  if (is_key) return from_key(words, place, vocabulary, *cases);
  std::vector<std::string> telling;
  for (const Word& word : words_of(words)) {
    const bool joins = std::find(kJoining.begin(), kJoining.end(), word.text) != kJoining.end();
    if (!joins) telling.push_back(word.text);
  }
  if (telling.empty()) {
    return fail(ErrorCode::kInvalidInput, std::string(place),
                "expected a cause: component:failure, or its name in plain words");
  }
  if (telling.size() > kMostCauseWords) {
    return fail(ErrorCode::kInvalidInput, std::string(place),
                fmt::format("expected at most {} words for a cause", kMostCauseWords));
  }
  return from_words(std::string(words), telling, place, vocabulary, *cases);
}

}  // namespace shoplore
