#include "indexer/contradicted_symptoms.hpp"

#include <set>
#include <string>

#include "indexer/note_words.hpp"

namespace shoplore {
namespace {

// Whether the clause behind the question says that nobody knows.
bool is_left_open(const NotePage& page, const RecognisedItem& asked) {
  const std::size_t first = page.tokens_at(asked.span).last;
  for (std::size_t i = first; page.same_clause(i, first); ++i) {
    const std::string& word = page.word(i);
    if (hints_unclear(word) || word == "unknown" || word == "idea") return true;
    if (!is_negation(word) || !page.same_clause(i, i + 1)) continue;
    for (const char* verb : {"say", "know", "checked", "tested", "asked"}) {
      if (page.word(i + 1) == verb) return true;
    }
  }
  return false;
}

}  // namespace

void drop_contradicted(const NotePage& page, std::vector<RecognisedItem>& items) {
  std::set<std::string> asked, present, denied;
  for (const RecognisedItem& item : items) {
    if (item.kind != ItemKind::kSymptom) continue;
    const bool is_asked = page.text().substr(item.span.end, 1) == "?";
    (item.state == Presence::kAbsent ? denied : is_asked ? asked : present).insert(item.id);
  }
  std::erase_if(items, [&](const RecognisedItem& item) {
    if (item.kind != ItemKind::kSymptom) return false;
    if (item.state == Presence::kAbsent) return present.contains(item.id);
    if (present.contains(item.id) || !asked.contains(item.id)) return false;
    return denied.contains(item.id) || is_left_open(page, item);
  });
}

}  // namespace shoplore
