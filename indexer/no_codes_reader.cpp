#include "indexer/no_codes_reader.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "indexer/code_words.hpp"
#include "indexer/module_names.hpp"

namespace shoplore {
namespace {

// "no codes", "no stored DTCs", "0 codes", "codes: none", "nothing stored".
class NoCodesReader {
 public:
  explicit NoCodesReader(NotePage& page) : page_(page) {}

  void read() {
    const bool any = std::any_of(page_.items().begin(), page_.items().end(),
                                 [](const auto& item) { return item.kind == ItemKind::kCode; });
    for (std::size_t i = 0; i < page_.size(); ++i) {
      if (page_.is_claimed(i)) continue;
      const std::size_t end = end_of(i);
      if (end == 0) continue;
      const Span span = page_.span_of({i, end});
      page_.claim({i, end});
      claim_module(span);
      // Codes elsewhere in the text: the scan did find some.
      if (!any) page_.keep(recognised_item(ItemKind::kScanned, std::string(kNoCodes), span));
      i = end - 1;
    }
  }

 private:
  bool here(std::size_t i, std::size_t anchor) const {
    return page_.same_clause(i, anchor) && !page_.is_claimed(i);
  }

  // "no codes in ECM", "ECM: no codes".
  void claim_module(Span span) {
    if (const auto module = module_before(page_.text(), span.begin)) {
      page_.claim(page_.tokens_at(*module));
    }
    if (const auto module = module_after(page_.text(), span.end)) {
      page_.claim(page_.tokens_at(module->span));
    }
  }

  // "no ABS codes".
  std::size_t skip_module(std::size_t i) const {
    constexpr std::size_t kLongest = 4;
    std::vector<Word> words;
    for (std::size_t k = i; k < i + kLongest && here(k, i); ++k)
      words.push_back({page_.word(k), 0, 0});
    const auto module = module_at(words, 0);
    return module ? i + module->words : i;
  }

  static bool is_scan(std::string_view word) {
    return word == "scan" || word == "scanned" || word == "memory";
  }

  // "scan: nothing found", "scan clean", "fault memory empty"; of a scan also "no faults".
  std::size_t end_of_scan(std::size_t i) const {
    const std::size_t at = i + 1;
    if (at >= page_.size() || page_.is_claimed(at) || !close(i, at)) return 0;
    const std::string& word = page_.word(at);
    const bool faults = word == "no" && here(at + 1, at) && says_code(page_.word(at + 1));
    const bool nothing = word == "nothing" && here(at + 1, at) && says_there(page_.word(at + 1));
    if (faults || nothing) {
      const bool found = here(at + 2, at) && says_there(page_.word(at + 2));
      return at + (faults && found ? 3 : 2);
    }
    return word == "clean" || word == "clear" || word == "empty" || word == "blank" ? at + 1 : 0;
  }

  // On one line and in one sentence.
  bool close(std::size_t i, std::size_t j) const {
    const std::string_view gap = page_.between(i, j);
    return gap.find_first_of(";.\n") == gap.npos;
  }

  // End of the words that begin here and say that there are no codes; 0 otherwise.
  std::size_t end_of(std::size_t i) const {
    const std::string& word = page_.word(i);
    if (word == "nothing") {
      const bool stored =
          here(i + 1, i) && status_of_word(page_.word(i + 1)) == CodeStatus::kStored;
      return stored ? i + 2 : 0;
    }
    if (is_scan(word)) return end_of_scan(i);
    if (word == "no" || word == "0" || word == "zero" || word == "without") return end_of_denial(i);
    return says_code(word) ? end_of_none(i) : 0;
  }

  std::size_t end_of_denial(std::size_t i) const {
    std::size_t at = skip_module(i + 1);
    bool codes = false, words = false, stored = false;
    while (here(at, i)) {
      const std::string& word = page_.word(at);
      const auto status = status_of_word(word);
      if (!says_code(word) && !status && word != "any") break;
      // "no permanent codes" leaves room for others.
      if (status && *status != CodeStatus::kStored && *status != CodeStatus::kActive) return 0;
      codes = codes || says_only_code(word);
      words = words || says_code(word);
      stored = stored || status == CodeStatus::kStored;
      ++at;
    }
    if (!codes && !(words && stored)) return 0;
    const bool found = here(at, i) && says_there(page_.word(at));
    return found ? at + 1 : at;
  }

  std::size_t end_of_none(std::size_t i) const {
    std::size_t at = i;
    bool codes = false;
    while (at < page_.size() && !page_.is_claimed(at) && says_code(page_.word(at))) {
      codes = codes || says_only_code(page_.word(at));
      ++at;
    }
    if (!codes || at >= page_.size() || page_.is_claimed(at)) return 0;
    const std::string& word = page_.word(at);
    if (!close(at - 1, at)) return 0;
    return word == "none" || word == "nil" || word == "0" ? at + 1 : 0;
  }

  NotePage& page_;
};

}  // namespace

void read_no_codes(NotePage& page) {
  NoCodesReader(page).read();
}

}  // namespace shoplore
