#include "indexer/symptom_mentions.hpp"

#include "indexer/how_often.hpp"

namespace shoplore {
namespace {

// Tokens from a symptom to the words in a later clause that say how often.
constexpr std::size_t kReachBack = 5, kFarBack = 40;

// "happens often, he says": of what was complained of, however much was said since.
bool is_about_happening(const NotePage& page, std::size_t at) {
  for (std::size_t i = at; i > 0 && page.same_clause(i - 1, at); --i) {
    const std::string& word = page.word(i - 1);
    if (word == "happens" || word == "occurs" || word == "happened" || word == "happening") {
      return true;
    }
  }
  return false;
}

void say(const SymptomMentions::Mention& mention, HowOften how_often,
         std::vector<RecognisedItem>& items) {
  for (RecognisedItem& item : items) {
    const bool is_it =
        item.kind == ItemKind::kSymptom && item.id == mention.id && item.state == mention.state;
    if (is_it && !item.how_often) item.how_often = how_often;
  }
}

}  // namespace

void SymptomMentions::say_how_often(NotePage& page, std::vector<RecognisedItem>& items) const {
  for (std::size_t i = 0; i < page.size(); ++i) {
    const auto words = how_often_at(page, i);
    const Mention* mention = words ? near(page, {i, words->end}) : nullptr;
    if (mention == nullptr) continue;
    say(*mention, words->how_often, items);
    page.claim({i, words->end});
  }
  for (const Mention& mention : mentions_) {
    for (std::size_t i = mention.at.first + 1; i + 1 < mention.at.last; ++i) {
      const auto often = how_often_of(page.word(i), page.word(i + 1));
      if (often) say(mention, *often, items);
    }
  }
}

// In that clause the one with the fewest bytes between; when the clause has none, the last before
// it ("idles lumpy, not always"), or nullptr.
const SymptomMentions::Mention* SymptomMentions::near(const NotePage& page, TokenRange at) const {
  const Span span = page.span_of(at);
  const Mention *nearest = nullptr, *before = nullptr;
  std::size_t best = 0;
  const std::size_t reach = is_about_happening(page, at.first) ? kFarBack : kReachBack;
  for (const Mention& mention : mentions_) {
    if (mention.state == Presence::kAbsent) continue;
    if (!page.same_clause(mention.at.first, at.first)) {
      if (mention.at.last <= at.first && at.first - mention.at.last <= reach) before = &mention;
      continue;
    }
    const Span said = page.span_of(mention.at);
    const std::size_t gap = said.begin >= span.end ? said.begin - span.end : span.begin - said.end;
    if (nearest != nullptr && gap >= best) continue;
    nearest = &mention;
    best = gap;
  }
  return nearest != nullptr ? nearest : before;
}

}  // namespace shoplore
