// All recurring patterns of the records at one revision, and choosing among them.
//
// Mined in every scope at once, so a pattern has the same q whatever is asked for afterwards.
// Found is what has q <= kMostChance after Benjamini & Hochberg over everything tested of its kind,
// all scopes together (pattern_tests.hpp and limit_tests.hpp say what counts as tested). Of what is
// found about one in twenty of a kind is chance, on average at most; which, nobody can tell.
// What is shown: a pattern is left out when a shorter one, that is with fewer of its items or of a
// wider scope, and not left out itself, says as much: when the lower end of its interval at
// kSaysMore is not above the shorter's share, over all cases of the shorter or over those in which
// all of the longer was looked at: that somebody asked is no finding. The interval is wider than
// the shown one because of thousands of longer sets some are better by luck. Decided within what
// was chosen: in one engine family the wider scopes do not count.
// Order: kind by kind; of each outcome the strongest first, then the second of each, and so on;
// strength is the lower end of the interval.
// Below kFewestForPatterns cases nothing is mined. Errors: the counter's; choose() kInvalidInput at
// "make", "engine_family" or "cause".
// Cost: see case_rows.hpp and set_counts.hpp. Immutable. Threads: any number may read.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/patterns/pattern.hpp"

namespace shoplore {

// With fewer cases hardly a pattern reaches kFewestCases and could be told from chance.
inline constexpr std::uint32_t kFewestForPatterns = 100;
inline constexpr double kMostChance = 0.05;
inline constexpr double kSaysMore = 0.99;

// Empty: not chosen by. Of make and engine family together the family is the scope.
struct PatternChoice {
  std::string make, engine_family;  // compared in lower case
  std::string cause;                // "component:failure", aliases followed
};

struct PatternList {
  PatternScope scope;  // chosen; empty: every scope
  std::uint32_t scope_cases = 0;
  std::uint32_t fewest = kFewestCases;  // cases a pattern of this scope needs
  std::size_t found = 0;                // patterns chosen from, those that say no more included
  std::vector<Pattern> patterns;
};

struct KindCount {
  std::uint64_t tested = 0, found = 0;
};

class PatternBook {
 public:
  [[nodiscard]] static Result<PatternBook> mine(const CaseCounter& counter,
                                                const Vocabulary& vocabulary);

  // Counter and vocabulary of mine(). kInvalidInput when no case has that make or family, or the
  // vocabulary lacks that component or failure.
  [[nodiscard]] Result<PatternList> choose(const PatternChoice& choice, const CaseCounter& counter,
                                           const Vocabulary& vocabulary) const;

  [[nodiscard]] std::uint32_t cases() const { return cases_; }
  [[nodiscard]] bool is_mined() const { return cases_ >= kFewestForPatterns; }
  [[nodiscard]] KindCount count(PatternKind kind) const {
    return counts_[static_cast<std::size_t>(kind)];
  }
  // Scopes mined, all vehicles first.
  [[nodiscard]] const std::vector<PatternScope>& scopes() const { return scopes_; }

 private:
  struct Found {
    TestedPattern pattern;
    double q = 1, holm = 1;
  };
  void keep_found(PatternTests tests, PatternKind kind);
  [[nodiscard]] Pattern in_words(const Found& found, const CauseTable& causes) const;
  [[nodiscard]] Result<std::vector<const Found*>> saying_more(std::vector<const Found*> chosen,
                                                              const CaseCounter& counter) const;
  [[nodiscard]] Result<double> share_where_known(const TestedPattern& shorter,
                                                 const TestedPattern& longer,
                                                 const CaseCounter& counter) const;

  std::uint32_t cases_ = 0;
  std::array<KindCount, kEnumNames<PatternKind>.size()> counts_{};
  std::vector<EvidenceItem> items_;
  std::vector<std::string> signs_;
  std::vector<PatternScope> scopes_;
  std::vector<std::vector<std::size_t>> wider_;  // by scope
  std::vector<Found> found_;
};

}  // namespace shoplore
