#include "api/cli/print_similar.hpp"

#include <fmt/format.h>

#include "api/wire/display_names.hpp"

namespace shoplore {

std::string outcome_text(OutcomeStatus outcome) {
  switch (outcome) {
    case OutcomeStatus::kStayedFixed:
      return "stayed fixed";
    case OutcomeStatus::kCameBack:
      return "came back";
    case OutcomeStatus::kUnknown:
      return "not heard of";
  }
  return "";
}

std::string marked_text(const Snippet& snippet, const Ink& ink) {
  std::string text;
  std::size_t at = 0;
  for (const Span& span : snippet.marked) {
    if (span.begin < at || span.end > snippet.text.size() || span.begin >= span.end) continue;
    const std::string word = snippet.text.substr(span.begin, span.end - span.begin);
    text += snippet.text.substr(at, span.begin - at);
    text += ink.on() ? ink.bold(word) : "*" + word + "*";
    at = span.end;
  }
  return text + snippet.text.substr(at);
}

std::string print_similar(const SimilarCase& similar, const Vocabulary& vocabulary,
                          const Page& page) {
  const Ink ink(page.colour);
  std::string head = similar.ref + " · " + format_date(similar.opened);
  if (!similar.vehicle.empty()) head += " · " + similar.vehicle;
  std::string out = hang("  ", head, page.width);
  std::string what = similar.cause;
  if (!similar.fixes.empty()) what += "; " + display_fixes(similar.fixes, vocabulary);
  if (!what.empty()) what += "; ";
  out += hang("    ", what + outcome_text(similar.outcome), page.width);
  if (!similar.snippet.text.empty()) {
    out += hang("    ", "\"" + marked_text(similar.snippet, ink) + "\"", page.width);
  }
  return out;
}

std::string print_search_page(const SearchPage& found, const Vocabulary& vocabulary,
                              const Page& page) {
  if (found.matches == 0) return "No case matches these words.\n";
  std::string out =
      fmt::format("{} {}, best first (records as of revision {})\n", thousands(found.matches),
                  found.matches == 1 ? "case" : "cases", found.revision.value);
  for (const SimilarCase& each : found.cases) out += print_similar(each, vocabulary, page);
  if (!found.next_cursor.empty()) out += "more with: --after " + found.next_cursor + "\n";
  return out;
}

}  // namespace shoplore
