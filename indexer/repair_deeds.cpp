#include "indexer/repair_deeds.hpp"

#include <algorithm>
#include <optional>

#include "indexer/note_words.hpp"
#include "indexer/repair_said.hpp"
#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kTimeReach = 12;  // tokens from the verb to its time
constexpr int kOldestAge = 12;          // months; an older part may be as old as the car

class DeedFinder {
 public:
  DeedFinder(const NotePage& page, const std::vector<PhraseMatch>& parts, bool may_replace)
      : page_(page),
        parts_(parts),
        may_replace_(may_replace),
        actions_(page.matches({EntryKind::kAction})),
        conditions_(page.matches({EntryKind::kCondition})),
        checks_(page.matches({EntryKind::kCheck})),
        action_(actions_.begin()) {}

  std::vector<Deed> find() {
    std::vector<Deed> deeds;
    for (std::size_t i = 0; i < page_.size();) {
      auto deed = page_.is_claimed(i) ? std::nullopt : deed_at(i);
      i = deed ? deed->at.last : i + 1;
      if (deed) deeds.push_back(std::move(*deed));
    }
    return deeds;
  }

 private:
  std::optional<Deed> deed_at(std::size_t i) {
    while (action_ != actions_.end() && action_->last <= i) ++action_;
    const bool named = action_ != actions_.end() && action_->first <= i;
    const std::string& word = page_.word(i);
    if (named && action_->last - action_->first == 1 && word == "did") return did(i);
    // "bolts done up far too tight": how they were found.
    const bool is_tightness =
        word == "done" && page_.same_clause(i, i + 1) && page_.word(i + 1) == "up";
    if (is_tightness) return std::nullopt;
    if (is_replaced_adjective(word) && (is_tried_on(i) || counts_somebody(i))) return std::nullopt;
    if (named && is_done(i) && !is_passing(i)) {
      const bool adjective = is_replaced_adjective(word) && action_->last - action_->first == 1;
      return Deed{{action_->first, action_->last},
                  action_->id,
                  adjective ? DeedForm::kAdjective : DeedForm::kVerb};
    }
    // "since wheel balancing last week"
    const bool is_naming = named && word.ends_with("ing") && action_->last - action_->first == 1;
    if (is_naming && is_told_of_work(i)) {
      return Deed{{i, i + 1}, action_->id, DeedForm::kFollowsPart};
    }
    // The words below are no phrases of the vocabulary; a shop without the action replaces nothing.
    if (!may_replace_) return std::nullopt;
    if (is_replaced_adjective(word)) return replace({i, i + 1}, DeedForm::kAdjective);
    if (word == "through" && is_used_up(i)) return replace({i, i + 2}, DeedForm::kAdjective);
    if (word == "put") return replace({i, i + 1}, DeedForm::kPut);
    if (word == "done") return replace({i, i + 1}, DeedForm::kFollowsPart);
    if (word == "by" && is_by_somebody(i)) return replace({i, i + 1}, DeedForm::kFollowsPart);
    if (is_work_noun(word) && is_told_of_work(i)) {
      return replace({i, i + 1}, DeedForm::kFollowsPart);
    }
    return aged(i);
  }

  // "changed", or "change" right after somebody who can have done it.
  bool is_done(std::size_t i) const {
    // "bleeding was never done"
    for (std::size_t k = action_->first; k < action_->last; ++k) {
      if (is_negation(page_.word(k))) return false;
    }
    // "fit new battery" asks for it.
    const bool plain = is_plain_verb(page_.word(action_->first));
    if (plain && !has_somebody_before(page_, action_->first) && !is_ours_of_late(action_->first)) {
      return false;
    }
    if (is_past(page_.word(i)) || is_replaced_adjective(page_.word(i))) return true;
    return plain && i == action_->first;
  }

  // "oil drained, had silver in it", "refitted the cover": let out for a look or put back today,
  // unless who, when or the refilling is told.
  bool is_passing(std::size_t i) const {
    if (page_.word(i) != "drained" && page_.word(i) != "refitted") return false;
    for (std::size_t next = i + 1; page_.same_clause(next, i); ++next) {
      const std::string& word = page_.word(next);
      if (word == "refilled" || word == "filled" || word == "renewed" || word == "changed" ||
          says_who_or_when(page_, next)) {
        return false;
      }
    }
    return true;
  }

  // "I change battery two months ago"
  bool is_ours_of_late(std::size_t i) const {
    if (i == 0 || !page_.same_clause(i - 1, i) || !names_us(page_.word(i - 1))) return false;
    std::size_t last = i;
    while (page_.same_clause(last, i) && last < i + kTimeReach) ++last;
    return months_ago_in(page_, {i, last}).has_value();
  }

  // "already been through two alternators"
  bool is_used_up(std::size_t i) const {
    if (i == 0 || !page_.same_clause(i - 1, i + 1)) return false;
    const std::string& before = page_.word(i - 1);
    const auto count = small_number(page_.word(i + 1));
    return (before == "been" || before == "gone" || before == "went") && count && *count > 1;
  }

  // "another garage cleaned the drains", "the second dealer"
  bool counts_somebody(std::size_t i) const {
    return page_.word(i) != "new" && page_.same_clause(i, i + 1) && names_others(page_.word(i + 1));
  }

  // "fine on another charger", "swapped with another": tried, not put in for good.
  bool is_tried_on(std::size_t i) const {
    return page_.word(i) != "new" && i > 0 && page_.same_clause(i - 1, i) &&
           is_preposition(page_.word(i - 1));
  }

  // "did the plugs", but not "the fan did come on" or "did not".
  // "did the leak-off test" names a check.
  std::optional<Deed> did(std::size_t i) const {
    std::size_t first = i + 1;
    while (page_.same_clause(first, i) && is_stop_word(page_.word(first))) ++first;
    const auto part = std::partition_point(
        parts_.begin(), parts_.end(), [&](const PhraseMatch& each) { return each.first < first; });
    const std::size_t end = part == parts_.end() ? first : part->last;
    for (const PhraseMatch& check : checks_) {
      if (check.first == first && check.last > end) return std::nullopt;
    }
    return Deed{{i, i + 1}, action_->id, DeedForm::kLeadsPart};
  }

  // "three months old", "2mo old"
  std::optional<Deed> aged(std::size_t i) const {
    const auto months = months_ago_in(page_, {i, i + 1});
    if (!months || *months > kOldestAge) return std::nullopt;
    std::size_t last = i + 1;
    while (last < i + 3 && page_.same_clause(last, i) && page_.word(last) != "old") ++last;
    if (!page_.same_clause(last, i) || page_.word(last) != "old") return std::nullopt;
    return replace({i, last + 1}, DeedForm::kBeside);
  }

  static bool is_work_noun(std::string_view word) {
    return word == "replacement" || word == "renewal" || word == "change";
  }

  // "since the thermostat replacement", "cambelt change at the dealer": a part goes before, and the
  // work is an event in the past or somebody or some time is told with it.
  bool is_told_of_work(std::size_t i) const {
    const auto part = std::partition_point(parts_.begin(), parts_.end(),
                                           [&](const PhraseMatch& each) { return each.last < i; });
    if (part == parts_.end() || part->last != i) return false;
    std::size_t first = part->first;
    while (first > 0 && page_.same_clause(first - 1, i) &&
           (page_.word(first - 1) == "the" || says_position(page_.word(first - 1)))) {
      --first;
    }
    const bool is_event = first > 0 && page_.same_clause(first - 1, i) &&
                          (page_.word(first - 1) == "since" || page_.word(first - 1) == "after" ||
                           page_.word(first - 1) == "following");
    // "since the battery change" is a condition of the vocabulary.
    const bool is_condition =
        std::any_of(conditions_.begin(), conditions_.end(),
                    [&](const PhraseMatch& each) { return each.first <= i && i < each.last; });
    if (is_event) return !is_condition;
    for (std::size_t next = i + 1; page_.same_clause(next, i); ++next) {
      if (says_who_or_when(page_, next)) return true;
      if (!is_stop_word(page_.word(next))) return false;
    }
    return false;
  }

  // "cambelt and pump by the last owner": after a component, before somebody.
  bool is_by_somebody(std::size_t i) const {
    const auto part = std::partition_point(parts_.begin(), parts_.end(),
                                           [&](const PhraseMatch& each) { return each.last < i; });
    if (part == parts_.end() || part->last != i) return false;
    for (std::size_t next = i + 1; page_.same_clause(next, i); ++next) {
      const std::string& word = page_.word(next);
      if (names_others(word) || names_owner(word) || word == "us") return true;
      if (!is_stop_word(word) && !tells_repair(page_, next)) return false;
    }
    return false;
  }

  static std::optional<Deed> replace(TokenRange at, DeedForm form) {
    return Deed{at, "replace", form};
  }

  const NotePage& page_;
  const std::vector<PhraseMatch>& parts_;
  bool may_replace_;
  std::vector<PhraseMatch> actions_, conditions_, checks_;
  std::vector<PhraseMatch>::const_iterator action_;
};

}  // namespace

std::vector<Deed> deeds_of(const NotePage& page, const Vocabulary& vocabulary,
                           const std::vector<PhraseMatch>& parts) {
  const bool may_replace = vocabulary.find(EntryKind::kAction, "replace") != nullptr;
  return DeedFinder(page, parts, may_replace).find();
}

std::string action_on(const Vocabulary& vocabulary, const std::string& part,
                      const std::string& action) {
  const bool is_fluid = part.ends_with("_oil") || part.ends_with("_fluid") || part == "coolant";
  const bool drains = vocabulary.find(EntryKind::kAction, "change_fluid") != nullptr;
  if (is_fluid && drains && action == "replace") return "change_fluid";
  // "oil and filter changed"
  return part.ends_with("_filter") && action == "change_fluid" ? "replace" : action;
}

}  // namespace shoplore
