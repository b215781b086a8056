// Each word of work done (a deed) looks for its component (repair_deeds.hpp tells where).
// Components joined to that one ("coil and plugs") share the deed. The words of time and person
// directly around are claimed with them, and so is a clause after it that says nothing else
// ("fitted new, not by us").
#include "indexer/repair_reader.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "indexer/denials.hpp"
#include "indexer/note_words.hpp"
#include "indexer/repair_deeds.hpp"
#include "indexer/repair_said.hpp"
#include "indexer/repair_undone.hpp"
#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kReach = 8;         // tokens between a component and its deed
constexpr std::size_t kFar = 1'000;       // unknown words between: never its deed
constexpr std::size_t kUnknownWord = 2;   // a word between counts as so many more tokens
constexpr std::size_t kLongestList = 12;  // tokens of a clause that only goes on with the last one
constexpr std::size_t kTimeReach = 16;    // tokens from the work to its time

bool overlap(TokenRange a, TokenRange b) {
  return a.first < b.last && b.first < a.last;
}

bool joins(std::string_view word) {
  return word == "and" || word == "or" || word == "plus";
}

class RepairReader {
 public:
  RepairReader(NotePage& page, const Vocabulary& vocabulary, const BareParts& bare_parts)
      : page_(page), vocabulary_(vocabulary), bare_parts_(bare_parts) {}

  void read() {
    find_parts();
    const std::vector<Deed> deeds = deeds_of(page_, vocabulary_, parts_);
    is_deed_.assign(page_.size(), 0);
    for (const Deed& deed : deeds) {
      std::fill(is_deed_.begin() + static_cast<std::ptrdiff_t>(deed.at.first),
                is_deed_.begin() + static_cast<std::ptrdiff_t>(deed.at.last), 1);
    }
    for (const Deed& deed : deeds) {
      if (const auto part = part_of(deed)) {
        add(deed, *part);
      } else if (const auto before = part_before(deed)) {
        add(deed, *before);
      }
    }
    for (const Deed& deed : unsaid_deeds()) {
      if (const auto part = part_of(deed)) add(deed, *part);
    }
    for (std::size_t i = 0; i < groups_.size(); ++i) read_next_clauses(i);
    for (RecognisedItem& item : found_) page_.keep(finished(std::move(item)));
  }

 private:
  struct Group {
    std::size_t first_item = 0, last_item = 0;  // half-open, of found_
    TokenRange at;
  };

  // Components that take part in no longer finding. One in "since new tyres" stays a component:
  // the words tell the condition too.
  void find_parts() {
    std::vector<TokenRange> conditions;
    for (PhraseMatch& match : page_.matches({EntryKind::kSymptom, EntryKind::kCondition,
                                             EntryKind::kWorkSign, EntryKind::kComponent})) {
      const TokenRange at{match.first, match.last};
      if (match.kind == EntryKind::kComponent && !is_season(at)) parts_.push_back(std::move(match));
      if (match.kind == EntryKind::kCondition) conditions.push_back(at);
    }
    add_bare_parts();
    add_parts_within(conditions);
    std::sort(parts_.begin(), parts_.end(),
              [](const PhraseMatch& a, const PhraseMatch& b) { return a.first < b.first; });
    used_.assign(parts_.size(), 0);
  }

  // "sensor", "slides": nouns that many components end in; also where one of them goes by the noun
  // alone, unless that is its whole name.
  void add_bare_parts() {
    std::vector<char> taken(page_.size(), 0);
    const auto take = [&](const PhraseMatch& match) {
      std::fill(taken.begin() + static_cast<std::ptrdiff_t>(match.first),
                taken.begin() + static_cast<std::ptrdiff_t>(match.last), 1);
    };
    const auto findings =
        page_.matches({EntryKind::kSymptom, EntryKind::kCondition, EntryKind::kWorkSign});
    std::for_each(findings.begin(), findings.end(), take);
    std::for_each(parts_.begin(), parts_.end(), take);
    name_battery();
    const auto told =
        components_told(vocabulary_, page_.matches({EntryKind::kSymptom, EntryKind::kCheck}));
    for (PhraseMatch& part : parts_) {
      const std::string name = vocabulary_.display_name(EntryKind::kComponent, part.id);
      if (part.last - part.first > 1 || words_of(name).size() < 2) continue;
      if (auto id = bare_parts_.at(page_, part.first, told)) part.id = std::move(*id);
    }
    for (std::size_t i = 0; i < page_.size(); ++i) {
      if (taken[i] != 0 || page_.is_claimed(i) || is_season({i, i + 1})) continue;
      if (auto id = bare_parts_.at(page_, i, told)) {
        parts_.push_back({EntryKind::kComponent, std::move(*id), i, i + 1});
      }
    }
  }

  // In a hybrid or an electric car "the battery" that somebody changed is the 12-volt one.
  void name_battery() {
    const bool is_electric =
        std::any_of(page_.items().begin(), page_.items().end(), [](const RecognisedItem& item) {
          return item.kind == ItemKind::kFuel && (item.id == "hybrid" || item.id == "electric");
        });
    const char* small = "twelve_volt_auxiliary_battery";
    if (!is_electric || vocabulary_.find(EntryKind::kComponent, small) == nullptr) return;
    for (PhraseMatch& part : parts_) {
      if (part.id == "battery") part.id = small;
    }
  }

  void add_parts_within(const std::vector<TokenRange>& conditions) {
    is_condition_.assign(page_.size(), 0);
    auto condition = conditions.begin();
    for (PhraseMatch& match : page_.matches({EntryKind::kComponent})) {
      while (condition != conditions.end() && condition->last < match.last) ++condition;
      if (condition == conditions.end()) return;
      if (match.first <= condition->first) continue;
      std::fill(is_condition_.begin() + static_cast<std::ptrdiff_t>(condition->first),
                is_condition_.begin() + static_cast<std::ptrdiff_t>(condition->last), 1);
      parts_.push_back(std::move(match));
    }
  }

  // "changed in spring"
  bool is_season(TokenRange at) const {
    if (at.last - at.first > 1 || page_.word(at.first) != "spring" || at.first == 0) return false;
    const std::string& before = page_.word(at.first - 1);
    return before == "in" || before == "last" || before == "this" || before == "since";
  }

  // The condition's words are left for its reader.
  void claim(TokenRange range) {
    for (std::size_t i = range.first; i < range.last; ++i) {
      if (is_condition_[i] == 0) page_.claim(i);
    }
  }

  bool passes(std::size_t i) const { return is_deed_[i] != 0 || passes_in_repair(page_, i); }

  // Words between the two that keep a deed away from its component.
  std::size_t words_between(TokenRange part, const Deed& deed) const {
    if (overlap(part, deed.at)) return 0;
    const bool leads = deed.at.last <= part.first;
    std::size_t words = 0;
    for (std::size_t i = std::min(part.last, deed.at.last); i < std::max(part.first, deed.at.first);
         ++i) {
      const std::string& word = page_.word(i);
      const bool of_put = deed.form == DeedForm::kPut && i == deed.at.last;
      if (leads && ties_to_another(word) && !(of_put && (word == "in" || word == "on")))
        return kFar;
      if (begins_sentence(word)) return kFar;
      // "removed and cleaned"
      const bool removed = word == "removed" || (joins(word) && page_.word(i - 1) == "removed");
      if (!leads && removed) continue;
      if (joins(word) || !passes(i)) ++words;
    }
    return words;
  }

  bool fits(const Deed& deed, TokenRange part) const {
    if (!page_.same_clause(deed.at.first, part.first)) return false;
    const std::size_t words = words_between(part, deed);
    const bool leads = deed.at.last <= part.first;
    switch (deed.form) {
      case DeedForm::kVerb:
        return words <= 1;
      case DeedForm::kAdjective:
      case DeedForm::kBeside:
        return words == 0;
      case DeedForm::kLeadsPart:
        return words == 0 && leads;
      case DeedForm::kFollowsPart:
        return words == 0 && !leads;
      case DeedForm::kPut:
        return words == 0 && is_put_in(page_, deed.at.first, part);
    }
    return false;
  }

  std::optional<std::size_t> part_of(const Deed& deed) const {
    std::optional<std::size_t> best;
    std::size_t best_distance = kReach + 1;
    // Components are in text order: start at the first that can be within reach.
    auto part = std::partition_point(parts_.begin(), parts_.end(), [&](const PhraseMatch& each) {
      return each.last + kReach < deed.at.first;
    });
    for (; part != parts_.end() && part->first <= deed.at.last + kReach; ++part) {
      const TokenRange at{part->first, part->last};
      if (!fits(deed, at)) continue;
      std::size_t gap = at.first >= deed.at.last   ? at.first - deed.at.last
                        : at.last <= deed.at.first ? deed.at.first - at.last
                                                   : 0;
      // "cleaned the throttle and replaced the sensor": the nearer one without a word between.
      if (deed.form == DeedForm::kVerb) gap += kUnknownWord * words_between(at, deed);
      // An adjective belongs to what follows it: "coil new plugs" is new plugs.
      const bool follows = at.first >= deed.at.last;
      const bool better =
          deed.form == DeedForm::kAdjective && follows ? gap <= best_distance : gap < best_distance;
      if (!better) continue;
      best = static_cast<std::size_t>(part - parts_.begin());
      best_distance = gap;
    }
    return best;
  }

  // "vanes were sticky, we cleaned them": the part is the last one of the clause before.
  std::optional<std::size_t> part_before(const Deed& deed) const {
    if (deed.form != DeedForm::kVerb) return std::nullopt;
    std::size_t first = deed.at.first, last = deed.at.last;
    while (first > 0 && page_.same_clause(first - 1, deed.at.first)) --first;
    bool means_it = false, says_more = false;
    for (; page_.same_clause(last, deed.at.first); ++last) {
      const std::string& word = page_.word(last);
      means_it = means_it || word == "it" || word == "them" || word == "one" || word == "both";
      says_more = says_more || says_who_or_when(last);
    }
    const bool begins = first == deed.at.first;
    if (first == 0 || !(means_it || (begins && says_more))) return std::nullopt;
    if (!parted_by_comma(page_, first - 1, first)) return std::nullopt;
    for (std::size_t i = parts_.size(); i > 0; --i) {
      const PhraseMatch& part = parts_[i - 1];
      if (part.first >= deed.at.first) {
        if (page_.same_clause(part.first, deed.at.first)) return std::nullopt;
        continue;
      }
      const bool is_free = used_[i - 1] == 0 || is_follow_up(deed.action);
      const bool is_near = page_.same_clause(part.first, first - 1);
      return is_free && is_near ? std::optional(i - 1) : std::nullopt;
    }
    return std::nullopt;
  }

  // "chain kit and guides 17 months ago at the dealer", "glow plugs & relay, us, 10 mths": a clause
  // of parts alone, with who and when after it, says that they were replaced.
  std::vector<Deed> unsaid_deeds() const {
    std::vector<Deed> deeds;
    if (vocabulary_.find(EntryKind::kAction, "replace") == nullptr) return deeds;
    for (std::size_t i = 0; i < parts_.size(); ++i) {
      const PhraseMatch& part = parts_[i];
      const bool is_last =
          i + 1 == parts_.size() || !page_.same_clause(parts_[i + 1].first, part.first);
      if (!is_last || used_[i] != 0 || page_.is_claimed(part.first)) continue;
      if (is_list_with_who_and_when(part)) {
        deeds.push_back({{part.last - 1, part.last}, "replace", DeedForm::kFollowsPart});
      }
    }
    return deeds;
  }

  bool is_list_with_who_and_when(const PhraseMatch& part) const {
    std::size_t first = part.first;
    while (first > 0 && page_.same_clause(first - 1, part.first)) --first;
    for (std::size_t i = first; i < part.first; ++i) {
      const std::string& word = page_.word(i);
      const bool passes = is_part(i) || is_stop_word(word) || says_position(word) || joins(word) ||
                          small_number(word) || word == "kit" || word == "set";
      if (is_deed_[i] != 0 || page_.is_claimed(i) || !passes || says_guess(word)) return false;
    }
    std::size_t last = part.last;
    bool tells = false;
    for (; page_.same_clause(last, part.first); ++last) {
      if (is_deed_[last] != 0 || page_.is_claimed(last)) return false;
      if (!goes_on(last)) return tells;
      tells = tells || says_who_or_when(last);
    }
    if (tells) return true;
    const bool leads_on = last < page_.size() && parted_by_comma(page_, last - 1, last);
    return leads_on && clause_that_goes_on(last).has_value() && says_who_or_when(last);
  }

  bool says_who_or_when(std::size_t i) const {
    const std::string& word = page_.word(i);
    // "two years old" is no age of a repair
    for (std::size_t k = i; k < i + 3 && page_.same_clause(k, i); ++k) {
      if (page_.word(k) == "old") return false;
    }
    return word == "us" || word == "here" || word == "ago" || word == "ours" ||
           names_others(word) || says_own_work(word) || word == "owner" ||
           months_ago_in(page_, {i, i + 1}).has_value();
  }

  bool joined(const PhraseMatch& a, const PhraseMatch& b, const Deed& deed) const {
    if (!page_.same_clause(a.first, b.first)) return joined_by_comma(a, b, deed);
    bool join = false;
    for (std::size_t i = a.last; i < b.first; ++i) {
      if (joins(page_.word(i))) {
        join = true;
      } else if (!is_stop_word(page_.word(i)) && !is_replaced_adjective(page_.word(i)) &&
                 !says_position(page_.word(i)) &&
                 !(deed.at.first <= i && i < deed.at.last && ends_clause(b))) {
        return false;
      }
    }
    return join;
  }

  // "egr valve renewed and egr cooler": nothing else is said of the second.
  bool ends_clause(const PhraseMatch& part) const {
    return !page_.same_clause(part.last, part.first);
  }

  // "replaced plugs, coils and leads", "plugs, coils and leads replaced": the clause without the
  // deed names nothing but parts.
  bool joined_by_comma(const PhraseMatch& a, const PhraseMatch& b, const Deed& deed) const {
    const bool leads = deed.at.first < a.first;
    std::size_t i = a.last;
    while (page_.same_clause(i, a.first)) {
      if (leads ? !is_stop_word(page_.word(i)) : is_deed_[i] != 0) return false;
      ++i;
    }
    if (!page_.same_clause(i, b.first)) return false;
    const std::string_view between =
        page_.text().substr(page_.token(i - 1).end, page_.token(i).begin - page_.token(i - 1).end);
    return between.starts_with(",") && names_only_parts(leads ? b : a);
  }

  bool names_only_parts(const PhraseMatch& part) const {
    std::size_t first = part.first, last = part.last;
    while (first > 0 && page_.same_clause(first - 1, part.first)) --first;
    while (page_.same_clause(last, part.first)) ++last;
    if (last - first > kLongestList) return false;
    for (std::size_t i = first; i < last; ++i) {
      if (is_deed_[i] != 0 || page_.is_claimed(i)) return false;
      const bool known = is_stop_word(page_.word(i)) || says_position(page_.word(i)) || is_part(i);
      if (!known && !joins(page_.word(i))) return false;
    }
    return true;
  }

  bool is_part(std::size_t i) const {
    const auto part = std::partition_point(parts_.begin(), parts_.end(),
                                           [&](const PhraseMatch& each) { return each.last <= i; });
    return part != parts_.end() && part->first <= i;
  }

  void add(const Deed& deed, std::size_t part) {
    const TokenRange at{parts_[part].first, parts_[part].last};
    if (is_undone_before(page_, deed.at.first) ||
        is_undone_before(page_, std::min(at.first, deed.at.first))) {
      return;
    }
    if (used_[part] != 0) {
      // "new coil fitted": the second deed says the same of the same part; "fitted and coded" adds
      // to it.
      claim(deed.at);
      if (!is_follow_up(deed.action)) return;
      const Fix further{deed.action, parts_[part].id};
      if (by_fix_.contains(further)) return;
      const TokenRange group{std::min(at.first, deed.at.first), std::max(at.last, deed.at.last)};
      RepairSaid said = said_in(around_of(group), group);
      if (const RecognisedItem* first = item_of(part)) {
        if (!said.by && is_said_[static_cast<std::size_t>(first - found_.data())] != 0) {
          said.by = first->repair->by;
        }
        if (!said.months_ago) said.months_ago = first->months_ago;
      }
      return add_item(said, deed.action, part, deed.at);
    }
    std::size_t first = part, last = part + 1;
    while (first > 0 && used_[first - 1] == 0 && joined(parts_[first - 1], parts_[first], deed))
      --first;
    while (last < parts_.size() && used_[last] == 0 && joined(parts_[last - 1], parts_[last], deed))
      ++last;
    const TokenRange group{std::min(parts_[first].first, deed.at.first),
                           std::max(parts_[last - 1].last, deed.at.last)};
    if (is_undone_after(page_, is_deed_, group)) return;
    const TokenRange around = around_of(group);
    const RepairSaid said = said_in(around, group);
    if (is_test_swap(page_, deed.at, group, around, said)) return;
    claim(deed.at);
    claim_words_that_tell(around);
    const std::size_t items = found_.size();
    for (std::size_t i = first; i < last; ++i) {
      TokenRange span{parts_[i].first, parts_[i].last};
      if (i == part)
        span = {std::min(span.first, deed.at.first), std::max(span.last, deed.at.last)};
      add_item(said, deed.action, i, span);
    }
    groups_.push_back({items, found_.size(), group});
  }

  const RecognisedItem* item_of(std::size_t part) const {
    for (const auto& [fix, item] : by_fix_) {
      if (fix.component == parts_[part].id) return &found_[item];
    }
    return nullptr;
  }

  // Said twice of a part, it is one repair: "I fitted the battery, new battery not coded".
  void add_item(const RepairSaid& said, const std::string& deed, std::size_t part,
                TokenRange span) {
    const std::string action = action_on(vocabulary_, parts_[part].id, deed);
    used_[part] = 1;
    claim({parts_[part].first, parts_[part].last});
    const Fix fix{action, parts_[part].id};
    const auto [known, is_new] = by_fix_.emplace(fix, found_.size());
    if (!is_new) return say(found_[known->second], said);
    RecognisedItem item = recognised_item(ItemKind::kEarlierRepair, action + " " + fix.component,
                                          page_.span_of(span));
    item.repair.emplace();
    item.repair->fix = fix;
    is_said_.push_back(0);
    found_.push_back(std::move(item));
    say(found_.back(), said);
  }

  // What was said first stays.
  void say(RecognisedItem& item, const RepairSaid& said) {
    char& is_said = is_said_[static_cast<std::size_t>(&item - found_.data())];
    if (said.by && is_said == 0) {
      item.repair->by = *said.by;
      is_said = 1;
    }
    if (!item.months_ago) item.months_ago = said.months_ago;
  }

  RecognisedItem finished(RecognisedItem item) const {
    const auto known = by_fix_.find(item.repair->fix);
    if (is_said_[known->second] == 0) {
      item.repair->by = RepairedBy::kElsewhere;
      item.reading_chosen = "not said by whom: taken as elsewhere";
    }
    return item;
  }

  // The group and the words of time and person directly around it.
  TokenRange around_of(TokenRange group) const {
    TokenRange around = group;
    while (is_around(around.last, group.first)) ++around.last;
    while (around.first > 0 && is_around(around.first - 1, group.first)) --around.first;
    return around;
  }

  RepairSaid said_in(TokenRange around, TokenRange group) const {
    RepairSaid said{repaired_by(page_, is_deed_, around), std::nullopt};
    TokenRange after{group.first, group.first};
    while (page_.same_clause(after.last, group.first) && after.last < group.last + kTimeReach) {
      ++after.last;
    }
    said.months_ago = months_ago_in(page_, after);
    if (!said.months_ago) said.months_ago = months_ago_in(page_, {around.first, group.first});
    return said;
  }

  void claim_words_that_tell(TokenRange words) {
    for (std::size_t i = words.first; i < words.last; ++i) {
      if (tells_repair(page_, i) || is_not_us(i)) claim({i, i + 1});
    }
  }

  bool is_around(std::size_t i, std::size_t anchor) const {
    if (!page_.same_clause(i, anchor) || page_.is_claimed(i)) return false;
    const std::string& word = page_.word(i);
    // "replaced and coded by us"
    const bool same_work =
        word == "and" && page_.same_clause(i + 1, anchor) && is_deed_[i + 1] != 0;
    if (same_work) return true;
    if (word == "and" || word == "but") return false;
    // "new coil fitted by owner": past the second word of the same work.
    return goes_on(i);
  }

  bool goes_on(std::size_t i) const {
    return passes(i) || ties_to_another(page_.word(i)) || is_not_us(i);
  }

  // "not us", "not by us"
  bool is_not_us(std::size_t i) const {
    if (!is_negation(page_.word(i))) return false;
    std::size_t next = i + 1;
    while (page_.same_clause(next, i) && page_.word(next) == "by") ++next;
    return page_.same_clause(next, i) && (page_.word(next) == "us" || page_.word(next) == "here");
  }

  // Clauses after the work that say nothing but who and when: "new, customer put it 2 months ago",
  // "battery new, starter new, both fitted elsewhere, one month ago".
  void read_next_clauses(std::size_t group) {
    std::size_t next = groups_[group].at.last;
    while (page_.same_clause(next, groups_[group].at.first)) ++next;
    bool of_both = false;
    while (const auto clause = clause_that_goes_on(next)) {
      const RepairSaid said{repaired_by(page_, is_deed_, *clause), months_ago_in(page_, *clause)};
      of_both =
          of_both || page_.word(clause->first) == "both" || page_.word(clause->first) == "all";
      const std::size_t from = of_both && group > 0 ? group - 1 : group;
      for (std::size_t i = groups_[from].first_item; i < groups_[group].last_item; ++i) {
        say(found_[i], said);
      }
      for (std::size_t i = clause->first; i < clause->last; ++i) {
        if (is_deed_[i] != 0 || tells_repair(page_, i)) claim({i, i + 1});
      }
      next = clause->last;
    }
  }

  std::optional<TokenRange> clause_that_goes_on(std::size_t first) const {
    TokenRange clause{first, first};
    bool tells = false;
    for (; page_.same_clause(clause.last, first); ++clause.last) {
      const std::size_t i = clause.last;
      if (page_.is_claimed(i) || !goes_on(i) || is_part(i) || i - first > kLongestList) {
        return std::nullopt;
      }
      tells = tells || tells_repair(page_, i);
    }
    return tells ? std::optional(clause) : std::nullopt;
  }

  NotePage& page_;
  const Vocabulary& vocabulary_;
  const BareParts& bare_parts_;
  std::vector<PhraseMatch> parts_;
  std::vector<char> used_;                    // by part
  std::vector<char> is_deed_, is_condition_;  // by token
  std::vector<RecognisedItem> found_;
  std::vector<char> is_said_;  // by item: the note says who
  std::map<Fix, std::size_t> by_fix_;
  std::vector<Group> groups_;
};

}  // namespace

void read_earlier_repairs(NotePage& page, const Vocabulary& vocabulary,
                          const BareParts& bare_parts) {
  RepairReader(page, vocabulary, bare_parts).read();
}

}  // namespace shoplore
