// Finds how a check went in the words around it: "ok", "fails", "not tight", "no leaks", "no
// spark".
//
// Does not read numbers (reading_reader.hpp) and does not know which checks there are.
// Lifetime: refers to the page. One thread at a time.
#pragma once

#include <optional>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

struct VerdictWords {
  Verdict verdict = Verdict::kUnclear;
  TokenRange at;
};

// How far a verdict may be from what it is of.
enum class VerdictReach {
  kFar,    // a check: a few words, and the beginning of the clause after a comma
  kBeside  // a part: directly beside it
};

class VerdictSearch {
 public:
  // Tokens of other findings end the search; readings do not count as words.
  VerdictSearch(const NotePage& page, const std::vector<char>& is_finding,
                const std::vector<char>& is_reading)
      : page_(page), is_finding_(is_finding), is_reading_(is_reading) {}

  // The verdict inside the phrase, or denied by the word before it ("no play in the ball joint"),
  // else the nearest after it, else the nearest before it.
  [[nodiscard]] std::optional<VerdictWords> near(const PhraseMatch& match,
                                                 VerdictReach reach) const;

  // What the whole clause and the one that leads on from it tell, weaker words included; doubt
  // outweighs bad news, bad news good. For a check that near() finds nothing of.
  [[nodiscard]] std::optional<VerdictWords> around(const PhraseMatch& match) const;

 private:
  [[nodiscard]] std::optional<VerdictWords> at(std::size_t i) const;
  [[nodiscard]] VerdictWords worst_of_several(VerdictWords words) const;
  [[nodiscard]] VerdictWords outweighed(VerdictWords words) const;
  [[nodiscard]] std::optional<VerdictWords> free_at(std::size_t i) const;
  [[nodiscard]] std::optional<VerdictWords> of_denied(const PhraseMatch& match) const;
  [[nodiscard]] std::optional<VerdictWords> of_lacking(const PhraseMatch& match) const;
  [[nodiscard]] std::optional<VerdictWords> said_none(const PhraseMatch& match,
                                                      std::size_t i) const;
  [[nodiscard]] std::optional<VerdictWords> of_having(const PhraseMatch& match) const;
  [[nodiscard]] std::optional<VerdictWords> outright_after(const PhraseMatch& match) const;
  [[nodiscard]] VerdictWords turned_by_no(const PhraseMatch& match, VerdictWords words) const;
  [[nodiscard]] std::optional<VerdictWords> after(const PhraseMatch& match,
                                                  VerdictReach reach) const;
  [[nodiscard]] std::optional<VerdictWords> before(const PhraseMatch& match,
                                                   VerdictReach reach) const;
  [[nodiscard]] std::optional<VerdictWords> of_all(const PhraseMatch& match) const;
  [[nodiscard]] std::size_t past_values(std::size_t i) const;
  [[nodiscard]] TokenRange reach_of(const PhraseMatch& match) const;
  [[nodiscard]] bool counts(std::size_t i) const;

  const NotePage& page_;
  const std::vector<char>& is_finding_;
  const std::vector<char>& is_reading_;
};

}  // namespace shoplore
