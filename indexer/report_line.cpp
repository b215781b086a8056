#include "indexer/report_line.hpp"

#include <algorithm>
#include <array>

#include "indexer/code_spelling.hpp"
#include "indexer/code_words.hpp"
#include "indexer/freeze_frame.hpp"
#include "indexer/module_names.hpp"
#include "indexer/report_cells.hpp"
#include "indexer/report_heading.hpp"
#include "indexer/text.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

bool is_number(std::string_view word) {
  return word.find_first_not_of("0123456789") == word.npos;
}

// Labels of a report's head: what they say is no finding.
bool is_header_label(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"tool",     "software", "version",      "firmware", "serial",   "date",     "time",
       "report",   "scan",     "scanner",      "scanned",  "protocol", "page",     "vin",
       "plate",    "reg",      "registration", "licence",  "license",  "workshop", "technician",
       "operator", "user",     "order",        "job",      "device",   "adapter",  "interface",
       "printed",  "created",  "database",     "ref",      "reference"});
  return holds(words, word);
}

bool is_detail_label(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"status",      "state",    "failure",     "ftb",     "subtype",   "occurrences",
       "occurrence",  "occurred", "count",       "counter", "frequency", "priority",
       "first",       "last",     "description", "detail",  "details",   "meaning",
       "environment", "type",     "healing",     "ageing",  "aging"});
  return holds(words, word);
}

struct Words {
  std::string_view line;
  std::vector<Word> list;

  std::size_t size() const { return list.size(); }
  const std::string& at(std::size_t i) const { return list[i].text; }
  bool has(std::string_view word) const {
    return std::any_of(list.begin(), list.end(), [&](const Word& w) { return w.text == word; });
  }
};

// What may stand before the code of a code line; the module among it, if any.
struct Front {
  bool fits = false;
  std::string module;
  std::optional<CodeStatus> status;
};

Front front_of(std::string_view text) {
  Front front;
  const std::vector<Word> words = words_of(text);
  for (std::size_t i = 0; i < words.size();) {
    if (const auto module = module_at(words, i); module && front.module.empty()) {
      const std::size_t last = i + module->words - 1;
      front.module = text.substr(words[i].begin, words[last].end - words[i].begin);
      i = last + 1;
      continue;
    }
    const bool small = words[i].text.size() <= 3 && is_number(words[i].text);
    const auto status = status_of_word(words[i].text);
    if (!small && !says_code(words[i].text) && !status) return front;
    if (status) front.status = status;
    ++i;
  }
  front.fits = true;
  return front;
}

bool is_seen_after_clearing(const Words& words) {
  bool cleared = false, after = false, returned = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words.at(i) == "not" || words.at(i) == "didn't" || words.at(i) == "no") return false;
    if (words.at(i) == "after") after = true;
    if (says_cleared(words.at(i)))
      cleared = true;
    else
      returned = returned || says_returned(words.at(i));
  }
  return cleared && (after || returned);
}

bool read_code_line(std::string_view text, ReportLine& line) {
  const std::string_view own = text.substr(line.span.begin, line.span.end - line.span.begin);
  const std::vector<SpelledCode> codes = find_codes(own);
  if (codes.empty()) return false;
  const SpelledCode& first = codes.front();
  for (const SpelledCode& other : codes) {
    if (other.code.bytes != first.code.bytes) return false;  // a list, or a note about several
  }
  const Front front = front_of(own.substr(0, first.span.begin));
  if (!front.fits) return false;
  const std::string_view rest = own.substr(first.span.end);
  const CellReading cells = read_cells(
      rest, first.code.failure_type ? FailureType::kAlreadyGiven : FailureType::kMayFollow);
  line.kind = LineKind::kCode;
  line.code = first.code.text();
  line.code_span = {line.span.begin + first.span.begin, line.span.begin + first.span.end};
  line.failure_type = first.code.failure_type ? first.code.failure_type_text() : cells.failure_type;
  line.module = front.module.empty() ? cells.module : front.module;
  line.status = cells.status ? cells.status : front.status;
  line.nothing_failed = cells.nothing_failed;
  if (is_seen_after_clearing({rest, words_of(rest)})) line.seen = CodeSeen::kAfterClearing;
  return true;
}

bool read_heading(const Words& words, ReportLine& line) {
  auto heading = read_report_heading(words.line, words.list);
  if (!heading) return false;
  line.kind = heading->kind;
  line.module = std::move(heading->module);
  line.plain_module = heading->plain;
  line.status = heading->status;
  return true;
}

bool read_freeze_head(const Words& words, ReportLine& line) {
  const bool frozen = words.size() > 1 && words.at(0) == "freeze" && words.at(1) == "frame";
  if (!frozen && words.at(0) != "snapshot" && words.at(0) != "freeze-frame") return false;
  line.kind = LineKind::kFreezeHead;
  line.freeze_frame = read_freeze_frame(words.line.substr(words.list[frozen ? 1 : 0].end));
  return true;
}

bool is_labelled(const Words& words) {
  const std::size_t colon = words.line.find_first_of(":=\t");
  return colon != words.line.npos && words.list[0].end <= colon;
}

bool read_detail_line(const Words& words, ReportLine& line) {
  if (!is_labelled(words) || !is_detail_label(words.at(0))) return false;
  line.kind = LineKind::kDetail;
  const std::size_t colon = words.line.find_first_of(":=\t");
  const CellReading cells = read_detail(words.at(0), words.line.substr(colon + 1));
  line.status = cells.status;
  line.failure_type = cells.failure_type;
  line.nothing_failed = cells.nothing_failed;
  return true;
}

void classify(std::string_view text, ReportLine& line) {
  const std::string_view own = text.substr(line.span.begin, line.span.end - line.span.begin);
  if (own.empty()) {
    line.kind = LineKind::kBlank;
    return;
  }
  const Words words{own, words_of(own)};
  if (words.size() == 0) {
    line.kind = LineKind::kRule;
    return;
  }
  if (read_code_line(text, line) || read_freeze_head(words, line)) return;
  if (read_detail_line(words, line)) return;
  if (find_codes(own).empty() && read_heading(words, line)) return;
  if (is_labelled(words) && is_header_label(words.at(0))) {
    line.kind = LineKind::kHeader;
    return;
  }
  line.freeze_frame = read_freeze_frame(own);
  if (!line.freeze_frame.empty()) line.kind = LineKind::kFreezeValues;
}

}  // namespace

std::vector<ReportLine> report_lines(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r";
  std::vector<ReportLine> lines;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::size_t first = std::min(text.find_first_not_of(kBlanks, begin), end);
    std::size_t last = end;
    while (last > first && kBlanks.find(text[last - 1]) != kBlanks.npos) --last;
    ReportLine line;
    line.span = {first, last};
    line.indent = first - begin;
    classify(text, line);
    lines.push_back(std::move(line));
    begin = end + 1;
  }
  return lines;
}

}  // namespace shoplore
