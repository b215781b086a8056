#include "api/cli/print_cautions.hpp"

#include <fmt/format.h>

namespace shoplore {

std::string print_cautions(const std::vector<Caution>& cautions, const Page& page) {
  if (cautions.empty()) return "";
  const Ink ink(page.colour);
  std::string out = "\n" + ink.warning(ink.heading("Cautions")) + "\n";
  for (const Caution& caution : cautions) {
    std::string text = ink.bold(caution.name) + ": " + caution.text;
    if (!caution.because_of.empty()) {
      text += fmt::format(" ({})", fmt::join(caution.because_of, ", "));
    }
    out += hang("  ! ", text, page.width);
  }
  return out;
}

}  // namespace shoplore
