#include "api/wire/display_names.hpp"

namespace shoplore {

std::string display_cause(std::string_view component, std::string_view failure,
                          const Vocabulary& vocabulary) {
  return vocabulary.display_name(EntryKind::kComponent, component) + ", " +
         vocabulary.display_name(EntryKind::kFailure, failure);
}

std::string display_fix(std::string_view fix_key, const Vocabulary& vocabulary) {
  const auto space = fix_key.find(' ');
  if (space == std::string_view::npos) return std::string(fix_key);
  return vocabulary.display_name(EntryKind::kAction, fix_key.substr(0, space)) + " " +
         vocabulary.display_name(EntryKind::kComponent, fix_key.substr(space + 1));
}

std::string display_fixes(const std::vector<std::string>& fix_keys, const Vocabulary& vocabulary) {
  std::string text;
  for (const std::string& key : fix_keys) {
    if (!text.empty()) text += " + ";
    text += display_fix(key, vocabulary);
  }
  return text.empty() ? "nothing written down" : text;
}

std::string display_question(std::string_view attribute, const Vocabulary& vocabulary) {
  const auto colon = attribute.find(':');
  const std::string_view kind = attribute.substr(0, colon), id = attribute.substr(colon + 1);
  if (kind == "check") return vocabulary.display_name(EntryKind::kCheck, id);
  if (kind == "fact") return "ask: " + std::string(id) + "?";
  return "ask: " + vocabulary.display_name(EntryKind::kSymptom, id) + "?";
}

}  // namespace shoplore
