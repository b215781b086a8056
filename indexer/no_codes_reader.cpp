#include "indexer/no_codes_reader.hpp"

#include "indexer/code_words.hpp"

namespace shoplore {
namespace {

// "no codes", "no stored DTCs", "0 codes", "codes: none", "nothing stored".
class NoCodesReader {
 public:
  explicit NoCodesReader(NotePage& page) : page_(page) {}

  void read() {
    for (std::size_t i = 0; i < page_.size(); ++i) {
      if (page_.is_claimed(i)) continue;
      const std::size_t end = end_of(i);
      if (end == 0) continue;
      page_.take(
          recognised_item(ItemKind::kScanned, std::string(kNoCodes), page_.span_of({i, end})));
      i = end - 1;
    }
  }

 private:
  bool here(std::size_t i, std::size_t anchor) const {
    return page_.same_clause(i, anchor) && !page_.is_claimed(i);
  }

  // End of the words that begin here and say that there are no codes; 0 otherwise.
  std::size_t end_of(std::size_t i) const {
    const std::string& word = page_.word(i);
    if (word == "nothing") {
      const bool stored =
          here(i + 1, i) && status_of_word(page_.word(i + 1)) == CodeStatus::kStored;
      return stored ? i + 2 : 0;
    }
    if (word == "no" || word == "0" || word == "zero" || word == "without") return end_of_denial(i);
    return says_code(word) ? end_of_none(i) : 0;
  }

  std::size_t end_of_denial(std::size_t i) const {
    std::size_t at = i + 1;
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
    const std::string_view gap = page_.text().substr(
        page_.token(at - 1).end, page_.token(at).begin - page_.token(at - 1).end);
    if (gap.find_first_of(",;.\n") != gap.npos) return 0;
    return word == "none" || word == "nil" || word == "0" ? at + 1 : 0;
  }

  NotePage& page_;
};

}  // namespace

void read_no_codes(NotePage& page) {
  NoCodesReader(page).read();
}

}  // namespace shoplore
