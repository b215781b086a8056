#include "indexer/phrase_form.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool joins(std::string_view word) {
  return word == "and" || word == "or" || word == "but";
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
    for (const std::string& plain : written_out(word)) {
      all.push_back(comparable(plain));
      if (!says_nothing(plain)) told.push_back(all.back());
    }
  }
  return told.size() >= 2 ? told : all;
}

}  // namespace shoplore
