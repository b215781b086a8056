#include "indexer/complaint_words.hpp"

#include <algorithm>

#include "indexer/identity_removal.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kFewestBytes = 3;

bool tells_something(const std::string& stem) {
  return stem.size() >= kFewestBytes &&
         std::none_of(stem.begin(), stem.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// Without what stands for a removed identity, which nobody said.
std::string as_said(std::string_view text) {
  std::string said;
  for (auto at = text.find(kRemoved); at != text.npos; at = text.find(kRemoved)) {
    said.append(text.substr(0, at)).append(" ");
    text.remove_prefix(at + kRemoved.size());
  }
  return said.append(text);
}

}  // namespace

std::vector<EvidenceItem> complaint_words(std::string_view text) {
  std::vector<EvidenceItem> words;
  for (const std::string& stem : index_words(as_said(text))) {
    if (tells_something(stem)) words.push_back({"word:" + stem, "present"});
  }
  std::sort(words.begin(), words.end());
  words.erase(std::unique(words.begin(), words.end()), words.end());
  return words;
}

}  // namespace shoplore
