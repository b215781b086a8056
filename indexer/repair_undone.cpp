#include "indexer/repair_undone.hpp"

#include "indexer/note_words.hpp"
#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

std::string_view word_in_clause(const NotePage& page, std::size_t at, std::size_t anchor) {
  return page.same_clause(at, anchor) ? std::string_view(page.word(at)) : std::string_view();
}

// "injector no. 2" names one and denies nothing.
bool is_number_sign(const NotePage& page, std::size_t at) {
  return page.word(at) == "no" && at + 1 < page.size() && small_number(page.word(at + 1));
}

// "to be cleaned", "can be cleaned"
bool leaves_open(std::string_view word) {
  return word == "to" || word == "can" || word == "could" || word == "should" || word == "must" ||
         word == "will" || word == "would" || word == "may" || word == "might";
}

// "inner pad fitted backwards": how a part was found, not what somebody did for the complaint.
bool says_wrong_way(std::string_view word) {
  return word == "backwards" || word == "upside" || word == "wrong" || word == "wrongly" ||
         word == "incorrectly" || word == "crooked";
}

// "new pump from the store, not fitted", "coil here, not yet put in"
bool is_denied_next(const NotePage& page, std::size_t next) {
  if (next + 1 >= page.size() || !page.same_clause(next, next + 1)) return false;
  if (!is_negation(page.word(next))) return false;
  const std::size_t deed = page.word(next + 1) == "yet" ? next + 2 : next + 1;
  if (!page.same_clause(deed, next)) return page.word(next + 1) == "yet";
  const std::string& word = page.word(deed);
  return word == "fitted" || word == "installed" || word == "replaced" || word == "changed" ||
         word == "put";
}

// Only what there are several alike of can change places: a coil or a relay, but not a turbo.
bool comes_in_several(const NotePage& page, TokenRange group) {
  for (std::size_t i = group.first; i < group.last; ++i) {
    const std::string& word = page.word(i);
    for (const char* part : {"coil", "injector", "plug", "relay", "sensor", "tyre", "wheel", "fuse",
                             "bulb", "lead", "charger", "cable", "key", "lamp", "module"}) {
      if (word.starts_with(part)) return true;
    }
  }
  return false;
}

}  // namespace

bool is_undone_before(const NotePage& page, std::size_t at) {
  for (std::size_t i = at; i > 0 && page.same_clause(i - 1, at); --i) {
    const std::string& word = page.word(i - 1);
    const bool has_before = i > 1 && page.same_clause(i - 2, at);
    if (word == "be" && has_before && leaves_open(page.word(i - 2))) return true;
    if (word == "if" || word == "nobody") return true;
    if (is_stop_word(word) || says_position(word) || is_replaced_adjective(word)) continue;
    const bool is_month = word == "may" && has_before && page.word(i - 2) == "in";
    if (is_negation(word)) return !is_number_sign(page, i - 1);
    return (says_not_yet(word) && !is_month) || says_planned(word);
  }
  return false;
}

bool is_undone_after(const NotePage& page, const std::vector<char>& is_work, TokenRange group) {
  std::size_t i = group.last;
  const auto passes = [&](std::size_t at) {
    return !says_wanted(page.word(at)) && (is_work[at] != 0 || passes_in_repair(page, at));
  };
  while (page.same_clause(i, group.first) && passes(i)) ++i;
  // "new pads to be fitted"
  for (std::size_t k = group.first; k + 1 < i; ++k) {
    if (page.word(k) == "to" && page.word(k + 1) == "be") return true;
  }
  if (page.same_clause(i, group.first)) {
    return says_wanted(page.word(i)) || says_wrong_way(page.word(i));
  }
  if (is_denied_next(page, i)) return true;
  const std::size_t end = page.token(i - 1).end;
  const std::size_t next = i < page.size() ? page.token(i).begin : page.text().size();
  return next > end && page.text().substr(end, next - end).find('?') != std::string_view::npos;
}

bool is_test_swap(const NotePage& page, TokenRange work, TokenRange group, TokenRange around,
                  const RepairSaid& said) {
  const std::string_view next = word_in_clause(page, work.last, work.first);
  const std::string_view after = word_in_clause(page, group.last, group.first);
  // "turned round", "changed the coils over"
  for (const char* turned : {"round", "around", "over", "across"}) {
    if (next == turned || after == turned) return true;
  }
  if (!is_swap(page.word(work.first))) return false;
  if (says_places_changed(after)) return true;
  if (said.months_ago) return false;
  for (std::size_t i = around.first; i < around.last; ++i) {
    if (page.word(i) == "already" || page.word(i) == "new") return false;
  }
  for (std::size_t i = around.first; i < around.last; ++i) {
    if (names_us(page.word(i))) return true;
  }
  return !said.by && comes_in_several(page, group);
}

bool is_put_in(const NotePage& page, std::size_t put, TokenRange part) {
  const std::size_t after = std::max(put + 1, part.last);
  for (std::size_t i = after; i < after + 3 && page.same_clause(i, put); ++i) {
    const std::string& word = page.word(i);
    for (const char* no : {"charge", "charger", "test", "tester", "bench", "scope", "load", "to",
                           "through", "direct", "into"}) {
      if (word == no) return false;
    }
    if (word == "back" && !small_number(page.word(i - 1)) && !is_since_unit(page.word(i - 1))) {
      return false;
    }
  }
  if (put < part.first) return page.word(part.first - 1) != "the" || has_somebody_before(page, put);
  return true;
}

}  // namespace shoplore
