#include "indexer/key_names.hpp"

namespace shoplore {

std::string display_cause(std::string_view component, std::string_view failure,
                          const Vocabulary& vocabulary) {
  return vocabulary.display_name(EntryKind::kComponent, component) + ", " +
         vocabulary.display_name(EntryKind::kFailure, failure);
}

std::string display_cause(std::string_view cause_key, const Vocabulary& vocabulary) {
  const auto colon = cause_key.find(':');
  return display_cause(cause_key.substr(0, colon), cause_key.substr(colon + 1), vocabulary);
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

}  // namespace shoplore
