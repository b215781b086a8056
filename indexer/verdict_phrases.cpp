#include "indexer/verdict_phrases.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "indexer/denials.hpp"
#include "indexer/note_words.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongest = 4;  // words

struct Phrase {
  Verdict verdict;
  std::array<std::string_view, kLongest> words;  // empty past its end
  bool ends_clause = false;                      // says it only where nothing follows
};

constexpr auto kPass = Verdict::kPass, kFail = Verdict::kFail, kUnclear = Verdict::kUnclear;

// Longest first where one begins another. Words as tokens have them: "can't" is two.
constexpr auto kPhrases = std::to_array<Phrase>({
    {kPass, {"as", "it", "should"}},
    {kPass, {"as", "they", "should"}},
    {kPass, {"what", "it", "should"}},
    {kPass, {"as", "expected"}},
    {kPass, {"as", "new"}},
    {kPass, {"like", "new"}},
    {kPass, {"bang", "on"}},
    {kPass, {"spot", "on"}},
    {kPass, {"dead", "on"}},
    {kPass, {"not", "the", "cause"}},
    {kPass, {"not", "the", "fault"}},
    {kPass, {"not", "the", "problem"}},
    {kPass, {"not", "the", "culprit"}},
    {kPass, {"not", "at", "fault"}},
    {kPass, {"not", "to", "blame"}},
    {kPass, {"innocent"}},
    {kPass, {"not", "guilty"}},
    {kPass, {"not", "suspicious"}},
    {kPass, {"not", "it"}, true},
    {kPass, {"so", "not", "that"}},
    {kPass, {"ruled", "out"}},
    {kPass, {"can", "be", "excluded"}},
    {kPass, {"excluded"}, true},
    {kPass, {"happy", "with"}},
    {kPass, {"does", "its", "job"}},
    {kPass, {"checks", "out"}},
    {kPass, {"meets", "spec"}},
    {kPass, {"meet", "spec"}},
    {kPass, {"reads", "right"}},
    {kPass, {"looks", "right"}},
    {kPass, {"looked", "right"}},
    {kPass, {"about", "right"}},
    {kPass, {"seems", "right"}},
    {kPass, {"not", "fault", "it"}},
    {kPass, {"not", "fault"}, true},
    {kPass, {"tick"}, true},
    {kPass, {"conforms"}},
    {kPass, {"unremarkable"}},
    {kPass, {"inconspicuous"}},
    {kPass, {"works"}, true},
    {kPass, {"working"}, true},
    {kPass, {"all", "run"}},
    {kPass, {"runs"}, true},
    {kPass, {"run"}, true},
    {kFail, {"open", "circuit"}},
    {kFail, {"short", "circuit"}},
    {kFail, {"not", "good", "enough"}},
    {kFail, {"not", "enough"}},
    {kFail, {"not", "right"}},
    {kFail, {"not", "working"}},
    {kFail, {"not", "work"}},
    {kFail, {"not", "met"}},
    {kFail, {"not", "fulfilled"}},
    {kFail, {"no", "longer", "good"}},
    {kFail, {"no", "longer", "ok"}},
    {kFail, {"has", "had", "it"}},
    {kFail, {"had", "it"}, true},
    {kFail, {"past", "it"}, true},
    {kFail, {"past", "its", "best"}},
    {kFail, {"miles", "out"}},
    {kFail, {"end", "of", "life"}},
    {kFail, {"at", "the", "end"}, true},
    {kFail, {"last", "legs"}},
    {kFail, {"at", "fault"}},
    {kFail, {"that", "is", "the", "one"}},
    {kFail, {"there", "it", "is"}, true},
    {kFail, {"that", "is", "it"}, true},
    {kFail, {"found", "it"}, true},
    {kFail, {"defect", "confirmed"}},
    {kFail, {"defect", "found"}},
    {kFail, {"fault", "confirmed"}},
    {kFail, {"fault", "found"}},
    {kFail, {"finished"}, true},
    {kFail, {"suspicious"}},
    {kFail, {"ruined"}},
    {kFail, {"cooked"}},
    {kFail, {"toast"}, true},
    {kFail, {"kaput"}},
    {kFail, {"buggered"}},
    {kFail, {"full", "of", "leaves"}},
    {kFail, {"full", "of", "soot"}},
    {kFail, {"full", "of", "carbon"}},
    {kFail, {"full", "of", "water"}},
    {kFail, {"full", "of", "metal"}},
    {kFail, {"full", "of", "muck"}},
    {kFail, {"full", "of", "dirt"}},
    {kFail, {"full", "of", "oil"}},
    {kFail, {"full", "of", "fluff"}},
    {kFail, {"full", "of", "corrosion"}},
    {kFail, {"come", "off"}},
    {kFail, {"came", "off"}},
    {kFail, {"fallen", "off"}},
    {kFail, {"come", "apart"}},
    {kFail, {"says", "replace"}},
    {kFail, {"says", "bad"}},
    {kFail, {"showing", "at"}},
    {kFail, {"glowing", "at"}},
    {kFail, {"glows", "at"}},
    {kFail, {"leak", "at"}},
    {kFail, {"leaking", "at"}},
    {kFail, {"does", "not", "move"}},
    {kFail, {"did", "not", "move"}},
    {kPass, {"equally", "hot"}},
    {kPass, {"both", "hot"}},
    {kFail, {"both", "cold"}},
    {kFail, {"one", "hot"}},
    {kUnclear, {"hard", "to", "say"}},
    {kUnclear, {"hard", "to", "tell"}},
    {kUnclear, {"difficult", "to", "say"}},
    {kUnclear, {"difficult", "to", "judge"}},
    {kUnclear, {"no", "clear", "result"}},
    {kUnclear, {"no", "clear", "answer"}},
    {kUnclear, {"no", "idea"}},
    {kUnclear, {"not", "certain"}},
    {kUnclear, {"not", "decide"}},
    {kUnclear, {"not", "know"}},
    {kUnclear, {"could", "be", "ok"}},
    {kUnclear, {"might", "be", "ok"}},
    {kUnclear, {"perhaps", "ok"}},
    {kUnclear, {"maybe", "ok"}},
    {kUnclear, {"probably", "ok"}},
    {kUnclear, {"uncertain"}},
    {kUnclear, {"debatable"}},
    {kUnclear, {"questionable"}},
});

// The end of the phrase when it stands here.
std::optional<std::size_t> end_of(const NotePage& page, const Phrase& phrase, std::size_t at) {
  std::size_t next = at;
  for (const std::string_view word : phrase.words) {
    if (word.empty()) break;
    const bool fits =
        page.same_clause(next, at) && !page.is_claimed(next) && page.word(next) == word;
    if (!fits) return std::nullopt;
    ++next;
  }
  if (phrase.ends_clause && page.same_clause(next, at)) return std::nullopt;
  return next;
}

bool is_limit(std::string_view word) {
  return word == "spec" || word == "specification" || word == "range" || word == "limit" ||
         word == "limits" || word == "tolerance";
}

// "way out", "well below"
bool is_away(std::string_view word) {
  return word == "out" || word == "off" || word == "up" || word == "down" || word == "over" ||
         word == "under" || word == "above" || word == "below" || word == "short";
}

// "in adjustment", "out of balance"
bool is_condition_of_things(std::string_view word) {
  return word == "order" || word == "green" || word == "adjustment" || word == "balance" ||
         word == "shape" || word == "true" || word == "alignment" || word == "round";
}

// Whether a word follows with nothing but blanks between: "no -> fail" stands apart.
bool goes_on_behind(const NotePage& page, std::size_t i) {
  if (!page.same_clause(i, i + 1)) return false;
  const std::string_view between = page.between(i, i + 1);
  return between.find_first_not_of(" \t") == between.npos;
}

}  // namespace

std::optional<VerdictWords> verdict_phrase_at(const NotePage& page, std::size_t at) {
  for (const Phrase& phrase : kPhrases) {
    const auto end = end_of(page, phrase, at);
    if (!end) continue;
    const TokenRange range{at, *end};
    if (phrase.verdict == kUnclear || !is_denied_at(page, at)) {
      return VerdictWords{phrase.verdict, range};
    }
    // "not ruled out" leaves it open.
    if (phrase.words[0] == "ruled" || phrase.words[0] == "excluded") return std::nullopt;
    return VerdictWords{phrase.verdict == kPass ? kFail : kPass, range};
  }
  return std::nullopt;
}

std::optional<VerdictWords> verdict_of_limits(const NotePage& page, std::size_t i) {
  const auto word = [&](std::size_t k) {
    return page.same_clause(k, i) ? std::string_view(page.word(k)) : std::string_view();
  };
  std::size_t next = i + 1;
  while (word(next) == "of" || word(next) == "the" || word(next) == "its") ++next;
  const std::string_view first = word(i), last = word(next);
  const VerdictWords fail{Verdict::kFail, {i, next + 1}}, pass{Verdict::kPass, {i, next + 1}};
  const bool is_beyond = first == "out" || first == "outside" || first == "over" ||
                         first == "above" || first == "below" || first == "under" ||
                         first == "beyond";
  if (is_beyond && is_limit(last)) return fail;
  if (first == "at" && (last == "limit" || last == "limits")) return fail;
  if (first == "out" && is_condition_of_things(last)) return fail;
  if ((first == "in" || first == "within" || first == "to" || first == "inside") &&
      (is_limit(last) || is_condition_of_things(last))) {
    return pass;
  }
  if ((first == "way" || first == "well" || first == "far") && is_away(last)) return fail;
  if (first == "full" && word(i + 1) == "of") return fail;
  return std::nullopt;
}

std::optional<Verdict> answer_behind(const NotePage& page, std::size_t i, Verdict said) {
  if (i >= page.size() || page.is_claimed(i)) return std::nullopt;
  const std::size_t from = page.token(i - 1).end;
  const std::string_view between = page.text().substr(from, page.token(i).begin - from);
  const bool is_asked = between.find_first_of("?:") != between.npos;
  if (!is_asked || goes_on_behind(page, i)) return std::nullopt;
  const std::string& word = page.word(i);
  if (word == "no" || word == "nope" || word == "not" || word == "never") {
    return said == kPass ? kFail : kPass;
  }
  return word == "yes" || word == "yep" ? std::optional(said) : std::nullopt;
}

}  // namespace shoplore
