#include "indexer/told_scans.hpp"

#include "indexer/note_words.hpp"

namespace shoplore {
namespace {

bool asks_for(std::string_view word) {
  return word == "do" || word == "please" || word == "to" || word == "for" || is_negation(word) ||
         says_not_yet(word);
}

}  // namespace

bool is_told_scan(const NotePage& page, const PhraseMatch& match) {
  constexpr std::size_t kReach = 3;
  const bool is_scan = match.id == "module_scan" || match.id.ends_with("_scan_only");
  if (!is_scan || match.last - match.first < 2) return false;
  const std::size_t first = match.first > kReach ? match.first - kReach : 0;
  for (std::size_t i = first; i < match.first; ++i) {
    if (page.same_clause(i, match.first) && asks_for(page.word(i))) return false;
  }
  return true;
}

}  // namespace shoplore
