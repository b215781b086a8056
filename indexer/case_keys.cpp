#include "indexer/case_keys.hpp"

#include <algorithm>

namespace shoplore {

std::string cause_key(const Cause& cause, const Vocabulary& vocabulary) {
  return vocabulary.canonical(EntryKind::kComponent, cause.component) + ":" +
         vocabulary.canonical(EntryKind::kFailure, cause.failure);
}

std::string fix_key(const Fix& fix, const Vocabulary& vocabulary) {
  return vocabulary.canonical(EntryKind::kAction, fix.action) + " " +
         vocabulary.canonical(EntryKind::kComponent, fix.component);
}

std::vector<std::string> fix_keys(const Case& record, const Vocabulary& vocabulary) {
  std::vector<std::string> keys;
  if (!record.correction) return keys;
  for (const Fix& fix : record.correction->fixes) keys.push_back(fix_key(fix, vocabulary));
  std::sort(keys.begin(), keys.end());
  keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
  return keys;
}

CauseParts cause_parts(std::string_view cause_key) {
  const auto colon = cause_key.find(':');
  if (colon == std::string_view::npos) return {std::string(cause_key), ""};
  return {std::string(cause_key.substr(0, colon)), std::string(cause_key.substr(colon + 1))};
}

Fix fix_parts(std::string_view fix_key) {
  const auto space = fix_key.find(' ');
  if (space == std::string_view::npos) return {std::string(fix_key), ""};
  return {std::string(fix_key.substr(0, space)), std::string(fix_key.substr(space + 1))};
}

std::string display_cause(std::string_view component, std::string_view failure,
                          const Vocabulary& vocabulary) {
  return vocabulary.display_name(EntryKind::kComponent, component) + ", " +
         vocabulary.display_name(EntryKind::kFailure, failure);
}

std::string display_cause_key(std::string_view cause_key, const Vocabulary& vocabulary) {
  const CauseParts parts = cause_parts(cause_key);
  return display_cause(parts.component, parts.failure, vocabulary);
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
