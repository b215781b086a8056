#include "indexer/text.hpp"

#include <xapian.h>
#include <algorithm>
#include <array>

namespace shoplore {
namespace {

// Words of workshop notes that carry no finding; negations and "on"/"off" are kept.
constexpr auto kStopWords = std::to_array<std::string_view>(
    {"a",     "about", "after", "again", "all", "also",  "am",   "an",    "and",  "any",  "are",
     "as",    "at",    "be",    "been",  "but", "by",    "can",  "car",   "came", "come", "comes",
     "could", "did",   "do",    "does",  "for", "from",  "get",  "gets",  "got",  "had",  "has",
     "have",  "he",    "her",   "him",   "his", "i",     "if",   "in",    "into", "is",   "it",
     "its",   "just",  "me",    "my",    "now", "of",    "or",   "our",   "said", "says", "she",
     "so",    "some",  "than",  "that",  "the", "their", "then", "there", "they", "this", "to",
     "up",    "us",    "van",   "very",  "was", "we",    "were", "with",  "you"});

bool is_word_byte(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         (static_cast<unsigned char>(c) & 0x80U) != 0;
}

// Length of the well-formed sequence at the front, 0 when there is none.
std::size_t sequence_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return 1;
  const std::size_t length = lead >= 0xC2 && lead <= 0xDF   ? 2
                             : lead >= 0xE0 && lead <= 0xEF ? 3
                             : lead >= 0xF0 && lead <= 0xF4 ? 4
                                                            : 0;
  if (length == 0 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return 0;
  }
  const bool overlong = (lead == 0xE0 && byte(1) < 0xA0) || (lead == 0xF0 && byte(1) < 0x90);
  const bool surrogate = lead == 0xED && byte(1) > 0x9F;
  const bool too_large = lead == 0xF4 && byte(1) > 0x8F;
  return overlong || surrogate || too_large ? 0 : length;
}

}  // namespace

std::vector<Word> words_of(std::string_view text) {
  std::vector<Word> words;
  std::size_t i = 0;
  while (i < text.size()) {
    if (!is_word_byte(text[i])) {
      ++i;
      continue;
    }
    const std::size_t begin = i;
    while (i < text.size() && (is_word_byte(text[i]) || (text[i] == '\'' && i + 1 < text.size() &&
                                                         is_word_byte(text[i + 1])))) {
      ++i;
    }
    words.push_back({lower_case(text.substr(begin, i - begin)), begin, i});
  }
  return words;
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

std::string stem(const std::string& word) {
  // One stemmer a thread: it keeps a buffer, and making one costs more than a stem.
  thread_local const Xapian::Stem stemmer("en");
  return stemmer(word);
}

bool is_stop_word(std::string_view word) {
  return std::find(kStopWords.begin(), kStopWords.end(), word) != kStopWords.end();
}

std::vector<std::string> index_words(std::string_view text) {
  constexpr std::size_t kLongest = 64;
  std::vector<std::string> stems;
  for (const Word& word : words_of(text)) {
    if (word.text.size() <= kLongest && !is_stop_word(word.text)) stems.push_back(stem(word.text));
  }
  return stems;
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = sequence_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

}  // namespace shoplore
