#include "indexer/finding_reader.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <tuple>

#include "indexer/contradicted_symptoms.hpp"
#include "indexer/cylinder_words.hpp"
#include "indexer/denials.hpp"
#include "indexer/note_words.hpp"
#include "indexer/other_senses.hpp"
#include "indexer/part_overlaps.hpp"
#include "indexer/speed_conditions.hpp"
#include "indexer/symptom_mentions.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

ItemKind item_kind(EntryKind kind) {
  switch (kind) {
    case EntryKind::kSymptom:
      return ItemKind::kSymptom;
    case EntryKind::kCondition:
      return ItemKind::kCondition;
    default:
      return ItemKind::kWorkSign;
  }
}

class FindingReader {
 public:
  FindingReader(NotePage& page, const Vocabulary& vocabulary, const FindingAids& aids)
      : page_(page),
        vocabulary_(vocabulary),
        aids_(aids),
        parts_(page.matches({EntryKind::kComponent})),
        conditions_(page.matches({EntryKind::kCondition})),
        denials_(page) {}

  void read() {
    auto matches = findings();
    add_speeds(matches);
    add_conditioned(matches);
    // Claimed first: a negation inside a phrase is the phrase's own and denies nothing around it.
    for (const PhraseMatch& match : matches) {
      if (is_finding(match)) page_.claim({match.first, match.last});
    }
    for (const PhraseMatch& match : matches) {
      if (!page_.is_claimed(match.first) || !is_finding(match)) continue;
      if (match.kind == EntryKind::kCondition) continue;
      const std::size_t shared = found_.size();
      add_finding(match);
      if (is_lamp_shared_ && found_.size() > shared) found_[shared - 1].state = found_.back().state;
      is_lamp_shared_ = match.shares_lamp && found_.size() > shared;
      keep_conditions_within(match, conditions_);
    }
    for (const PhraseMatch& match :
         page_.loose_matches({EntryKind::kSymptom, EntryKind::kWorkSign})) {
      if (!is_another_thing(page_, match) && !cuts_a_part(match, parts_, vocabulary_) &&
          !ends_in_a_part(match, parts_)) {
        add_finding(match);
      }
    }
    for (const PhraseMatch& match : page_.carried_matches({EntryKind::kSymptom})) {
      add_finding(match, match.last - match.first > 1 ? Needs::kNothing : Needs::kDenial);
    }
    guess_clauses();
    for (const PhraseMatch& match : matches) {
      const bool read = match.kind == EntryKind::kCondition && is_finding(match);
      if (read) keep(match, Presence::kPresent, {match.first, match.last});
    }
    mentions_.say_how_often(page_, found_);
    name_narrower_symptoms();
    drop_wider_symptoms();
    deny_narrower_symptoms();
    drop_contradicted(page_, found_);
    for (RecognisedItem& item : found_) page_.keep(std::move(item));
  }

 private:
  // "play in the wheel bearing" names what was looked at, longer than "play in the wheel".
  std::vector<PhraseMatch> findings() const {
    auto matches =
        page_.matches({EntryKind::kSymptom, EntryKind::kCondition, EntryKind::kWorkSign});
    const auto checks = page_.matches({EntryKind::kCheck});
    std::erase_if(matches, [&](const PhraseMatch& match) {
      if (match.kind != EntryKind::kSymptom) return false;
      return std::any_of(checks.begin(), checks.end(), [&](const PhraseMatch& check) {
        return check.first <= match.first && check.last > match.last &&
               check.last - check.first > match.last - match.first;
      });
    });
    return matches;
  }

  // Speeds that no phrase of the vocabulary holds.
  void add_speeds(std::vector<PhraseMatch>& matches) const {
    for (PhraseMatch& speed : speed_conditions(page_, vocabulary_)) {
      const bool is_known = std::any_of(matches.begin(), matches.end(), [&](const auto& match) {
        return match.first < speed.last && speed.first < match.last;
      });
      if (!is_known) matches.push_back(std::move(speed));
    }
    std::stable_sort(matches.begin(), matches.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
  }

  // "knocks over potholes": where "knocks" alone would be another symptom, the two together decide.
  void add_conditioned(std::vector<PhraseMatch>& matches) const {
    std::vector<PhraseMatch> conditions;
    for (const PhraseMatch& match : matches) {
      if (match.kind == EntryKind::kCondition) conditions.push_back(match);
    }
    for (PhraseMatch& symptom : page_.conditioned_matches(aids_.conditioned, conditions)) {
      const auto overlaps = [&](const PhraseMatch& other) {
        return symptom.first < other.last && other.first < symptom.last;
      };
      const auto other = std::find_if(matches.begin(), matches.end(), overlaps);
      if (other == matches.end()) {
        if (is_free(symptom.first, symptom.last)) matches.push_back(std::move(symptom));
      } else if (other->kind == EntryKind::kSymptom && other->first == symptom.first &&
                 only_adds_place(symptom, *other)) {
        if (!is_kind_of(symptom.id, other->id)) other->id = symptom.id;
      }
    }
    std::stable_sort(matches.begin(), matches.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
  }

  // "knocks [at front] over speed humps": what the other match has more says where at most.
  bool only_adds_place(const PhraseMatch& symptom, const PhraseMatch& other) const {
    if (other.last < symptom.last) return false;
    for (std::size_t i = symptom.last; i < other.last; ++i) {
      if (!says_position(page_.word(i)) && !is_stop_word(page_.word(i))) return false;
    }
    return true;
  }

  // Whether the symptom is one sort of the wider one; name_narrower_symptoms() tells those.
  bool is_kind_of(const std::string& symptom, const std::string& wider) const {
    const Entry* entry = vocabulary_.find(EntryKind::kSymptom, symptom);
    return entry != nullptr && entry->kind_of == wider;
  }

  void guess_clauses() {
    for (std::size_t i = 0; i < page_.size();) {
      std::size_t end = i;
      while (page_.same_clause(end, i)) ++end;
      guess({i, end});
      i = end;
    }
  }

  // A clause in which nothing that tells was read yet.
  void guess(TokenRange clause) {
    const auto tells = [&](const RecognisedItem& item) {
      const bool may = item.kind == ItemKind::kSymptom || item.kind == ItemKind::kCheck ||
                       item.kind == ItemKind::kEarlierRepair;
      return may && page_.same_clause(page_.tokens_at(item.span).first, clause.first);
    };
    if (std::any_of(found_.begin(), found_.end(), tells)) return;
    if (std::any_of(page_.items().begin(), page_.items().end(), tells)) return;
    std::vector<std::string> stems;
    std::vector<std::size_t> at;
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (page_.is_claimed(i) || !tells_symptom(page_.word(i))) continue;
      stems.push_back(page_.token(i).stem);
      at.push_back(i);
    }
    const auto guess = aids_.telling.guess(stems);
    if (!guess) return;
    const PhraseMatch match{EntryKind::kSymptom, guess->id, at[guess->telling.front()],
                            at[guess->telling.back()] + 1};
    if (!ends_in_a_part(match, parts_)) add_finding(match);
  }

  bool is_finding(const PhraseMatch& match) const {
    if (match.kind == EntryKind::kCondition && is_denied_condition(match.first)) return false;
    // "with nothing on brake light switch"
    const bool is_short = match.last - match.first == 2;
    if (match.kind == EntryKind::kCondition && is_short && ends_in_a_part(match, parts_))
      return false;
    return !is_another_thing(page_, match) && !is_other_condition(page_, match) &&
           !aids_.subjects.is_of_another(page_, match) && !cuts_a_part(match, parts_, vocabulary_);
  }

  // "not uphill", "never on the open road at speed": past other conditions to the denial.
  bool is_denied_condition(std::size_t at) const {
    for (std::size_t i = at; i > 0 && page_.same_clause(i - 1, at); --i) {
      const bool is_other = std::any_of(conditions_.begin(), conditions_.end(), [&](const auto& c) {
        return c.first <= i - 1 && i - 1 < c.last;
      });
      // "never gets hot"
      if (!is_other && !is_filler(page_.word(i - 1))) return is_denied_at(page_, i);
    }
    return false;
  }

  void add_finding(const PhraseMatch& match) { add_finding(match, Needs::kNothing); }

  // kDenial: one word alone, of which the thing was said before, is too little for a finding that
  // is there; "pedal not heavy" is enough for one that is not.
  enum class Needs { kNothing, kDenial };
  void add_finding(const PhraseMatch& match, Needs needs) {
    const TokenRange range = with_cylinder(page_, {match.first, match.last});
    page_.claim(range);
    // "neither key is recognised": the denial of its being well
    const bool is_turned = match.state == Presence::kAbsent && is_denied_at(page_, match.first);
    const bool denies_itself = match.state == Presence::kAbsent && !is_turned;
    if (denies_itself) denials_.note_denied(range);
    const bool absent =
        denies_itself || (!is_turned && (denials_.turn_round(match) || denials_.deny(range)));
    if (needs == Needs::kDenial && !absent) return;
    keep(match, absent ? Presence::kAbsent : Presence::kPresent, range);
  }

  // "stalls when hot": the symptom's own phrase says the condition too. One word alone ("lumpy
  // idle") is part of a name.
  void keep_conditions_within(const PhraseMatch& symptom,
                              const std::vector<PhraseMatch>& conditions) {
    if (found_.empty() || found_.back().state == Presence::kAbsent) return;
    for (const PhraseMatch& match : conditions) {
      const bool inside = match.first >= symptom.first && match.last <= symptom.last;
      const bool says_it = match.last - match.first > 1 ||
                           (!is_name_word(match.id) && !is_warmth_of_a_thing(page_, match.first));
      if (inside && says_it && !is_other_condition(page_, match) && !is_limit_of(symptom, match) &&
          match.last - match.first < symptom.last - symptom.first) {
        keep(match, Presence::kPresent, {match.first, match.last});
      }
    }
  }

  // "won't rev past 3000", "won't go in reverse": what it can't do, not when it happens.
  bool is_limit_of(const PhraseMatch& symptom, const PhraseMatch& condition) const {
    const std::string& word = page_.word(condition.first);
    const bool is_bound = word == "past" || word == "above" || word == "over" || word == "beyond" ||
                          page_.word(condition.last - 1) == "reverse";
    if (!is_bound) return false;
    for (std::size_t i = symptom.first; i < condition.first; ++i) {
      if (is_negation(page_.word(i))) return true;
    }
    return false;
  }

  static bool is_name_word(std::string_view condition) {
    return condition != "hot" && condition != "overnight" && condition != "uphill";
  }

  void keep(const PhraseMatch& match, Presence state, TokenRange range) {
    const ItemKind kind = item_kind(match.kind);
    if (kind == ItemKind::kSymptom) mentions_.add({match.id, state, range});
    if (!kept_.insert({kind, match.id, state}).second) return;
    RecognisedItem item = recognised_item(kind, match.id, page_.span_of(range));
    item.state = state;
    found_.push_back(std::move(item));
  }

  // "stalls at the lights, only when hot": the wider symptom under the condition that makes it the
  // narrower one.
  void name_narrower_symptoms() {
    for (const auto& [id, entry] : vocabulary_.entries(EntryKind::kSymptom)) {
      if (entry.conditions.empty() || entry.kind_of.empty() || !entry.retired.empty()) continue;
      for (RecognisedItem& item : found_) {
        const bool is_wider = item.kind == ItemKind::kSymptom && item.id == entry.kind_of &&
                              item.state != Presence::kAbsent;
        if (is_wider && is_under(item, entry.conditions) &&
            kept_.insert({ItemKind::kSymptom, id, item.state}).second) {
          item.id = id;
        }
      }
    }
  }

  // "overheats in traffic, never at speed": the narrower symptom of the denied condition is absent.
  void deny_narrower_symptoms() {
    for (const PhraseMatch& condition : conditions_) {
      if (page_.is_claimed(condition.first) || !is_denied_condition(condition.first)) continue;
      for (const auto& [id, entry] : vocabulary_.entries(EntryKind::kSymptom)) {
        const auto& under = entry.conditions;
        const bool is_narrower = entry.retired.empty() && !entry.kind_of.empty() &&
                                 std::find(under.begin(), under.end(), condition.id) != under.end();
        if (!is_narrower || !is_of_sort(entry.kind_of, condition)) continue;
        if (kept_.contains({ItemKind::kSymptom, id, Presence::kPresent})) continue;
        page_.claim({condition.first, condition.last});
        keep({EntryKind::kSymptom, id, condition.first, condition.last}, Presence::kAbsent,
             {condition.first, condition.last});
      }
    }
  }

  // Whether a symptom of that sort, or the wider one itself, is there shortly before the condition.
  bool is_of_sort(const std::string& wider, const PhraseMatch& condition) const {
    return std::any_of(found_.begin(), found_.end(), [&](const RecognisedItem& item) {
      if (item.kind != ItemKind::kSymptom || item.state == Presence::kAbsent) return false;
      if (item.id != wider && !is_kind_of(item.id, wider)) return false;
      const std::size_t at = page_.tokens_at(item.span).first;
      return at < condition.first &&
             page_.token(condition.first).clause <= page_.token(at).clause + 1;
    });
  }

  // Whether one of the conditions stands in the symptom's clause or the one before or after.
  bool is_under(const RecognisedItem& symptom, const std::vector<std::string>& conditions) const {
    const std::size_t clause = page_.token(page_.tokens_at(symptom.span).first).clause;
    return std::any_of(found_.begin(), found_.end(), [&](const RecognisedItem& item) {
      if (item.kind != ItemKind::kCondition) return false;
      if (std::find(conditions.begin(), conditions.end(), item.id) == conditions.end())
        return false;
      const std::size_t at = page_.token(page_.tokens_at(item.span).first).clause;
      return at <= clause + 1 && clause <= at + 1;
    });
  }

  // "no crank, only clicks": the narrower symptom says the wider one too.
  void drop_wider_symptoms() {
    std::set<std::string> wider;
    for (const RecognisedItem& item : found_) {
      if (item.kind != ItemKind::kSymptom || item.state == Presence::kAbsent) continue;
      const Entry* entry = vocabulary_.find(EntryKind::kSymptom, item.id);
      if (entry != nullptr && !entry->kind_of.empty()) wider.insert(entry->kind_of);
    }
    std::erase_if(found_, [&](const RecognisedItem& item) {
      return item.kind == ItemKind::kSymptom && item.state != Presence::kAbsent &&
             wider.contains(item.id);
    });
  }

  bool is_free(std::size_t first, std::size_t last) const {
    for (std::size_t i = first; i < last; ++i) {
      if (page_.is_claimed(i) || !page_.same_clause(i, last)) return false;
    }
    return true;
  }

  NotePage& page_;
  const Vocabulary& vocabulary_;
  const FindingAids& aids_;
  const std::vector<PhraseMatch> parts_, conditions_;
  std::vector<RecognisedItem> found_;
  SymptomMentions mentions_;
  bool is_lamp_shared_ = false;  // by the last one found and the next
  Denials denials_;
  std::set<std::tuple<ItemKind, std::string, Presence>> kept_;
};

// Whether an item of that kind stands in the clause of another one.
bool has_in_clause(const NotePage& page, const RecognisedItem& item, ItemKind kind) {
  const std::size_t at = page.tokens_at(item.span).first;
  return std::any_of(page.items().begin(), page.items().end(), [&](const RecognisedItem& other) {
    return other.kind == kind && page.same_clause(page.tokens_at(other.span).first, at);
  });
}

}  // namespace

void drop_conditions_of_checks(NotePage& page) {
  page.drop([&](const RecognisedItem& item) {
    return item.kind == ItemKind::kCondition && item.id != "idle" &&
           has_in_clause(page, item, ItemKind::kCheck) &&
           !has_in_clause(page, item, ItemKind::kSymptom);
  });
}

void read_findings(NotePage& page, const Vocabulary& vocabulary, const FindingAids& aids) {
  FindingReader(page, vocabulary, aids).read();
}

}  // namespace shoplore
