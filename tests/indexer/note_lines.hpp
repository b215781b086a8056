// What the recogniser makes of a note, as lines that a table of claims can hold.
#pragma once

#include <string>
#include <vector>

#include "indexer/recogniser.hpp"

namespace shoplore {

inline const Vocabulary& built_in_vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

inline const Recogniser& built_in_recogniser() {
  static const Recogniser made(built_in_vocabulary());
  return made;
}

// "symptom misfire", "symptom whistle_under_load absent", "earlier_repair replace battery owner".
inline std::string line_of(const RecognisedItem& item) {
  std::string line = std::string(name_of(item.kind)) + " " + item.id;
  if (item.state == Presence::kAbsent) line += " absent";
  if (item.verdict) line += " " + std::string(name_of(*item.verdict));
  if (item.repair) line += " " + std::string(name_of(item.repair->by));
  return line;
}

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
    lines.push_back(line_of(item));
  }
  return lines;
}

inline std::string words_at(const std::string& text, Span span) {
  return text.substr(span.begin, span.end - span.begin);
}

inline std::vector<std::string> leftover_of(const std::string& text) {
  std::vector<std::string> words;
  for (const Span span : built_in_recogniser().recognise(text).leftover) {
    words.push_back(words_at(text, span));
  }
  return words;
}

struct NoteRow {
  const char* text;
  std::vector<std::string> items;
};

}  // namespace shoplore
