#include "indexer/part_overlaps.hpp"

#include <algorithm>

namespace shoplore {

bool cuts_a_part(const PhraseMatch& match, const std::vector<PhraseMatch>& parts,
                 const Vocabulary& vocabulary) {
  if (match.kind != EntryKind::kSymptom) return false;
  const Entry* entry = vocabulary.find(EntryKind::kSymptom, match.id);
  return std::any_of(parts.begin(), parts.end(), [&](const PhraseMatch& part) {
    if (part.last - part.first < 2) return false;
    const bool goes_on = part.first <= match.first && match.last < part.last;
    if (goes_on && match.first < part.last) return true;
    const bool gives_end = match.state == Presence::kAbsent && part.first < match.first &&
                           match.first < part.last && part.last <= match.last;
    return gives_end && entry != nullptr &&
           std::find(entry->components.begin(), entry->components.end(), part.id) ==
               entry->components.end();
  });
}

bool ends_in_a_part(const PhraseMatch& match, const std::vector<PhraseMatch>& parts) {
  return std::any_of(parts.begin(), parts.end(), [&](const PhraseMatch& part) {
    return match.first < part.first && part.first < match.last && match.last < part.last;
  });
}

}  // namespace shoplore
