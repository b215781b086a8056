#include "api/wire/display_names.hpp"

#include "indexer/evidence_item.hpp"

namespace shoplore {

std::string display_question(std::string_view attribute, const Vocabulary& vocabulary) {
  const std::string_view kind = kind_of_attribute(attribute), id = id_of_attribute(attribute);
  if (kind == "check") return vocabulary.display_name(EntryKind::kCheck, id);
  if (kind == "fact") return "ask: " + std::string(id) + "?";
  return "ask: " + vocabulary.display_name(EntryKind::kSymptom, id) + "?";
}

}  // namespace shoplore
