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
#include "indexer/repair_links.hpp"
#include "indexer/repair_parts.hpp"
#include "indexer/repair_said.hpp"
#include "indexer/repair_undone.hpp"
#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestList = 12;  // tokens of a clause that only goes on with the last one
constexpr std::size_t kTimeReach = 16;    // tokens from the work to its time

class RepairReader {
 public:
  RepairReader(NotePage& page, const Vocabulary& vocabulary, const BareParts& bare_parts)
      : RepairReader(page, vocabulary, repair_parts_of(page, vocabulary, bare_parts)) {}

  void read() {
    const std::vector<Deed> deeds = deeds_of(page_, vocabulary_, parts_);
    for (const Deed& deed : deeds) {
      std::fill(is_deed_.begin() + static_cast<std::ptrdiff_t>(deed.at.first),
                is_deed_.begin() + static_cast<std::ptrdiff_t>(deed.at.last), 1);
    }
    for (const Deed& deed : deeds) {
      if (const auto part = links_.part_of(deed)) {
        add(deed, *part);
      } else if (const auto before = links_.part_before(deed, used_)) {
        add(deed, *before);
      }
    }
    for (const Deed& deed : unsaid_deeds()) {
      if (const auto part = links_.part_of(deed)) add(deed, *part);
    }
    // The last one first: it stands nearest to what follows.
    for (std::size_t i = groups_.size(); i > 0; --i) read_next_clauses(i - 1);
    share_within_clauses();
    for (RecognisedItem& item : found_) page_.keep(finished(std::move(item)));
  }

 private:
  RepairReader(NotePage& page, const Vocabulary& vocabulary, RepairParts found)
      : page_(page),
        vocabulary_(vocabulary),
        parts_(std::move(found.parts)),
        used_(parts_.size(), 0),
        is_deed_(page.size(), 0),
        is_condition_(std::move(found.is_condition)),
        links_(page_, parts_, is_deed_) {}

  struct Group {
    std::size_t first_item = 0, last_item = 0;  // half-open, of found_
    TokenRange at;
  };

  // The condition's words are left for its reader.
  void claim(TokenRange range) {
    for (std::size_t i = range.first; i < range.last; ++i) {
      if (is_condition_[i] == 0) page_.claim(i);
    }
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
      const bool passes = links_.is_part(i) || is_stop_word(word) || says_position(word) ||
                          joins_parts(word) || small_number(word) || word == "kit" || word == "set";
      if (is_deed_[i] != 0 || page_.is_claimed(i) || !passes || says_guess(word)) return false;
    }
    std::size_t last = part.last;
    bool tells = false;
    for (; page_.same_clause(last, part.first); ++last) {
      if (is_deed_[last] != 0 || page_.is_claimed(last)) return false;
      if (!goes_on(last)) return tells;
      tells = tells || says_who_or_when(page_, last);
    }
    if (tells) return true;
    const bool leads_on = last < page_.size() && parted_by_comma(page_, last - 1, last);
    return leads_on && clause_that_goes_on(last).has_value() && says_who_or_when(page_, last);
  }

  void add(const Deed& deed, std::size_t part) {
    const TokenRange at{parts_[part].first, parts_[part].last};
    if (is_undone_before(page_, deed.at.first) ||
        is_undone_before(page_, std::min(at.first, deed.at.first))) {
      return;
    }
    if (used_[part] != 0) return add_further(deed, part);
    std::size_t first = part, last = part + 1;
    while (first > 0 && used_[first - 1] == 0 &&
           links_.joined(parts_[first - 1], parts_[first], deed))
      --first;
    while (last < parts_.size() && used_[last] == 0 &&
           links_.joined(parts_[last - 1], parts_[last], deed))
      ++last;
    const TokenRange group{std::min(parts_[first].first, deed.at.first),
                           std::max(parts_[last - 1].last, deed.at.last)};
    if (is_undone_after(page_, is_deed_, group)) return;
    const TokenRange around = around_of(group);
    const RepairSaid said = said_in(around, group);
    if (is_test_swap(page_, deed.at, group, around, said_or_next(said, group))) return;
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

  // "new coil fitted": the second deed says the same of the same part; "fitted and coded" adds to
  // it.
  void add_further(const Deed& deed, std::size_t part) {
    const TokenRange at{parts_[part].first, parts_[part].last};
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
    add_item(said, deed.action, part, deed.at);
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

  // "cable adjusted and shoes cleaned by us": what the clause says at its end is said of all its
  // work.
  void share_within_clauses() {
    for (std::size_t i = found_.size(); i > 1; --i) {
      RecognisedItem &before = found_[i - 2], &after = found_[i - 1];
      const std::size_t at = page_.tokens_at(before.span).first;
      const bool joined = at < page_.tokens_at(after.span).first &&
                          page_.same_clause(at, page_.tokens_at(after.span).first);
      const bool says_by = is_said_[i - 1] != 0;
      const bool by_another =
          is_said_[i - 2] != 0 && says_by && before.repair->by != after.repair->by;
      if (!joined || by_another) continue;
      say(before, {says_by ? std::optional(after.repair->by) : std::nullopt, after.months_ago});
    }
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

  // "tensioner swapped, both here 7 mo ago": the clause behind tells who and when as well.
  RepairSaid said_or_next(RepairSaid said, TokenRange group) const {
    std::size_t next = group.last;
    while (page_.same_clause(next, group.first)) ++next;
    const auto clause = clause_that_goes_on(next);
    if (!clause) return said;
    if (!said.by) said.by = repaired_by(page_, is_deed_, *clause);
    if (!said.months_ago) said.months_ago = months_ago_in(page_, *clause);
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
    return links_.passes(i) || ties_to_another(page_.word(i)) || is_not_us(i);
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
      if (page_.is_claimed(i) || !goes_on(i) || links_.is_part(i) || i - first > kLongestList) {
        return std::nullopt;
      }
      tells = tells || tells_repair(page_, i);
    }
    return tells ? std::optional(clause) : std::nullopt;
  }

  NotePage& page_;
  const Vocabulary& vocabulary_;
  const std::vector<PhraseMatch> parts_;
  std::vector<char> used_;                    // by part
  std::vector<char> is_deed_, is_condition_;  // by token
  const RepairLinks links_;
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
