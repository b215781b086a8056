// Readers in order of precedence, each claiming the tokens it read: codes, mileage, years, then
// vehicle words, earlier repairs, checks with a verdict, symptoms with conditions and work signs,
// and last negation. What nobody claimed is left over.
//
// Limits of this form: a cylinder number is read and dropped; when an earlier repair was done is
// not worked out; a check without a word that says how it went is no item.
#include "indexer/recogniser.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "indexer/number_readers.hpp"
#include "indexer/phrase_matcher.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_negation(std::string_view word) {
  return is_one_of(word, {"no", "not", "without", "never", "none", "nor", "doesn't", "doesnt",
                          "isn't", "isnt", "didn't", "didnt", "neither"});
}

bool says_pass(std::string_view word) {
  return is_one_of(word, {"ok", "okay", "fine", "good", "passed", "dry", "clean", "tight", "free",
                          "normal", "clear", "sound"});
}

bool says_fail(std::string_view word) {
  return is_one_of(word, {"failed", "bad", "stiff", "seized", "leaking", "leaks", "wet", "oily",
                          "low", "high", "loose", "broken", "stuck", "split", "dead", "faulty"});
}

// Words of a repair done: "replaced", and the adjectives that say one was.
bool says_replaced(std::string_view word) {
  return is_one_of(word, {"new", "another", "second", "fitted", "changed", "renewed", "swapped"});
}

// When, where and filler around an earlier repair; claimed with it.
bool is_repair_context(std::string_view word) {
  return is_one_of(
      word,
      {"already",    "recently", "elsewhere", "here",    "ago",     "last",  "month",  "months",
       "mo",         "week",     "weeks",     "year",    "years",   "day",   "days",   "before",
       "previously", "by",       "owner",     "himself", "herself", "diy",   "dealer", "garage",
       "other",      "another",  "workshop",  "shop",    "one",     "two",   "three",  "four",
       "five",       "six",      "eight",     "ten",     "twelve",  "twice", "new",    "old"});
}

}  // namespace

struct Recogniser::Impl {
  const Vocabulary& vocabulary;
  DistanceUnit default_unit;
  PhraseMatcher matcher;
  std::set<std::string> vehicle_words;

  Impl(const Vocabulary& words, DistanceUnit unit)
      : vocabulary(words), default_unit(unit), matcher(words) {
    for (const auto& [id, entry] : vocabulary.entries(EntryKind::kVehicleModel)) {
      vehicle_words.insert(lower_case(entry.make));
      vehicle_words.insert(lower_case(entry.name));
      for (const std::string& family : entry.engine_families) {
        vehicle_words.insert(lower_case(family));
      }
    }
  }
};

namespace {

// One pass over one note.
class NotePass {
 public:
  NotePass(const Vocabulary& vocabulary, const PhraseMatcher& matcher,
          const std::set<std::string>& vehicle_words, DistanceUnit unit, std::string_view text)
      : vocabulary_(vocabulary),
        matcher_(matcher),
        unit_(unit),
        text_(text),
        tokens_(matcher.tokens_of(text, vehicle_words)),
        claimed_(tokens_.size(), 0) {}

  Recognised all() {
    take(read_codes(text_));
    take(read_mileages(text_, unit_));
    take(read_model_years(text_));
    read_vehicle();
    read_earlier_repairs();
    read_checks();
    read_findings();
    std::stable_sort(out_.items.begin(), out_.items.end(),
                     [](const auto& a, const auto& b) { return a.span.begin < b.span.begin; });
    list_leftover();
    return std::move(out_);
  }

 private:
  void take(std::vector<RecognisedItem> items) {
    for (RecognisedItem& item : items) {
      if (claims_any(item.span)) continue;
      claim(item.span);
      out_.items.push_back(std::move(item));
    }
  }
  bool claims_any(Span span) const {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (claimed_[i] != 0 && tokens_[i].begin < span.end && span.begin < tokens_[i].end)
        return true;
    }
    return false;
  }
  void claim(Span span) {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].begin < span.end && span.begin < tokens_[i].end) claimed_[i] = 1;
    }
  }
  void claim(std::size_t first, std::size_t last) {
    for (std::size_t i = first; i < last; ++i) claimed_[i] = 1;
  }
  Span span_of(std::size_t first, std::size_t last) const {
    return {tokens_[first].begin, tokens_[last - 1].end};
  }
  RecognisedItem item(ItemKind kind, std::string id, Span span) const {
    RecognisedItem made;
    made.kind = kind;
    made.id = std::move(id);
    made.span = span;
    return made;
  }

  void read_vehicle() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (claimed_[i] != 0) continue;
      const std::string& word = tokens_[i].text;
      std::optional<RecognisedItem> found;
      for (const auto& [id, entry] : vocabulary_.entries(EntryKind::kVehicleModel)) {
        const Span span = span_of(i, i + 1);
        if (word == lower_case(entry.make)) found = item(ItemKind::kMake, entry.make, span);
        if (word == lower_case(entry.name)) found = item(ItemKind::kModel, entry.name, span);
        for (const std::string& family : entry.engine_families) {
          if (word == lower_case(family)) found = item(ItemKind::kEngineFamily, family, span);
        }
      }
      if (enum_from_name<Fuel>(word)) found = item(ItemKind::kFuel, word, span_of(i, i + 1));
      if (!found) continue;
      claimed_[i] = 1;
      out_.items.push_back(std::move(*found));
    }
  }

  // The action that a word of repair near a component stands for; empty when it is none.
  std::string action_of(std::size_t i) const {
    if (claimed_[i] != 0) return "";
    if (says_replaced(tokens_[i].text)) return "replace";
    if (!tokens_[i].text.ends_with("ed") && tokens_[i].text.find('&') == std::string::npos)
      return "";
    for (const PhraseMatch& match : matcher_.matches(tokens_, claimed_, {EntryKind::kAction})) {
      if (match.first <= i && i < match.last) return match.id;
    }
    return "";
  }

  void read_earlier_repairs() {
    constexpr std::size_t kReach = 4;  // words between a component and what was done to it
    for (const PhraseMatch& part : matcher_.matches(tokens_, claimed_, {EntryKind::kComponent})) {
      const std::size_t clause = tokens_[part.first].clause;
      const std::size_t from = part.first > kReach ? part.first - kReach : 0;
      for (std::size_t i = from; i < std::min(part.last + kReach, tokens_.size()); ++i) {
        if ((i >= part.first && i < part.last) || tokens_[i].clause != clause) continue;
        const std::string action = action_of(i);
        if (action.empty() || vocabulary_.find(EntryKind::kAction, action) == nullptr) continue;
        add_earlier_repair(part, i, action);
        break;
      }
    }
  }

  void add_earlier_repair(const PhraseMatch& part, std::size_t verb, const std::string& action) {
    RecognisedItem found = item(ItemKind::kEarlierRepair, action + " " + part.id,
                                span_of(std::min(part.first, verb), std::max(part.last, verb + 1)));
    EarlierRepair repair;
    repair.fix = {action, part.id};
    bool said = false;
    const std::size_t clause = tokens_[part.first].clause;
    claim(part.first, part.last);
    claimed_[verb] = 1;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      const std::string& word = tokens_[i].text;
      if (tokens_[i].clause != clause) continue;
      if (is_one_of(word, {"here", "us", "we"})) repair.by = RepairedBy::kHere, said = true;
      if (is_one_of(word, {"owner", "himself", "herself", "diy"})) {
        repair.by = RepairedBy::kOwner, said = true;
      }
      if (is_one_of(word, {"elsewhere", "garage", "dealer"})) said = true;
      const bool number = word.find_first_not_of("0123456789") == word.npos;
      if (claimed_[i] == 0 && (is_repair_context(word) || number)) claimed_[i] = 1;
    }
    if (!said) found.reading_chosen = "not said by whom: taken as elsewhere";
    found.repair = repair;
    out_.items.push_back(std::move(found));
  }

  void read_checks() {
    for (const PhraseMatch& match : matcher_.matches(tokens_, claimed_, {EntryKind::kCheck})) {
      for (std::size_t i = 0; i < tokens_.size(); ++i) {
        const bool near = tokens_[i].clause == tokens_[match.first].clause &&
                          (i < match.first || i >= match.last) && claimed_[i] == 0;
        const std::string& word = tokens_[i].text;
        if (!near || (!says_pass(word) && !says_fail(word))) continue;
        const bool turned = i > 0 && is_negation(tokens_[i - 1].text);
        RecognisedItem found = item(ItemKind::kCheck, match.id, span_of(match.first, match.last));
        found.verdict = says_pass(word) != turned ? Verdict::kPass : Verdict::kFail;
        claim(match.first, match.last);
        claimed_[i] = 1;
        if (turned) claimed_[i - 1] = 1;
        out_.items.push_back(std::move(found));
        break;
      }
    }
  }

  // Whether a word before the match in its clause turns it round: "no smoke or whistle".
  bool is_negated(const PhraseMatch& match) {
    for (std::size_t i = match.first; i > 0; --i) {
      const Token& before = tokens_[i - 1];
      if (before.clause != tokens_[match.first].clause || is_one_of(before.text, {"but", "and"}))
        break;
      if (!is_negation(before.text)) continue;
      const bool how_often = i < tokens_.size() && is_one_of(tokens_[i].text, {"always", "every"});
      claimed_[i - 1] = 1;
      return !how_often;
    }
    // "smoke: none"
    const bool none_after = match.last < tokens_.size() && tokens_[match.last].text == "none";
    if (none_after) claimed_[match.last] = 1;
    return none_after;
  }

  void read_findings() {
    const std::set<EntryKind> kinds{EntryKind::kSymptom, EntryKind::kCondition,
                                    EntryKind::kWorkSign};
    for (const PhraseMatch& match : matcher_.matches(tokens_, claimed_, kinds)) {
      const ItemKind kind = match.kind == EntryKind::kSymptom     ? ItemKind::kSymptom
                            : match.kind == EntryKind::kCondition ? ItemKind::kCondition
                                                                  : ItemKind::kWorkSign;
      RecognisedItem found = item(kind, match.id, span_of(match.first, match.last));
      claim(match.first, match.last);
      if (kind != ItemKind::kCondition && is_negated(match)) found.state = Presence::kAbsent;
      claim_cylinder(match.last);
      const bool again =
          std::any_of(out_.items.begin(), out_.items.end(), [&](const RecognisedItem& earlier) {
            return earlier.kind == kind && earlier.id == found.id && earlier.state == found.state;
          });
      if (!again) out_.items.push_back(std::move(found));
    }
  }

  // "misfire cylinder 3": the number belongs to the symptom.
  void claim_cylinder(std::size_t next) {
    for (std::size_t i = next; i < std::min(next + 4, tokens_.size()); ++i) {
      if (!is_one_of(tokens_[i].text, {"cylinder", "cyl", "cylinders"})) continue;
      claimed_[i] = 1;
      if (i + 1 < tokens_.size() && tokens_[i + 1].text.size() == 1) claimed_[i + 1] = 1;
    }
  }

  void list_leftover() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (claimed_[i] != 0 || is_stop_word(tokens_[i].text)) continue;
      const Span span = span_of(i, i + 1);
      if (out_.leftover.empty() || !(out_.leftover.back() == span)) out_.leftover.push_back(span);
    }
  }

  const Vocabulary& vocabulary_;
  const PhraseMatcher& matcher_;
  DistanceUnit unit_;
  std::string_view text_;
  std::vector<Token> tokens_;
  std::vector<char> claimed_;  // by token; not vector<bool>, which hands out proxies
  Recognised out_;
};

}  // namespace

Recogniser::Recogniser(const Vocabulary& vocabulary, DistanceUnit default_unit)
    : impl_(std::make_unique<Impl>(vocabulary, default_unit)) {}
Recogniser::~Recogniser() = default;
Recogniser::Recogniser(Recogniser&&) noexcept = default;

Recognised Recogniser::recognise(std::string_view text) const {
  return NotePass(impl_->vocabulary, impl_->matcher, impl_->vehicle_words, impl_->default_unit, text)
      .all();
}

}  // namespace shoplore
