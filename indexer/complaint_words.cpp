#include "indexer/complaint_words.hpp"

#include <algorithm>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kFewestBytes = 3;

bool tells_something(const std::string& stem) {
  return stem.size() >= kFewestBytes &&
         std::none_of(stem.begin(), stem.end(), [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

std::vector<EvidenceItem> complaint_words(std::string_view text) {
  std::vector<EvidenceItem> words;
  for (const std::string& stem : index_words(text)) {
    if (tells_something(stem)) words.push_back({"word:" + stem, "present"});
  }
  std::sort(words.begin(), words.end());
  words.erase(std::unique(words.begin(), words.end()), words.end());
  return words;
}

std::vector<EvidenceItem> words_left_over(std::string_view text, const Recognised& recognised) {
  std::string left;
  for (const Span span : recognised.leftover) {
    left.append(text.substr(span.begin, span.end - span.begin)).append(" ");
  }
  return complaint_words(left);
}

}  // namespace shoplore
