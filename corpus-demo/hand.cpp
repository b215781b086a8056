#include "corpus-demo/hand.hpp"

#include <array>
#include <string_view>
#include <utility>
#include <vector>

namespace shoplore {
namespace {

// Written shorter by some hands. Whole words only.
constexpr std::array<std::pair<std::string_view, std::string_view>, 26> kShorter{
    {{"replaced", "repl"},   {"checked", "chkd"},      {"cylinder", "cyl"},
     {"engine", "eng"},      {"connector", "conn"},    {"power", "pwr"},
     {"bearing", "brg"},     {"wastegate", "w/gate"},  {"gearbox", "g/box"},
     {"customer", "cust"},   {"adjusted", "adj"},      {"without", "w/o"},
     {"with", "w/"},         {"pressure", "press"},    {"temperature", "temp"},
     {"battery", "batt"},    {"alternator", "alt"},    {"steering", "strg"},
     {"voltage", "volts"},   {"exhaust", "exh"},       {"manifold", "mani"},
     {"suspension", "susp"}, {"coolant", "clnt"},      {"intermittent", "interm"},
     {"between", "btwn"},    {"turbocharger", "turbo"}}};

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string shortened(const std::string& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i;
    while (end < text.size() && is_letter(text[end])) ++end;
    std::string word = text.substr(i, end - i);
    for (const auto& [full, brief] : kShorter) {
      if (word == full) word = brief;
    }
    result += word;
    if (end < text.size()) result += text[end];
    i = end + 1;
  }
  return result;
}

void capitalise(std::string& text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
}

// One letter of a longer word left out or struck twice.
void slip(std::string& text, Random& random) {
  if (text.size() < 12) return;
  const auto at =
      static_cast<std::size_t>(random.integer(2, static_cast<std::int64_t>(text.size()) - 4));
  if (!is_letter(text[at - 2]) || !is_letter(text[at - 1]) || !is_letter(text[at]) ||
      !is_letter(text[at + 1])) {
    return;
  }
  if (random.chance(0.5)) {
    text.erase(at, 1);
  } else {
    text.insert(at, 1, text[at]);
  }
}

}  // namespace

void swap_letters(std::string& text, Random& random) {
  for (int attempt = 0; attempt < 8 && text.size() > 8; ++attempt) {
    const auto at =
        static_cast<std::size_t>(random.integer(2, static_cast<std::int64_t>(text.size()) - 4));
    if (is_letter(text[at - 2]) && is_letter(text[at - 1]) && is_letter(text[at]) &&
        is_letter(text[at + 1])) {
      std::swap(text[at - 1], text[at]);
      return;
    }
  }
}

void double_a_word(std::string& text, Random& random) {
  std::vector<std::pair<std::size_t, std::size_t>> words;  // start, length
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i;
    while (end < text.size() && is_letter(text[end])) ++end;
    if (end > i + 2) words.emplace_back(i, end - i);
    i = end + 1;
  }
  if (words.size() < 2) return;
  const auto [start, length] = random.one_of(words);
  text.insert(start, text.substr(start, length) + " ");
}

void change_case(std::string& text, Letters to) {
  const char from = to == Letters::kCapitals ? 'a' : 'A';
  for (char& c : text) {
    if (c >= from && c <= from + 25) c = static_cast<char>(c ^ 0x20);
  }
}

std::string in_some_hand(std::string text, Random& random) {
  if (random.chance(0.35)) text = shortened(text);
  if (random.chance(0.10)) swap_letters(text, random);
  if (random.chance(0.05)) slip(text, random);
  const double letter_case = random.uniform();
  if (letter_case < 0.05) {
    change_case(text, Letters::kCapitals);
  } else if (letter_case < 0.40) {
    change_case(text, Letters::kSmall);
  } else {
    capitalise(text);
  }
  return text;
}

}  // namespace shoplore
