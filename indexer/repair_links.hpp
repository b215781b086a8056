// Which component a word of work done belongs to, and which components share one.
//
// A deed looks for its component as its form says (repair_deeds.hpp): the nearest that fits within
// its clause, or the last one of the clause before ("vanes were sticky, we cleaned them").
// Components joined by "and" or a list of commas share it. Does not ask whether the work was only
// wanted (repair_undone.hpp).
// Lifetime: refers to the page, parts and marks. One thread at a time.
#pragma once

#include <optional>
#include <vector>

#include "indexer/note_page.hpp"
#include "indexer/repair_deeds.hpp"

namespace shoplore {

// A word that joins components: "and", "or", "plus".
[[nodiscard]] bool joins_parts(std::string_view word);

class RepairLinks {
 public:
  // parts: in text order. is_deed: marks the words of work by token.
  RepairLinks(const NotePage& page, const std::vector<PhraseMatch>& parts,
              const std::vector<char>& is_deed)
      : page_(page), parts_(parts), is_deed_(is_deed) {}

  // The position in parts of the deed's component within its clause.
  [[nodiscard]] std::optional<std::size_t> part_of(const Deed& deed) const;
  // In the clause before. used: marks, by part, those that have a deed already.
  [[nodiscard]] std::optional<std::size_t> part_before(const Deed& deed,
                                                       const std::vector<char>& used) const;
  // Whether two neighbours share the deed of one of them.
  [[nodiscard]] bool joined(const PhraseMatch& a, const PhraseMatch& b, const Deed& deed) const;
  // Whether a component stands at this token.
  [[nodiscard]] bool is_part(std::size_t i) const;
  // Whether the word keeps no deed from its component.
  [[nodiscard]] bool passes(std::size_t i) const;

 private:
  [[nodiscard]] std::size_t words_between(TokenRange part, const Deed& deed) const;
  [[nodiscard]] bool fits(const Deed& deed, TokenRange part) const;
  [[nodiscard]] bool joined_by_comma(const PhraseMatch& a, const PhraseMatch& b,
                                     const Deed& deed) const;
  [[nodiscard]] bool names_only_parts(const PhraseMatch& part) const;
  [[nodiscard]] bool ends_clause(const PhraseMatch& part) const;

  const NotePage& page_;
  const std::vector<PhraseMatch>& parts_;
  const std::vector<char>& is_deed_;
};

}  // namespace shoplore
