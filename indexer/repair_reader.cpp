// Each word of work done (a deed) looks for its component: an adjective ("new") beside it, a verb
// within a few words, on either side. Components joined to that one ("coil and plugs") share the
// deed. The words of time and person directly around are claimed with them.
#include "indexer/repair_reader.hpp"

#include <algorithm>
#include <optional>

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kReach = 4;  // words between a component and the verb

enum class DeedForm { kVerb, kAdjective };

struct Deed {
  TokenRange at;
  std::string action;
  DeedForm form = DeedForm::kVerb;
};

bool is_past(std::string_view word) {
  return word.ends_with("ed") || word == "rebuilt" || word == "done" || word == "put" ||
         word == "did" || word == "new" || word == "bled";
}

// Whole months of so many days, weeks, months or years, rounded down.
std::optional<int> months_of(int count, std::string_view unit) {
  if (unit.starts_with("day") || unit == "night") return count / 30;
  if (unit.starts_with("w"))
    return is_since_unit(unit) ? std::optional(count * 7 / 30) : std::nullopt;
  if (unit.starts_with("mo") || unit.starts_with("mth")) return count;
  if (unit.starts_with("y")) return count * 12;
  return std::nullopt;
}

bool overlap(TokenRange a, TokenRange b) {
  return a.first < b.last && b.first < a.last;
}

class RepairReader {
 public:
  RepairReader(NotePage& page, const Vocabulary& vocabulary)
      : page_(page), vocabulary_(vocabulary) {}

  void read() {
    find_components();
    find_deeds();
    for (const Deed& deed : deeds_) {
      if (const auto part = component_of(deed)) add(deed, *part);
    }
  }

 private:
  void find_components() {
    for (PhraseMatch& match : page_.matches({EntryKind::kSymptom, EntryKind::kCondition,
                                             EntryKind::kWorkSign, EntryKind::kComponent})) {
      if (match.kind == EntryKind::kComponent) components_.push_back(std::move(match));
    }
    used_.assign(components_.size(), 0);
  }

  void find_deeds() {
    const auto actions = page_.matches({EntryKind::kAction});
    auto action = actions.begin();
    is_deed_.assign(page_.size(), 0);
    for (std::size_t i = 0; i < page_.size(); ++i) {
      while (action != actions.end() && action->last <= i) ++action;
      const bool named = action != actions.end() && action->first <= i;
      const bool adjective = is_replaced_adjective(page_.word(i));
      if (page_.is_claimed(i) || (!adjective && !(named && is_past(page_.word(i))))) continue;
      // "second" is no phrase of the vocabulary; a shop without the action replaces nothing.
      if (!named && vocabulary_.find(EntryKind::kAction, "replace") == nullptr) continue;
      Deed deed{{i, i + 1}, "replace", DeedForm::kAdjective};
      if (named) deed = {{action->first, action->last}, action->id, deed.form};
      if (!adjective || deed.at.last - deed.at.first > 1) deed.form = DeedForm::kVerb;
      std::fill(is_deed_.begin() + static_cast<std::ptrdiff_t>(deed.at.first),
                is_deed_.begin() + static_cast<std::ptrdiff_t>(deed.at.last), 1);
      i = deed.at.last - 1;
      deeds_.push_back(std::move(deed));
    }
  }

  // Words between the two that keep an adjective away from its component.
  std::size_t words_between(TokenRange a, TokenRange b) const {
    std::size_t words = 0;
    for (std::size_t i = std::min(a.last, b.last); i < std::max(a.first, b.first); ++i) {
      const bool joins = page_.word(i) == "and" || page_.word(i) == "or";
      const bool passes =
          is_stop_word(page_.word(i)) || says_position(page_.word(i)) || is_deed_[i] != 0;
      if (joins || !passes) ++words;
    }
    return words;
  }

  std::optional<std::size_t> component_of(const Deed& deed) const {
    std::optional<std::size_t> best;
    std::size_t best_distance = kReach + 1;
    // Components are in text order: start at the first that can be within reach.
    auto part = std::partition_point(
        components_.begin(), components_.end(),
        [&](const PhraseMatch& each) { return each.last + kReach < deed.at.first; });
    for (; part != components_.end() && part->first <= deed.at.last + kReach; ++part) {
      const TokenRange at{part->first, part->last};
      if (!page_.same_clause(deed.at.first, at.first)) continue;
      const std::size_t gap = at.first >= deed.at.last   ? at.first - deed.at.last
                              : at.last <= deed.at.first ? deed.at.first - at.last
                                                         : 0;
      const bool beside = overlap(at, deed.at) || words_between(at, deed.at) == 0;
      if (deed.form == DeedForm::kAdjective && !beside) continue;
      // An adjective belongs to what follows it: "coil new plugs" is new plugs.
      const bool follows = at.first >= deed.at.last;
      const bool better =
          deed.form == DeedForm::kAdjective && follows ? gap <= best_distance : gap < best_distance;
      if (!better) continue;
      best = static_cast<std::size_t>(part - components_.begin());
      best_distance = gap;
    }
    return best;
  }

  // Whether the words before say that the work is wanted, planned or denied.
  bool is_undone(std::size_t before) const {
    for (std::size_t i = before; i > 0 && page_.same_clause(i - 1, before); --i) {
      const std::string& word = page_.word(i - 1);
      if (word == "be" && i > 1 && page_.word(i - 2) == "to") return true;
      if (is_stop_word(word)) continue;
      return is_negation(word) || says_not_yet(word) || word == "if";
    }
    return false;
  }

  bool joined(const PhraseMatch& a, const PhraseMatch& b) const {
    if (!page_.same_clause(a.first, b.first)) return false;
    bool join = false;
    for (std::size_t i = a.last; i < b.first; ++i) {
      if (page_.word(i) == "and" || page_.word(i) == "or" || page_.word(i) == "plus") {
        join = true;
      } else if (!is_stop_word(page_.word(i)) && !is_replaced_adjective(page_.word(i)) &&
                 !says_position(page_.word(i))) {
        return false;
      }
    }
    return join;
  }

  void add(const Deed& deed, std::size_t part) {
    const TokenRange at{components_[part].first, components_[part].last};
    if (is_undone(deed.at.first) || is_undone(std::min(at.first, deed.at.first))) return;
    if (used_[part] != 0) {
      // "new coil fitted": the second deed says the same of the same part.
      return page_.claim(deed.at);
    }
    std::size_t first = part, last = part + 1;
    while (first > 0 && used_[first - 1] == 0 && joined(components_[first - 1], components_[first]))
      --first;
    while (last < components_.size() && used_[last] == 0 &&
           joined(components_[last - 1], components_[last]))
      ++last;
    const TokenRange group{std::min(components_[first].first, deed.at.first),
                           std::max(components_[last - 1].last, deed.at.last)};
    const RecognisedItem like = said_around(group, deed);
    for (std::size_t i = first; i < last; ++i) {
      TokenRange span{components_[i].first, components_[i].last};
      if (i == part)
        span = {std::min(span.first, deed.at.first), std::max(span.last, deed.at.last)};
      add_item(like, deed.action, i, span);
    }
  }

  void add_item(const RecognisedItem& like, const std::string& action, std::size_t part,
                TokenRange span) {
    used_[part] = 1;
    page_.claim({components_[part].first, components_[part].last});
    RecognisedItem item = like;
    item.id = action + " " + components_[part].id;
    item.repair->fix = {action, components_[part].id};
    item.span = page_.span_of(span);
    page_.keep(std::move(item));
  }

  // Who did it, from the words directly around; claims them and the deed.
  RecognisedItem said_around(TokenRange group, const Deed& deed) {
    page_.claim(deed.at);
    bool elsewhere = false, owner = false, here = false;
    const auto look = [&](std::size_t i) {
      const std::string& word = page_.word(i);
      elsewhere = elsewhere || says_elsewhere(word);
      owner = owner || says_owner(word);
      here = here || says_here(word);
      if (is_context(i)) page_.claim(i);
    };
    for (std::size_t i = group.first; i < group.last; ++i) look(i);
    for (std::size_t i = group.last; is_around(i, group.first); ++i) look(i);
    for (std::size_t i = group.first; i > 0 && is_around(i - 1, group.first); --i) look(i - 1);
    RecognisedItem item = recognised_item(ItemKind::kEarlierRepair, "", {});
    item.repair.emplace();
    item.repair->by = elsewhere ? RepairedBy::kElsewhere
                      : owner   ? RepairedBy::kOwner
                      : here    ? RepairedBy::kHere
                                : RepairedBy::kElsewhere;
    if (!elsewhere && !owner && !here) item.reading_chosen = "not said by whom: taken as elsewhere";
    for (std::size_t i = group.first; page_.same_clause(i, group.first) && !item.months_ago; ++i) {
      item.months_ago = months_ago_at(i);
    }
    // "fitted elsewhere, one month ago"
    std::size_t next = group.first;
    while (page_.same_clause(next, group.first)) ++next;
    if (!item.months_ago && next < page_.size()) item.months_ago = months_ago_at(next);
    return item;
  }

  // "4 mo ago", "two years ago", "last month"; nothing when the token begins none of these.
  std::optional<int> months_ago_at(std::size_t i) const {
    const auto word = [&](std::size_t at) {
      return page_.same_clause(at, i) ? std::string_view(page_.word(at)) : std::string_view();
    };
    if (word(i) == "last") return months_of(1, word(i + 1));
    if (word(i) == "yesterday") return 0;
    if (word(i) == "half" && word(i + 1) == "a" && word(i + 2) == "year") return 6;
    const auto count = small_number(word(i));
    const bool past = word(i + 2) == "ago" || word(i + 2) == "back" || word(i + 2) == "old";
    return count && past ? months_of(*count, word(i + 1)) : std::nullopt;
  }

  bool is_around(std::size_t i, std::size_t anchor) const {
    if (!page_.same_clause(i, anchor) || page_.is_claimed(i)) return false;
    const std::string& word = page_.word(i);
    if (word == "and" || word == "but") return false;
    // "new coil fitted by owner": past the second word of the same work.
    return is_stop_word(word) || is_context(i) || is_deed_[i] != 0;
  }

  // A word of time or person, or the number before one ("four months", "5,000 km").
  bool is_context(std::size_t i) const {
    const std::string& word = page_.word(i);
    const bool is_year =
        word.size() == 4 && is_number(word) && (word.starts_with("19") || word.starts_with("20"));
    if (is_year || is_repair_context(word)) return true;
    for (std::size_t next = i + 1; next <= i + 2 && page_.same_clause(i, next); ++next) {
      if (is_since_unit(page_.word(next))) return is_number(word);
      if (!is_number(page_.word(next))) return false;
    }
    return false;
  }

  static bool is_number(std::string_view word) {
    for (const char* name : {"few", "couple", "several", "of", "half"}) {
      if (word == name) return true;
    }
    if (small_number(word)) return true;
    return word.find_first_not_of("0123456789k") == word.npos;
  }

  NotePage& page_;
  const Vocabulary& vocabulary_;
  std::vector<PhraseMatch> components_;
  std::vector<char> used_;  // by component
  std::vector<Deed> deeds_;
  std::vector<char> is_deed_;  // by token
};

}  // namespace

void read_earlier_repairs(NotePage& page, const Vocabulary& vocabulary) {
  RepairReader(page, vocabulary).read();
}

}  // namespace shoplore
