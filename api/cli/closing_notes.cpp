#include "api/cli/closing_notes.hpp"

#include <fmt/format.h>

#include "indexer/contradictions.hpp"

namespace shoplore {

void ask_for_later(const Case& record, const Vocabulary& vocabulary, std::string_view verb,
                   std::ostream& err) {
  if (record.state != CaseState::kClosed) return;
  const auto open = unanswered_contradictions(record, vocabulary);
  if (open.empty()) return;
  err << "shoplore " << verb
      << ": the cause contradicts these verdicts; say \"later\": \"right\" or \"misled\" of "
         "each:\n";
  for (const Contradiction& each : open) {
    err << fmt::format("  /checks/{} {} ({}): {}\n", each.position, each.check,
                       vocabulary.display_name(EntryKind::kCheck, each.check),
                       name_of(each.verdict));
  }
}

}  // namespace shoplore
