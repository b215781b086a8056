#include "indexer/repair_said.hpp"

#include "indexer/note_words.hpp"
#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool is_count(std::string_view word) {
  for (const char* name : {"few", "couple", "several", "of", "half"}) {
    if (word == name) return true;
  }
  return small_number(word) || word.find_first_not_of("0123456789k") == word.npos;
}

// "2mo", "3yrs": a number written together with its unit.
std::optional<int> months_written_together(std::string_view word) {
  const std::size_t unit = word.find_first_not_of("0123456789");
  if (unit == 0 || unit > 2 || unit == word.npos) return std::nullopt;
  const auto count = small_number(word.substr(0, unit));
  return count ? months_of(*count, word.substr(unit)) : std::nullopt;
}

class Times {
 public:
  explicit Times(const NotePage& page) : page_(page) {}

  std::optional<int> at(std::size_t i) const {
    if (word(i, i) == "last" || word(i, i) == "this") return last(i);
    if (word(i, i) == "yesterday" || word(i, i) == "today") return 0;
    if (word(i, i) == "half") return half_year(i);
    if (is_past_mark(i + 1, i)) {
      if (const auto together = months_written_together(word(i, i))) return together;
      const bool is_one = !word(i, i).ends_with("s") && (i == 0 || !small_number(word(i - 1, i)));
      return is_one ? months_of(1, word(i, i)) : std::nullopt;  // "month ago"
    }
    // "couple of months ago"
    if (word(i, i) == "couple") {
      const std::size_t unit = word(i + 1, i) == "of" ? i + 2 : i + 1;
      return is_past_mark(unit + 1, i) ? months_of(2, word(unit, i)) : std::nullopt;
    }
    // "before one year", as other languages put it
    if (word(i, i) == "before") {
      const auto number = small_number(word(i + 1, i));
      return number ? months_of(*number, word(i + 2, i)) : std::nullopt;
    }
    const auto count = small_number(word(i, i));
    if (count && is_past_mark(i + 2, i)) return months_of(*count, word(i + 1, i));
    return bare(i);
  }

 private:
  // "coil elsewhere, 10 mo", "19mth", "1 yr": a bare number of months or years at the end of what
  // is said.
  std::optional<int> bare(std::size_t i) const {
    if (i > 0 && is_length(word(i - 1, i))) return std::nullopt;
    const auto months = [&](std::optional<int> number, std::string_view unit) {
      const bool is_long =
          (unit.starts_with("m") && unit != "mi" && unit != "miles") || unit.starts_with("y");
      return is_long && number ? months_of(*number, unit) : std::nullopt;
    };
    const auto together = months_written_together(word(i, i));
    if (together && word(i, i).find_first_of("my") != std::string_view::npos &&
        ends_saying(i + 1, i)) {
      return together;
    }
    return ends_saying(i + 2, i) ? months(small_number(word(i, i)), word(i + 1, i)) : std::nullopt;
  }

  // "every 6 months", "for 6 months"
  static bool is_length(std::string_view before) {
    return before == "every" || before == "for" || before == "in" || before == "within" ||
           before == "next" || before == "over" || before == "each";
  }

  bool ends_saying(std::size_t at, std::size_t anchor) const {
    const std::string_view next = word(at, anchor);
    return next.empty() || next == "past" || next == "since" || next == "here" ||
           next == "elsewhere" || next == "by" || next == "at";
  }

  // "half a year ago", "half year back"
  std::optional<int> half_year(std::size_t i) const {
    const std::size_t unit = word(i + 1, i) == "a" ? i + 2 : i + 1;
    return word(unit, i) == "year" ? std::optional(6) : std::nullopt;
  }

  std::optional<int> last(std::size_t i) const {
    const auto months = months_of(1, word(i + 1, i));
    return word(i, i) == "last" || !months ? months : std::optional(0);
  }

  std::string_view word(std::size_t at, std::size_t anchor) const {
    return page_.same_clause(at, anchor) ? std::string_view(page_.word(at)) : std::string_view();
  }

  bool is_past_mark(std::size_t at, std::size_t anchor) const {
    const std::string_view mark = word(at, anchor);
    // Not "before": "2 months before sale" counts from the sale.
    return mark == "ago" || mark == "back" || mark == "old" || mark == "previously" ||
           mark == "earlier";
  }

  const NotePage& page_;
};

bool is_denied(const NotePage& page, std::size_t at, std::size_t first) {
  for (std::size_t i = at; i > first && page.same_clause(i - 1, at); --i) {
    if (is_negation(page.word(i - 1))) return true;
    if (!is_stop_word(page.word(i - 1))) return false;
  }
  return false;
}

// The subject of the work: "customer already changed", "by cust"; "we had it changed" is not ours.
bool did_it(const NotePage& page, const std::vector<char>& is_work, std::size_t at) {
  if (at > 0 && page.same_clause(at - 1, at)) {
    std::size_t before = at - 1;
    while (before > 0 && page.same_clause(before - 1, at) && page.word(before) == "the") --before;
    if (page.word(before) == "by" || page.word(before) == "from") return true;
  }
  std::size_t next = at + 1;
  while (page.same_clause(next, at) && is_work[next] == 0 &&
         is_between_who_and_work(page.word(next))) {
    ++next;
  }
  return page.same_clause(next, at) && is_work[next] != 0;
}

// "fuel cap new (owner)", "pads done - customer": nothing but who behind the work.
bool ends_work(const NotePage& page, const std::vector<char>& is_work, std::size_t at) {
  const bool follows = at > 0 && page.same_clause(at - 1, at) && is_work[at - 1] != 0;
  return follows && !page.same_clause(at, at + 1);
}

// "last service", "previous visit"
bool is_earlier_visit(const NotePage& page, std::size_t at) {
  const std::string& word = page.word(at);
  if (word != "service" && word != "visit" && word != "mot" && word != "time") return false;
  return at > 0 && page.same_clause(at - 1, at) &&
         (page.word(at - 1) == "last" || page.word(at - 1) == "previous");
}

// "the owner's mechanic"
bool is_of_owner(std::string_view word) {
  return word.ends_with("'s") && names_owner(word.substr(0, word.size() - 2));
}

// "our fitter", "this workshop"; "my husband" works at home.
bool is_ours(const NotePage& page, std::size_t at) {
  if (at == 0 || !page.same_clause(at - 1, at)) return false;
  const std::string& whose = page.word(at - 1);
  if (whose == "my" || whose == "your") return !is_family(page.word(at));
  return whose == "our" || whose == "this";
}

// "last owner", "previous owner's": not the one of today.
bool is_former(const NotePage& page, std::size_t at) {
  return at > 0 && page.same_clause(at - 1, at) &&
         (page.word(at - 1) == "last" || page.word(at - 1) == "previous" ||
          page.word(at - 1) == "former");
}

bool says_us(const NotePage& page, const std::vector<char>& is_work, std::size_t at) {
  const std::string& word = page.word(at);
  // "renewed by you", "you renewed", in a customer's own words.
  if (word == "you") {
    const bool by = at > 0 && page.same_clause(at - 1, at) && page.word(at - 1) == "by";
    // "the man before you cleaned it"
    const bool is_subject =
        at == 0 || !page.same_clause(at - 1, at) || !is_preposition(page.word(at - 1));
    return by || (is_subject && did_it(page, is_work, at));
  }
  // "by our day shift", "by me"
  if (word == "our" || word == "me")
    return at > 0 && page.same_clause(at - 1, at) && page.word(at - 1) == "by";
  if (word != "us" && word != "here" && word != "ourselves" && word != "ours" && word != "myself") {
    return false;
  }
  return at == 0 || !page.same_clause(at - 1, at) || page.word(at - 1) != "before";
}

}  // namespace

std::optional<RepairedBy> repaired_by(const NotePage& page, const std::vector<char>& is_work,
                                      TokenRange words) {
  bool others = false, owner = false, here = false;
  for (std::size_t i = words.first; i < words.last; ++i) {
    const std::string& word = page.word(i);
    if (names_others(word)) {
      (is_ours(page, i) ? here : others) = true;
    } else if (names_owner(word) || is_of_owner(word)) {
      if (is_former(page, i)) others = true;
      owner = owner || did_it(page, is_work, i) || ends_work(page, is_work, i);
    } else if (says_us(page, is_work, i)) {
      (is_denied(page, i, words.first) ? others : here) = true;
    } else if (names_us(word)) {
      here = here || did_it(page, is_work, i);
    }
    owner = owner || says_own_work(word);
  }
  if (others) return RepairedBy::kElsewhere;
  if (owner) return RepairedBy::kOwner;
  return here ? std::optional(RepairedBy::kHere) : std::nullopt;
}

std::optional<int> months_ago_in(const NotePage& page, TokenRange words) {
  const Times times(page);
  for (std::size_t i = words.first; i < words.last; ++i) {
    if (const auto months = times.at(i)) return months;
  }
  return std::nullopt;
}

bool tells_repair(const NotePage& page, std::size_t at) {
  const std::string& word = page.word(at);
  const bool is_year =
      word.size() == 4 && is_count(word) && (word.starts_with("19") || word.starts_with("20"));
  if (is_year || is_repair_context(word) || names_others(word) || names_owner(word) ||
      is_of_owner(word) || says_own_work(word) || word == "myself" || word == "today" ||
      word == "old" || word == "only") {
    return true;
  }
  if (months_written_together(word) || is_earlier_visit(page, at)) return true;
  for (std::size_t next = at + 1; next <= at + 2 && page.same_clause(at, next); ++next) {
    if (is_since_unit(page.word(next))) return is_count(word);
    if (!is_count(page.word(next))) return false;
  }
  return false;
}

bool passes_in_repair(const NotePage& page, std::size_t at) {
  const std::string& word = page.word(at);
  // "main dealer"
  const bool is_main =
      word == "main" && page.same_clause(at, at + 1) && names_others(page.word(at + 1));
  return is_main || is_stop_word(word) || says_position(word) || small_number(word) ||
         tells_repair(page, at);
}

bool has_somebody_before(const NotePage& page, std::size_t at) {
  std::size_t i = at;
  while (i > 0 && page.same_clause(i - 1, at) && is_between_who_and_work(page.word(i - 1))) --i;
  if (i == 0 || !page.same_clause(i - 1, at)) return false;
  const std::string& word = page.word(i - 1);
  return names_others(word) || names_owner(word);
}

bool says_who_or_when(const NotePage& page, std::size_t i) {
  const std::string& word = page.word(i);
  // "two years old" is no age of a repair
  for (std::size_t k = i; k < i + 3 && page.same_clause(k, i); ++k) {
    if (page.word(k) == "old") return false;
  }
  return word == "us" || word == "here" || word == "ago" || word == "ours" || names_others(word) ||
         says_own_work(word) || word == "owner" || months_ago_in(page, {i, i + 1}).has_value();
}

}  // namespace shoplore
