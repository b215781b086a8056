#include "indexer/text.hpp"

#include <xapian.h>
#include <algorithm>
#include <array>
#include <cstdint>
#include <unordered_map>
#include <unordered_set>

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

enum class Sort { kWord, kApostrophe, kOther };

struct Character {
  Sort sort = Sort::kOther;
  std::size_t length = 1;  // bytes
};

// Punctuation beyond ASCII: the signs of Latin-1 and the block General Punctuation, which a
// tablet's keyboard puts in by itself (dashes, quotes, no-break spaces).
bool is_punctuation(std::uint32_t code_point) {
  return (code_point >= 0xA0 && code_point <= 0xBF) || code_point == 0xD7 || code_point == 0xF7 ||
         (code_point >= 0x2000 && code_point <= 0x206F);
}

bool is_plain(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

Character character_at(std::string_view text, std::size_t at) {
  constexpr std::uint32_t kRightSingleQuote = 0x2019;
  const char c = text[at];
  if (c == '\'') return {Sort::kApostrophe, 1};
  const auto byte = [&](std::size_t i) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[at + i]));
  };
  if (byte(0) < 0x80) {
    return {is_plain(c) ? Sort::kWord : Sort::kOther, 1};
  }
  const std::size_t length = sequence_length(text.substr(at));
  std::uint32_t code_point = 0;
  if (length == 2) code_point = (byte(0) & 0x1FU) << 6U | (byte(1) & 0x3FU);
  if (length == 3) {
    code_point = (byte(0) & 0x0FU) << 12U | (byte(1) & 0x3FU) << 6U | (byte(2) & 0x3FU);
  }
  if (code_point == kRightSingleQuote) return {Sort::kApostrophe, length};
  return {is_punctuation(code_point) ? Sort::kOther : Sort::kWord,
          std::max<std::size_t>(length, 1)};
}

// Whether the bytes at i are the second byte of an upper-case Latin-1 letter after its 0xC3.
bool is_latin_capital(std::string_view text, std::size_t i) {
  if (i == 0 || static_cast<unsigned char>(text[i - 1]) != 0xC3) return false;
  const auto byte = static_cast<unsigned char>(text[i]);
  return byte >= 0x80 && byte <= 0x9E && byte != 0x97;  // 0x97 is the multiplication sign
}

}  // namespace

std::vector<Word> words_of(std::string_view text) {
  std::vector<Word> words;
  std::size_t i = 0;
  while (i < text.size()) {
    Character now = character_at(text, i);
    if (now.sort != Sort::kWord) {
      i += now.length;
      continue;
    }
    Word word{"", i, i};
    while (now.sort == Sort::kWord) {
      // A run of plain letters and digits at once: nearly every word is one.
      std::size_t end = i + now.length;
      while (end < text.size() && is_plain(text[end])) ++end;
      word.text += text.substr(i, end - i);
      i = end;
      word.end = i;
      if (i >= text.size()) break;
      now = character_at(text, i);
      const std::size_t next = i + now.length;
      const bool joins = now.sort == Sort::kApostrophe && next < text.size() &&
                         character_at(text, next).sort == Sort::kWord;
      if (!joins) continue;
      word.text += '\'';
      i = next;
      now = character_at(text, i);
    }
    word.text = lower_case(word.text);
    words.push_back(std::move(word));
  }
  return words;
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (std::size_t i = 0; i < lower.size(); ++i) {
    const char c = text[i];
    if (c >= 'A' && c <= 'Z') lower[i] = static_cast<char>(c - 'A' + 'a');
    if (is_latin_capital(text, i))
      lower[i] = static_cast<char>(static_cast<unsigned char>(c) + 0x20);
  }
  return lower;
}

std::string stem(const std::string& word) {
  // One stemmer a thread: it keeps a buffer, and making one costs more than a stem.
  thread_local const Xapian::Stem stemmer("en");
  // A workshop's texts and the vocabulary say the same few thousand words over and over.
  constexpr std::size_t kMostKept = 16'384;
  thread_local std::unordered_map<std::string, std::string> kept;
  if (const auto known = kept.find(word); known != kept.end()) return known->second;
  if (kept.size() >= kMostKept) kept.clear();
  return kept.emplace(word, stemmer(word)).first->second;
}

bool is_stop_word(std::string_view word) {
  static const std::unordered_set<std::string_view> words(kStopWords.begin(), kStopWords.end());
  return words.contains(word);
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
