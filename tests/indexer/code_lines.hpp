// What was read of fault codes, as lines that a table of claims can hold.
#pragma once

#include <string>
#include <vector>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {

// "P0299-16 pending after_clearing [ECM]"; a status that nobody gave is left out.
inline std::string code_line(const RecognisedItem& item) {
  if (item.kind == ItemKind::kScanned) return item.id;
  std::string line = item.id;
  if (!item.code) return line;
  if (!item.code->failure_type.empty()) line += "-" + item.code->failure_type;
  line += " " + std::string(name_of(item.code->status));
  if (item.code->seen != CodeSeen::kArrival) line += " " + std::string(name_of(item.code->seen));
  if (!item.code->module.empty()) line += " [" + item.code->module + "]";
  return line;
}

inline std::vector<std::string> code_lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
    if (item.kind == ItemKind::kCode || item.kind == ItemKind::kScanned) {
      lines.push_back(code_line(item));
    }
  }
  return lines;
}

// Items that are no codes.
inline std::vector<std::string> other_lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
    if (item.kind != ItemKind::kCode && item.kind != ItemKind::kScanned) {
      lines.push_back(line_of(item));
    }
  }
  return lines;
}

}  // namespace shoplore
