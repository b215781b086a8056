// A hand-written scanner: it looks at every place where a word begins with P, C, B or U, then
// walks on through the list that may follow.
#include "indexer/code_spelling.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_hex_digit(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}
bool is_letter_o(char c) {
  return c == 'o' || c == 'O';
}
bool is_word_char(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         (static_cast<unsigned char>(c) & 0x80U) != 0;
}
char at(std::string_view text, std::size_t i) {
  return i < text.size() ? text[i] : '\0';
}
std::size_t skip_blanks(std::string_view text, std::size_t i) {
  while (at(text, i) == ' ' || at(text, i) == '\t') ++i;
  return i;
}

std::string word_at(std::string_view text, std::size_t begin) {
  std::size_t end = begin;
  while (is_word_char(at(text, end))) ++end;
  return lower_case(text.substr(begin, end - begin));
}

bool number_before(std::string_view text, std::size_t i) {
  while (i > 0 && text[i - 1] == ' ') --i;
  return i > 0 && is_digit(text[i - 1]);
}

// What makes the letter of "C 2016", "80 C 1200" and "C 1200 rpm" no code's.
bool is_apart_by_chance(std::string_view text, std::size_t letter, std::size_t digits) {
  const bool is_p = text[letter] == 'P' || text[letter] == 'p';
  const std::string_view two = text.substr(digits, 2);
  if (!is_p && (two == "20" || two == "19" || number_before(text, letter))) return true;
  const std::string after = word_at(text, skip_blanks(text, digits + 4));
  return two[0] != '0' && (is_reading_unit(after) || is_since_unit(after));
}

// End of the failure type after the code that ends here, as "-16", ":16" or " FTB 16"; else 0.
std::size_t failure_type_end(std::string_view text, std::size_t i) {
  std::size_t digits = i + 1;
  if (at(text, i) != '-' && at(text, i) != ':') {
    const std::size_t word = skip_blanks(text, i);
    const std::string name = word > i ? word_at(text, word) : "";
    if (name != "ftb" && name != "subtype" && name != "sub") return 0;
    digits = skip_blanks(text, word + name.size());
  }
  const bool is_type = is_hex_digit(at(text, digits)) && is_hex_digit(at(text, digits + 1)) &&
                       !is_word_char(at(text, digits + 2));
  return is_type ? digits + 2 : 0;
}

struct Digits {
  std::string text;  // four hex digits, letters O made zeros
  bool had_letter_o = false;
};

std::optional<Digits> four_digits(std::string_view text, std::size_t begin) {
  Digits digits;
  int real = 0;
  for (std::size_t i = begin; i < begin + 4; ++i) {
    const char c = at(text, i);
    if (!is_hex_digit(c) && !is_letter_o(c)) return std::nullopt;
    digits.had_letter_o = digits.had_letter_o || is_letter_o(c);
    if (is_digit(c)) ++real;
    digits.text += is_letter_o(c) ? '0' : c;
  }
  // "COCOA" is a word.
  if (digits.had_letter_o && real < 2) return std::nullopt;
  if (digits.text[0] < '0' || digits.text[0] > '3') return std::nullopt;
  return digits;
}

std::optional<SpelledCode> make(std::string_view text, const std::string& spelt, std::size_t begin,
                                std::size_t end, std::string_view how) {
  auto code = parse_fault_code(spelt);
  if (!code) return std::nullopt;
  SpelledCode found{*code, {begin, end}, ""};
  if (!how.empty()) {
    found.reading_chosen =
        fmt::format("'{}' taken as {}{}", text.substr(begin, end - begin), code->text(), how);
  }
  if (const std::size_t type_end = failure_type_end(text, end); type_end > 0) {
    const auto typed = parse_fault_code(fmt::format("{}-{}", spelt, text.substr(type_end - 2, 2)));
    if (typed) found.code = *typed;
    found.span.end = type_end;
  }
  return found;
}

std::optional<SpelledCode> code_at(std::string_view text, std::size_t begin) {
  if (std::string_view("PCBUpcbu").find(text[begin]) == std::string_view::npos) return std::nullopt;
  std::size_t i = begin + 1;
  const bool apart = at(text, i) == ' ' || at(text, i) == '-';
  if (apart) ++i;
  const auto digits = four_digits(text, i);
  if (!digits || is_word_char(at(text, i + 4))) return std::nullopt;
  if (apart && (digits->had_letter_o || is_apart_by_chance(text, begin, i))) return std::nullopt;
  const std::string_view how = digits->had_letter_o ? " (letter O for zero)" : "";
  return make(text, text[begin] + digits->text, begin, i + 4, how);
}

// "0234" after "P0299/" or "P0299, ".
std::optional<SpelledCode> code_without_letter(std::string_view text, const SpelledCode& before) {
  const std::size_t sign = skip_blanks(text, before.span.end);
  if (std::string_view("/,&+").find(at(text, sign)) == std::string_view::npos) return std::nullopt;
  if (sign >= text.size()) return std::nullopt;
  const std::size_t begin = skip_blanks(text, sign + 1);
  std::size_t end = begin;
  while (is_hex_digit(at(text, end))) ++end;
  if (end - begin != 4 || text[begin] != '0' || is_word_char(at(text, end))) return std::nullopt;
  if (at(text, end) == '.' && is_digit(at(text, end + 1))) return std::nullopt;
  return make(text, before.code.text().substr(0, 1) + std::string(text.substr(begin, 4)), begin,
              end, "");
}

// "174" or "4" after "P0171/".
std::optional<SpelledCode> code_by_its_end(std::string_view text, const SpelledCode& before) {
  const std::size_t slash = skip_blanks(text, before.span.end);
  if (at(text, slash) != '/' || before.code.failure_type) return std::nullopt;
  const std::size_t begin = skip_blanks(text, slash + 1);
  const bool spaced = begin - before.span.end > 1;
  std::size_t end = begin;
  while (is_digit(at(text, end))) ++end;
  const std::size_t size = end - begin;
  if (spaced && size != 3) return std::nullopt;
  if (size < 1 || size > 3 || is_word_char(at(text, end))) return std::nullopt;
  if (at(text, end) == '.' && is_digit(at(text, end + 1))) return std::nullopt;
  const std::string after = word_at(text, skip_blanks(text, end));
  if (after != "a" && is_reading_unit(after)) return std::nullopt;
  const std::string spelt =
      before.code.text().substr(0, 5 - size) + std::string(text.substr(begin, size));
  // A list goes up; "P0299/1" is something else.
  if (spelt <= before.code.text()) return std::nullopt;
  return make(text, spelt, begin, end, "");
}

std::optional<SpelledCode> next_in_list(std::string_view text, const SpelledCode& before) {
  auto next = code_without_letter(text, before);
  if (!next) next = code_by_its_end(text, before);
  if (!next) return std::nullopt;
  next->reading_chosen = fmt::format(
      "'{}' after {} taken as {}", text.substr(next->span.begin, next->span.end - next->span.begin),
      before.code.text(), next->code.text());
  return next;
}

}  // namespace

std::vector<SpelledCode> find_codes(std::string_view text) {
  std::vector<SpelledCode> codes;
  for (std::size_t i = 0; i < text.size();) {
    auto code = i == 0 || !is_word_char(text[i - 1]) ? code_at(text, i) : std::nullopt;
    if (!code) {
      ++i;
      continue;
    }
    for (; code; code = next_in_list(text, codes.back())) {
      i = code->span.end;
      codes.push_back(std::move(*code));
    }
  }
  return codes;
}

bool are_listed(std::string_view text, Span first, Span second) {
  std::string_view between = text.substr(first.end, second.begin - first.end);
  constexpr auto kJoins = std::to_array<std::string_view>({" ", "\t", ",", "/", "&", "+"});
  bool joined = true;
  while (joined && !between.empty()) {
    joined = false;
    const std::string word = word_at(between, 0);
    if (word == "and" || word == "or") {
      between.remove_prefix(word.size());
      joined = true;
    }
    for (const std::string_view join : kJoins) {
      if (!between.starts_with(join)) continue;
      between.remove_prefix(join.size());
      joined = true;
    }
  }
  return between.empty();
}

}  // namespace shoplore
