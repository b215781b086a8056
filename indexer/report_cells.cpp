#include "indexer/report_cells.hpp"

#include <algorithm>
#include <vector>

#include "indexer/code_status_bits.hpp"
#include "indexer/code_words.hpp"
#include "indexer/module_names.hpp"
#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool is_hex_pair(std::string_view word) {
  return word.size() == 2 && word.find_first_not_of("0123456789abcdefABCDEF") == word.npos;
}

std::string upper(std::string_view word) {
  std::string text(word);
  for (char& c : text) c = c >= 'a' && c <= 'f' ? static_cast<char>(c - 'a' + 'A') : c;
  return text;
}

// The columns in order; an empty column between two separators stays as an empty cell.
std::vector<std::string_view> cells_of(std::string_view rest) {
  constexpr std::string_view kSeparators = "\t|;", kBrackets = "()[]";
  std::vector<std::string_view> cells;
  std::size_t begin = 0;
  bool separated = false;  // by a separator before
  for (std::size_t i = 0; i <= rest.size(); ++i) {
    const bool wide = rest.substr(i).starts_with(" - ") || rest.substr(i).starts_with("  ");
    const bool separator = i < rest.size() && kSeparators.find(rest[i]) != kSeparators.npos;
    const bool bracket = i < rest.size() && kBrackets.find(rest[i]) != kBrackets.npos;
    if (i < rest.size() && !wide && !separator && !bracket) continue;
    const std::string_view cell = i > begin ? rest.substr(begin, i - begin) : "";
    const bool blank = cell.find_first_not_of(' ') == cell.npos;
    if (!blank) cells.push_back(cell);
    if (blank && separated && separator) cells.emplace_back();
    separated = separator;
    begin = i + (wide ? 2 : 1);
  }
  return cells;
}

class CellReader {
 public:
  explicit CellReader(FailureType failure_type)
      : type_given_(failure_type == FailureType::kAlreadyGiven) {}

  void read(std::string_view cell) {
    if (cell.empty()) type_given_ = true;  // the column of the failure type is there, and empty
    const std::vector<Word> words = words_of(cell);
    if (words.empty() || read_bytes(words) || read_status(words)) return;
    described_ = true;
    const auto module = module_at(words, 0);
    if (module && module->words == words.size() && reading_.module.empty()) {
      reading_.module = cell.substr(words.front().begin, words.back().end - words.front().begin);
    }
  }

  // A description with a word of status before or after it, and a failure type before it.
  void read_first(std::string_view cell) {
    std::vector<Word> words = words_of(cell);
    if (words.size() < 2) return read(cell);
    const bool type_first = !type_given_ && is_hex_pair(words[0].text) &&
                            !is_reading_unit(words[1].text) && words[0].begin <= 1;
    if (type_first) {
      take_type(words[0].text);
      words.erase(words.begin());
    }
    read(cell.substr(words.front().begin));
    read_ends(words);
  }

  void read_ends(const std::vector<Word>& words) {
    for (const Word& word : {words.front(), words.back()}) {
      if (!is_word_of_other_things(word.text)) take_status(status_of_word(word.text));
    }
  }

  CellReading reading() { return std::move(reading_); }

  void take_byte(std::string_view pair) {
    const auto value = static_cast<std::uint8_t>(std::stoi(std::string(pair), nullptr, 16));
    const auto status = code_status(value);
    reading_.nothing_failed = !status;
    take_status(status);
  }
  void take_type(std::string_view pair) {
    reading_.failure_type = upper(pair);
    type_given_ = true;
  }

 private:
  void take_status(std::optional<CodeStatus> status) {
    if (!status) return;
    if (!reading_.status || sureness(*status) > sureness(*reading_.status)) {
      reading_.status = status;
    }
  }

  // "16", "2F", "0x2F", "status 08".
  bool read_bytes(const std::vector<Word>& words) {
    const bool labelled = words[0].text == "status" || words[0].text == "state";
    const std::size_t at = labelled ? 1 : 0;
    if (at >= words.size()) return false;
    std::string_view word = words[at].text;
    const bool prefixed = word.starts_with("0x");
    if (prefixed) word.remove_prefix(2);
    if (!is_hex_pair(word) || (words.size() > at + 1 && !prefixed)) return false;
    if (!labelled && !prefixed && described_) return false;  // a count, as likely
    if (!labelled && !prefixed && !type_given_) {
      take_type(word);
    } else {
      take_byte(word);
    }
    return true;
  }

  // A cell of nothing but status: "Stored", "confirmed, pending", "not active", "Status: stored".
  bool read_status(const std::vector<Word>& words) {
    std::optional<CodeStatus> surest;
    bool turned = false;
    for (const Word& word : words) {
      const auto status = status_of_word(word.text);
      if (status && (!surest || sureness(*status) > sureness(*surest))) surest = status;
      turned = turned || word.text == "not";
      const bool filler = word.text == "status" || word.text == "state" || word.text == "not" ||
                          word.text == "and" || word.text == "currently" || says_code(word.text);
      if (!status && !filler) return false;
    }
    if (!surest) return false;
    take_status(turned ? CodeStatus::kHistory : *surest);
    return true;
  }

  CellReading reading_;
  bool type_given_;
  bool described_ = false;  // a column of description was seen
};

}  // namespace

CellReading read_cells(std::string_view rest, FailureType failure_type) {
  CellReader reader(failure_type);
  const std::vector<std::string_view> cells = cells_of(rest);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i == 0) {
      reader.read_first(cells[i]);
    } else {
      reader.read(cells[i]);
      if (i + 1 == cells.size() && words_of(cells[i]).size() > 1) {
        reader.read_ends(words_of(cells[i]));
      }
    }
  }
  return reader.reading();
}

CellReading read_detail(std::string_view label, std::string_view value) {
  CellReader reader(label == "status" || label == "state" ? FailureType::kAlreadyGiven
                                                          : FailureType::kMayFollow);
  const bool is_type =
      label == "failure" || label == "ftb" || label == "subtype" || label == "type";
  if (is_type || label == "status" || label == "state") {
    for (const std::string_view cell : cells_of(value)) reader.read(cell);
  }
  return reader.reading();
}

}  // namespace shoplore
