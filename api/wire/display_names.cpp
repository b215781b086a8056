#include "api/wire/display_names.hpp"

namespace shoplore {

std::string display_question(std::string_view attribute, const Vocabulary& vocabulary) {
  const auto colon = attribute.find(':');
  const std::string_view kind = attribute.substr(0, colon), id = attribute.substr(colon + 1);
  if (kind == "check") return vocabulary.display_name(EntryKind::kCheck, id);
  if (kind == "fact") return "ask: " + std::string(id) + "?";
  return "ask: " + vocabulary.display_name(EntryKind::kSymptom, id) + "?";
}

}  // namespace shoplore
