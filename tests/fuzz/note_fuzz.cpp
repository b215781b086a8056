// Any bytes as a technician's note: removing identities and recognising must end well, claim no
// byte twice and none outside the text, and make a record that keeps the rules.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "indexer/case_rules.hpp"
#include "indexer/identity_removal.hpp"
#include "indexer/recogniser.hpp"
#include "indexer/text.hpp"

namespace {

using namespace shoplore;

void demand(bool holds) {
  if (!holds) __builtin_trap();
}

void demand_apart(const Recognised& found, std::size_t size) {
  std::vector<Span> spans = found.leftover;
  for (const RecognisedItem& item : found.items) demand(item.span.end <= size);
  for (const Span span : spans) demand(span.begin < span.end && span.end <= size);
  std::sort(spans.begin(), spans.end(),
            [](const Span& a, const Span& b) { return a.begin < b.begin; });
  for (std::size_t i = 1; i < spans.size(); ++i) demand(spans[i - 1].end <= spans[i].begin);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  static const Recogniser recogniser(vocabulary);
  std::string note(data, data + size);
  if (!is_utf8(note)) return 0;  // refused before it gets here
  note = remove_identities_from_question(note, recogniser.names());
  demand(is_utf8(note));
  const Recognised found = recogniser.recognise(note);
  demand_apart(found, note.size());
  Case record;
  record.opened = *parse_date("2026-03-02");
  add_recognised(record, found);
  demand(check_rules(record, vocabulary).has_value());
  return 0;
}
