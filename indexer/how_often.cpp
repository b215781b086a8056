#include "indexer/how_often.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace shoplore {
namespace {

constexpr std::size_t kLongest = 4;  // words

struct Phrase {
  HowOften how_often;
  std::array<std::string_view, kLongest> words;  // empty past its end
};

// Longest first where one begins another.
constexpr auto kPhrases = std::to_array<Phrase>({
    {HowOften::kSometimes, {"not", "every", "time"}},
    {HowOften::kSometimes, {"not", "all", "the", "time"}},
    {HowOften::kSometimes, {"not", "always"}},
    {HowOften::kSometimes, {"not", "constant"}},
    {HowOften::kSometimes, {"now", "and", "then"}},
    {HowOften::kSometimes, {"now", "and", "again"}},
    {HowOften::kSometimes, {"on", "and", "off"}},
    {HowOften::kSometimes, {"off", "and", "on"}},
    {HowOften::kSometimes, {"from", "time", "to", "time"}},
    {HowOften::kSometimes, {"once", "in", "a", "while"}},
    {HowOften::kSometimes, {"comes", "and", "goes"}},
    {HowOften::kSometimes, {"at", "times"}},
    {HowOften::kSometimes, {"sometimes"}},
    {HowOften::kSometimes, {"occasionally"}},
    {HowOften::kSometimes, {"occasional"}},
    {HowOften::kSometimes, {"intermittent"}},
    {HowOften::kSometimes, {"intermittently"}},
    {HowOften::kSometimes, {"randomly"}},
    {HowOften::kSometimes, {"rarely"}},
    {HowOften::kOften, {"most", "of", "the", "time"}},
    {HowOften::kOften, {"nearly", "always"}},
    {HowOften::kOften, {"almost", "always"}},
    {HowOften::kOften, {"many", "times"}},
    {HowOften::kOften, {"most", "days"}},
    {HowOften::kOften, {"most", "times"}},
    {HowOften::kOften, {"most", "mornings"}},
    {HowOften::kOften, {"most", "nights"}},
    {HowOften::kOften, {"most", "starts"}},
    {HowOften::kOften, {"a", "lot"}},
    {HowOften::kSometimes, {"once", "or", "twice"}},
    {HowOften::kSometimes, {"twice", "a", "week"}},
    {HowOften::kSometimes, {"twice", "this", "week"}},
    {HowOften::kSometimes, {"twice", "this", "wk"}},
    {HowOften::kSometimes, {"twice", "last", "week"}},
    {HowOften::kSometimes, {"a", "few", "times"}},
    {HowOften::kSometimes, {"few", "times"}},
    {HowOften::kSometimes, {"every", "now", "and", "then"}},
    {HowOften::kSometimes, {"every", "now", "and", "again"}},
    {HowOften::kOften, {"more", "often", "than", "not"}},
    {HowOften::kOften, {"nearly", "every", "time"}},
    {HowOften::kSometimes, {"once", "a", "week"}},
    {HowOften::kSometimes, {"once", "a", "month"}},
    {HowOften::kSometimes, {"every", "so", "often"}},
    {HowOften::kSometimes, {"every", "few", "days"}},
    {HowOften::kSometimes, {"some", "days"}},
    {HowOften::kSometimes, {"some", "mornings"}},
    {HowOften::kOften, {"often"}},
    {HowOften::kOften, {"frequently"}},
    {HowOften::kOften, {"usually"}},
    {HowOften::kOften, {"mostly"}},
    {HowOften::kOften, {"regularly"}},
    {HowOften::kAlways, {"all", "the", "time"}},
    {HowOften::kAlways, {"all", "time"}},
    {HowOften::kAlways, {"each", "and", "every", "time"}},
    {HowOften::kAlways, {"always"}},
    {HowOften::kAlways, {"constantly"}},
    {HowOften::kAlways, {"constant"}},
    {HowOften::kAlways, {"permanently"}},
    {HowOften::kAlways, {"continuously"}},
    {HowOften::kSometimes, {"one", "time", "in"}},
    {HowOften::kSometimes, {"1", "time", "in"}},
    {HowOften::kSometimes, {"once", "in"}},
    {HowOften::kOnce, {"only", "once"}},
    {HowOften::kOnce, {"just", "once"}},
    {HowOften::kOnce, {"just", "the", "once"}},
    {HowOften::kOnce, {"only", "happened", "once"}},
    {HowOften::kOnce, {"came", "on", "once"}},
    {HowOften::kOnce, {"one", "time", "only"}},
    {HowOften::kOnce, {"happened", "once"}},
});

// "each start", "every single drive": what comes round again and again.
bool comes_round(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"time",   "start",   "morning", "day",  "night", "drive",   "trip",    "journey",
       "stop",   "evening", "ride",    "run",  "go",    "attempt", "restart", "shift",
       "change", "bend",    "corner",  "bump", "fill",  "gear",    "refill"});
  return std::find(words.begin(), words.end(), word) != words.end();
}

// "the lamp came on once", "once last week", "once but went off": the words before are the
// finding's.
bool is_one_time(const NotePage& page, std::size_t at) {
  if (at == 0 || !page.same_clause(at - 1, at)) return false;
  if (!page.same_clause(at + 1, at)) return true;
  const std::string& next = page.word(at + 1);
  return next == "last" || next == "yesterday" || next == "today" || next == "but" ||
         next == "and" || next == "only" || next == "then";
}

std::size_t end_of_each(const NotePage& page, std::size_t at) {
  if (page.word(at) != "every" && page.word(at) != "each") return at;
  std::size_t next = at + 1;
  const auto here = [&](std::size_t i) { return page.same_clause(i, at) && !page.is_claimed(i); };
  while (here(next) && (page.word(next) == "single" || page.word(next) == "cold")) ++next;
  if (!here(next) || !comes_round(page.word(next))) return at;
  // "every fill-up"
  const bool goes_on = page.word(next) == "fill" && here(next + 1) && page.word(next + 1) == "up";
  return next + (goes_on ? 2 : 1);
}

}  // namespace

std::optional<HowOftenWords> how_often_at(const NotePage& page, std::size_t at) {
  for (const Phrase& phrase : kPhrases) {
    std::size_t next = at;
    bool fits = true;
    for (const std::string_view word : phrase.words) {
      if (word.empty()) break;
      fits = page.same_clause(next, at) && !page.is_claimed(next) && page.word(next) == word;
      if (!fits) break;
      ++next;
    }
    if (fits) return HowOftenWords{phrase.how_often, next};
  }
  if (page.is_claimed(at)) return std::nullopt;
  if (page.word(at) == "once" && is_one_time(page, at)) {
    return HowOftenWords{HowOften::kOnce, at + 1};
  }
  const std::size_t end = end_of_each(page, at);
  if (end > at) return HowOftenWords{HowOften::kAlways, end};
  return std::nullopt;
}

std::optional<HowOften> how_often_of(std::string_view word, std::string_view next) {
  if ((word == "every" || word == "each") && comes_round(next)) return HowOften::kAlways;
  for (const Phrase& phrase : kPhrases) {
    if (phrase.words[0] == word && phrase.words[1].empty()) return phrase.how_often;
  }
  return std::nullopt;
}

}  // namespace shoplore
