// Words of a text, the same way for records and questions: lower case, stemmed, stop words told
// apart.
//
// Splits at everything that is neither letter nor digit: ASCII punctuation, the signs of Latin-1
// and General Punctuation (dashes, quotes, no-break spaces). All other bytes above 0x7f belong to
// words, so UTF-8 stays whole. Stems with the Snowball English stemmer (Porter 2).
// Accents are kept (folded_text.hpp drops them). Takes malformed UTF-8 without complaint.
// Pure functions, any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace shoplore {

struct Word {
  std::string text;                // as lower_case, every apostrophe as '
  std::size_t begin = 0, end = 0;  // its bytes in the text, half-open
};

// Words in text order. An apostrophe between letters, typewriter's or printer's, belongs to the
// word ("won't").
[[nodiscard]] std::vector<Word> words_of(std::string_view text);

// Lower case of the letters of ASCII and Latin-1 (U+0000 to U+00FF); other bytes as they are, so
// length and UTF-8 stay.
[[nodiscard]] std::string lower_case(std::string_view text);

// Stem of a lower-case word: "whistling" and "whistles" become "whistl".
[[nodiscard]] std::string stem(const std::string& word);

// Whether the lower-case word says nothing by itself ("the", "with"). Never a word that turns a
// finding round ("no", "not", "off").
[[nodiscard]] bool is_stop_word(std::string_view word);

// Stems of all words but stop words, in text order, as the index holds them. Words longer than
// 64 bytes are left out.
[[nodiscard]] std::vector<std::string> index_words(std::string_view text);

// Whether the bytes are well-formed UTF-8 (RFC 3629: no overlong forms, no surrogates).
[[nodiscard]] bool is_utf8(std::string_view text);

}  // namespace shoplore
