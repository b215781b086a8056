#include "indexer/report_heading.hpp"

#include <algorithm>
#include <array>

#include "indexer/code_words.hpp"
#include "indexer/module_names.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongest = 14;  // words

// Words that a heading, a total and "no faults" are made of, apart from names.
bool is_furniture(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"no",     "none",    "found",  "detected", "ok",     "passed",   "in",     "memory",
       "module", "modules", "unit",   "ecu",      "system", "systems",  "status", "total",
       "end",    "of",      "report", "page",     "number", "address",  "addr",   "diagnostic",
       "scan",   "list",    "read",   "with",     "faulty", "present",  "set",    "the",
       "count",  "and",     "s",      "full",     "quick",  "complete", "scanned"});
  return holds(words, word) || says_code(word) || status_of_word(word);
}

// Where the last of three or more columns begins; 0 when there are fewer.
std::size_t last_column(std::string_view line) {
  std::size_t columns = 1, last = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool cut = std::string_view("|;:\t").find(line[i]) != std::string_view::npos ||
                     line.substr(i).starts_with(" - ");
    if (!cut) continue;
    ++columns;
    last = i + 1;
  }
  return columns >= 3 ? last : 0;
}

class HeadingReader {
 public:
  HeadingReader(std::string_view line, const std::vector<Word>& words)
      : line_(line), words_(words), last_column_(last_column(line)) {}

  std::optional<ReportHeading> read() {
    if (words_.size() > kLongest) return std::nullopt;
    for (std::size_t i = 0; i < words_.size();) {
      const auto module = module_at(words_, i);
      if (module) name(i, *module);
      if (!module && !is_known(words_[i])) return std::nullopt;
      i += module ? module->words : 1;
    }
    const bool ends_in_column = last_column_ > 0 && words_.back().begin >= last_column_;
    if (forgiven_ && !ends_in_column) return std::nullopt;
    settle();
    // "Module: Engine", "[Engine]" and "Engine: 2 faults" are marked as headings.
    heading_.plain = heading_.plain && heading_.module == line_;
    return std::move(heading_);
  }

 private:
  void name(std::size_t at, const ModuleName& module) {
    if (!heading_.module.empty()) return;
    const std::size_t begin = words_[at].begin;
    named_end_ = at + module.words;
    heading_.module = line_.substr(begin, words_[named_end_ - 1].end - begin);
    heading_.plain = module.plain;
  }

  // Numbers, and after a control unit's name its part numbers; any other word makes the line a
  // sentence.
  bool is_known(const Word& word) {
    const bool digits = word.text.find_first_not_of("0123456789") == std::string::npos;
    const bool has_digit = word.text.find_first_of("0123456789") != std::string::npos;
    if (is_furniture(word.text) || digits) return true;
    if (has_digit && !heading_.module.empty()) return true;
    const bool named = !heading_.module.empty() && !heading_.plain;
    forgiven_ = named && word.begin < last_column_;
    return forgiven_;
  }

  void settle() {
    bool code = false;
    for (const Word& word : words_) {
      code = code || says_code(word.text);
      if (const auto status = status_of_word(word.text)) heading_.status = status;
    }
    if (says_nothing(code)) {
      heading_.kind = LineKind::kNoFaults;
    } else if (!heading_.module.empty()) {
      heading_.kind = LineKind::kHeading;
    } else if (code && heading_.status) {
      heading_.kind = LineKind::kStatusHeading;
    }
    if (heading_.kind != LineKind::kStatusHeading) heading_.status.reset();
  }

  // "No faults", "0 DTCs stored", "Faults: none"; after a control unit's name also "OK" and "none".
  bool says_nothing(bool code) const {
    const auto none = [](const Word& w) {
      return w.text == "no" || w.text == "none" || w.text == "0";
    };
    if (code &&
        std::any_of(words_.begin() + static_cast<std::ptrdiff_t>(named_end_), words_.end(), none)) {
      return true;
    }
    const std::string& last = words_.back().text;
    return named_end_ > 0 && (last == "ok" || last == "passed" || last == "none");
  }

  std::string_view line_;
  const std::vector<Word>& words_;
  std::size_t last_column_, named_end_ = 0;
  bool forgiven_ = false;  // an unknown word before the last column
  ReportHeading heading_;
};

}  // namespace

std::optional<ReportHeading> read_report_heading(std::string_view line,
                                                 const std::vector<Word>& words) {
  return HeadingReader(line, words).read();
}

}  // namespace shoplore
