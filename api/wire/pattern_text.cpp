#include "api/wire/pattern_text.hpp"

#include <fmt/format.h>

#include "api/wire/display_names.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
std::string scope_text(const PatternScope& scope) {
  return scope.attribute.empty() ? "all vehicles" : display_vehicle_item(scope);
}

std::string_view heading_of(PatternKind kind) {
  switch (kind) {
    case PatternKind::kCause:
      return "What it turned out to be";
    case PatternKind::kWorkSign:
      return "Signs of earlier work";
    case PatternKind::kInVain:
      return "Repaired before, and the cause was elsewhere";
    case PatternKind::kPassed:
      return "Passed, and it was that all the same";
  }
  return "";
}

std::string pattern_conditions(const Pattern& pattern, const Vocabulary& vocabulary) {
  std::string text = pattern.scope.attribute.empty() ? "" : display_vehicle_item(pattern.scope);
  const auto add = [&](const std::string& more) { text += (text.empty() ? "" : ", ") + more; };
  if (pattern.kind == PatternKind::kPassed) {
    add(display_cause_key(pattern.cause, vocabulary));
    return text;
  }
  for (const EvidenceItem& item : pattern.items) add(display_item(item, vocabulary));
  return text;
}

std::string conditions_within_scope(const Pattern& pattern, const Vocabulary& vocabulary) {
  Pattern bare = pattern;
  bare.scope = {};
  const std::string text = pattern_conditions(bare, vocabulary);
  return text.empty() ? "any complaint" : text;
}

std::string pattern_outcome(const Pattern& pattern, const Vocabulary& vocabulary) {
  switch (pattern.kind) {
    case PatternKind::kCause:
      return display_cause_key(pattern.cause, vocabulary);
    case PatternKind::kWorkSign:
      return "found: " + display_item({pattern.sign, "present"}, vocabulary);
    case PatternKind::kInVain:
      return "the cause was on another part";
    case PatternKind::kPassed:
      return "\"" + display_question(pattern.items.front().attribute, vocabulary) + "\" had passed";
  }
  return "";
}

std::string pattern_sentence(const Pattern& pattern, const Vocabulary& vocabulary) {
  std::string text =
      fmt::format("{}: {} in {} of {} cases", pattern_conditions(pattern, vocabulary),
                  pattern_outcome(pattern, vocabulary), pattern.share.count, pattern.share.out_of);
  if (pattern.association) {
    const DiagnosticTable& table = pattern.table;
    text += fmt::format(", otherwise in {} of {}", table.false_negative,
                        table.false_negative + table.true_negative);
  }
  return text;
}

}  // namespace shoplore
