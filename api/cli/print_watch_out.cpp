#include "api/cli/print_watch_out.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "api/cli/print_answer.hpp"
#include "api/cli/print_cautions.hpp"

namespace shoplore {
namespace {

// "cases demo-000007, demo-000003 and 9 more"; empty where no case is behind it.
std::string cases_text(const Warning& warning) {
  if (warning.refs.empty()) return "";
  const std::size_t shown = std::min(warning.refs.size(), kCasesShown);
  const std::size_t all = std::max<std::size_t>(warning.share.count, warning.refs.size());
  std::string text = all == 1 ? "case " : "cases ";
  for (std::size_t i = 0; i < shown; ++i) text += (i == 0 ? "" : ", ") + warning.refs[i];
  if (all > shown)
    text += fmt::format(" and {} more", thousands(static_cast<std::int64_t>(all - shown)));
  return text;
}

std::string nothing_text(const Answer& answer) {
  if (answer.understood.evidence.empty()) {
    return "Nothing of this was understood as a finding.";
  }
  if (answer.nothing_matches) {
    return fmt::format("No case like this one in {}: no past case warns of anything.",
                       thousands(answer.cases_in_records));
  }
  return fmt::format("Nothing stands out in {} {}.", thousands(answer.cases_in_records),
                     answer.cases_in_records == 1 ? "case" : "cases");
}

}  // namespace

std::string print_warnings(const std::vector<Warning>& warnings, std::size_t most,
                           const Page& page) {
  const Ink ink(page.colour);
  std::string out;
  for (std::size_t i = 0; i < std::min(most, warnings.size()); ++i) {
    out += hang("  ! ", warnings[i].text, page.width);
    const std::string cases = cases_text(warnings[i]);
    if (!cases.empty()) out += ink.dim(hang("    ", cases, page.width));
  }
  if (warnings.size() > most) {
    out += hang("  + ", fmt::format("{} more: ask --watch-out shows all", warnings.size() - most),
                page.width);
  }
  return out;
}

std::string print_watch_out(const Answer& answer, const Page& page) {
  const Ink ink(page.colour);
  std::string out = ink.warning(ink.heading("Watch out")) + "\n";
  out += answer.watch_out.empty() ? hang("  ", nothing_text(answer), page.width)
                                  : print_warnings(answer.watch_out, answer.watch_out.size(), page);
  out += print_cautions(answer.cautions, page);
  out += "\n" + print_note(answer, page);
  return out;
}

}  // namespace shoplore
