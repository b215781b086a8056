#include "indexer/phrase_form.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string_view>
#include <utility>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool joins(std::string_view word) {
  return word == "and" || word == "or" || word == "but";
}

// "we'd", "it's", "they've": the person or thing, and what stands short behind it. A noun's "'s"
// tells whose it is and stays.
std::optional<std::pair<std::string, std::string>> contracted(const std::string& word) {
  const std::size_t mark = word.find('\'');
  if (mark == std::string::npos || mark == 0) return std::nullopt;
  const std::string who = word.substr(0, mark), end = word.substr(mark + 1);
  constexpr auto pronouns = std::to_array<std::string_view>(
      {"i", "we", "you", "he", "she", "they", "it", "that", "there", "who", "what"});
  if (std::find(pronouns.begin(), pronouns.end(), who) == pronouns.end()) return std::nullopt;
  for (const auto& [short_form, full] :
       {std::pair("d", "had"), {"ve", "have"}, {"s", "is"}, {"re", "are"}, {"ll", "will"}}) {
    if (end == short_form) return std::pair(who, std::string(full));
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::string> written_out(const std::string& word) {
  static const std::map<std::string, std::string, std::less<>> auxiliaries{
      {"won't", "will"},      {"wont", "will"},      {"can't", "can"},     {"cant", "can"},
      {"cannot", "can"},      {"doesn't", "does"},   {"doesnt", "does"},   {"don't", "do"},
      {"dont", "do"},         {"didn't", "did"},     {"didnt", "did"},     {"isn't", "is"},
      {"isnt", "is"},         {"wasn't", "was"},     {"wasnt", "was"},     {"aren't", "are"},
      {"arent", "are"},       {"hasn't", "has"},     {"hasnt", "has"},     {"haven't", "have"},
      {"havent", "have"},     {"hadn't", "had"},     {"hadnt", "had"},     {"wouldn't", "would"},
      {"wouldnt", "would"},   {"couldn't", "could"}, {"couldnt", "could"}, {"weren't", "were"},
      {"shouldn't", "should"}};
  if (const auto parts = contracted(word)) return {parts->first, parts->second};
  if (!word.ends_with('t')) return {word};
  const auto found = auxiliaries.find(word);
  if (found == auxiliaries.end()) return {word};
  return {found->second, "not"};
}

std::string comparable(const std::string& word) {
  std::string stemmed = stem(word);
  if (stemmed == "light") return "lamp";
  if (stemmed == "tire") return "tyre";
  if (stemmed == "would") return "will";
  return stemmed;
}

bool says_nothing(std::string_view word) {
  return is_stop_word(word) && !joins(word) && word != "all" && word != "after";
}

std::vector<std::string> phrase_form(const std::vector<std::string>& words) {
  std::vector<std::string> all, told;
  for (const std::string& word : words) {
    // "voltage on can": the last word of a phrase is no auxiliary verb.
    const bool is_network = word == "can" && &word == &words.back();
    for (const std::string& plain : written_out(word)) {
      all.push_back(comparable(plain));
      if (!says_nothing(plain) || is_network) told.push_back(all.back());
    }
  }
  return told.size() >= 2 ? told : all;
}

}  // namespace shoplore
