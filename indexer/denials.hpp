// Whether a note denies a finding: "no misfire", "whistle: none", "the lamp has not come back".
//
// Before a finding a negation reaches over the findings after it in its clause, up to "and", "but"
// or a word such as "cure" ("did not cure the misfire"): "no misfire or whistle" denies both. It
// reaches over at most one word that nobody knows ("no audible whistle"), over more only past an
// "or"; and on over commas where the list ends in "or" ("no misfire, whistle or smoke").
// After a finding it must say that it was not noticed: "not heard", "no longer there", "gone".
// "not always" says how often and denies nothing; a negation inside a phrase of the vocabulary ("no
// start") is the phrase's own.
// Lifetime: refers to the page. One thread at a time. Requires: phrases that hold a negation of
// their own are claimed on the page before anything is asked.
#pragma once

#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

class Denials {
 public:
  explicit Denials(NotePage& page) : page_(page), is_negation_(page.size(), 0) {}

  // Whether the finding at these tokens is denied; claims the words that say so. Requires: asked in
  // text order.
  [[nodiscard]] bool deny(TokenRange finding);

  // Notes that the finding's own words deny it ("clutch doesn't slip"), so that what an "or" joins
  // to it is denied too.
  void note_denied(TokenRange finding) { denied_ends_.push_back(finding.last); }

  // "no power loss": the phrase denies, and the next word turns it round; claims that word.
  [[nodiscard]] bool turn_round(const PhraseMatch& finding);

 private:
  [[nodiscard]] bool by_word_before(TokenRange finding);
  [[nodiscard]] bool by_word_after(std::size_t next);
  [[nodiscard]] bool taken_back(std::size_t next);
  [[nodiscard]] bool by_negation_after(std::size_t next, std::size_t i);
  [[nodiscard]] bool is_said_well(TokenRange finding);
  [[nodiscard]] bool is_called_wrong(std::size_t next);
  [[nodiscard]] std::size_t answer_to_question(std::size_t next) const;
  [[nodiscard]] bool answers_question(std::size_t next) const;
  [[nodiscard]] bool stands_alone_as_no(std::size_t next) const;
  [[nodiscard]] bool is_lamp_on(TokenRange finding) const;
  [[nodiscard]] bool has_ended(std::size_t word, TokenRange finding) const;
  [[nodiscard]] bool leaves_brackets(std::size_t before) const;
  [[nodiscard]] std::size_t lamp_goes_out(std::size_t next) const;
  [[nodiscard]] bool by_list(TokenRange finding) const;
  [[nodiscard]] bool list_ends_in_or(std::size_t at) const;
  [[nodiscard]] bool is_how_often(std::size_t after_negation, TokenRange finding) const;

  NotePage& page_;
  std::vector<char> is_negation_;         // by token: claimed here, not inside a phrase
  std::vector<std::size_t> denied_ends_;  // of findings denied by a word before them
};

// Whether the token is denied by the word directly before it, stop words apart.
[[nodiscard]] bool is_denied_at(const NotePage& page, std::size_t at);

// Whether a comma, and nothing stronger, stands between the two tokens.
[[nodiscard]] bool parted_by_comma(const NotePage& page, std::size_t before, std::size_t after);

}  // namespace shoplore
