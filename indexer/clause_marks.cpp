#include "indexer/clause_marks.hpp"

namespace shoplore {
namespace {

// "batt. fan", "clutch kit incl. slave": words that a point shortens.
bool is_shortened(std::string_view word) {
  for (const char* one : {"incl", "inc", "approx", "batt", "press", "temp", "eng", "trans", "susp",
                          "alt", "exp", "hyd", "elec", "vac", "exh", "evap", "assy"}) {
    if (word == one) return true;
  }
  return false;
}

}  // namespace

bool ends_clause(std::string_view text, const Word& before, const Word& after) {
  const std::string_view between = text.substr(before.end, after.begin - before.end);
  if (between == "." || between == ",") return false;
  // "the current, however, came to 0.4 A": set in, and parts nothing.
  const bool is_set_in = before.text == "however" || after.text == "however";
  if (is_set_in && between == ", ") return false;
  const bool numbered =
      (before.text == "cyl" || before.text == "no") && after.text[0] >= '0' && after.text[0] <= '9';
  if (numbered && between == ". ") return false;
  const bool goes_on_small = text[after.begin] >= 'a' && text[after.begin] <= 'z';
  if (is_shortened(before.text) && between == ". " && goes_on_small) return false;
  // "leak-off test: fails", "misfire: none": a colon says what follows is of what stands before.
  // A dash between spaces parts as well; one within a word joins.
  for (const std::string_view dash : {" - ", "--", "\u2013", "\u2014"}) {
    if (between.find(dash) != between.npos) return true;
  }
  return between.find_first_of(",;.!?\n|") != between.npos || between.find(" / ") != between.npos;
}

bool written_together(std::string_view text, const Word& first, const Word& last) {
  return text.substr(first.begin, last.end - first.begin).find_first_of(" \t\n") ==
         std::string_view::npos;
}

std::optional<SignWord> sign_between(std::string_view text, const Word& before, const Word& after) {
  const std::string_view between = text.substr(before.end, after.begin - before.end);
  const std::size_t sign = between.find_first_of("&+/@");
  if (sign == between.npos) return std::nullopt;
  const std::size_t at = before.end + sign;
  if (between[sign] == '@') return SignWord{"at", at};
  if (between[sign] != '/') return SignWord{"and", at};
  if (before.text.size() < 3 || after.text.size() < 3) return std::nullopt;
  return SignWord{"or", at};
}

}  // namespace shoplore
