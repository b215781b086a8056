#include "indexer/repair_links.hpp"

#include <algorithm>

#include "indexer/denials.hpp"
#include "indexer/note_words.hpp"
#include "indexer/repair_said.hpp"
#include "indexer/repair_undone.hpp"
#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kReach = 8;         // tokens between a component and its deed
constexpr std::size_t kFar = 1'000;       // unknown words between: never its deed
constexpr std::size_t kUnknownWord = 2;   // a word between counts as so many more tokens
constexpr std::size_t kLongestList = 12;  // tokens of a clause that names nothing but parts

bool overlap(TokenRange a, TokenRange b) {
  return a.first < b.last && b.first < a.last;
}

}  // namespace

bool joins_parts(std::string_view word) {
  return word == "and" || word == "or" || word == "plus";
}

bool RepairLinks::passes(std::size_t i) const {
  return is_deed_[i] != 0 || passes_in_repair(page_, i);
}

// Words between the two that keep a deed away from its component.
std::size_t RepairLinks::words_between(TokenRange part, const Deed& deed) const {
  if (overlap(part, deed.at)) return 0;
  const bool leads = deed.at.last <= part.first;
  std::size_t words = 0;
  for (std::size_t i = std::min(part.last, deed.at.last); i < std::max(part.first, deed.at.first);
       ++i) {
    const std::string& word = page_.word(i);
    const bool of_put = deed.form == DeedForm::kPut && i == deed.at.last;
    if (leads && ties_to_another(word) && !(of_put && (word == "in" || word == "on"))) return kFar;
    if (begins_sentence(word)) return kFar;
    // "removed and cleaned"
    const bool removed = word == "removed" || (joins_parts(word) && page_.word(i - 1) == "removed");
    if (!leads && removed) continue;
    if (joins_parts(word) || !passes(i)) ++words;
  }
  return words;
}

bool RepairLinks::fits(const Deed& deed, TokenRange part) const {
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

std::optional<std::size_t> RepairLinks::part_of(const Deed& deed) const {
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
std::optional<std::size_t> RepairLinks::part_before(const Deed& deed,
                                                    const std::vector<char>& used) const {
  if (deed.form != DeedForm::kVerb) return std::nullopt;
  std::size_t first = deed.at.first, last = deed.at.last;
  while (first > 0 && page_.same_clause(first - 1, deed.at.first)) --first;
  bool means_it = false, says_more = false;
  for (; page_.same_clause(last, deed.at.first); ++last) {
    const std::string& word = page_.word(last);
    means_it = means_it || word == "it" || word == "them" || word == "one" || word == "both";
    says_more = says_more || says_who_or_when(page_, last);
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
    const bool is_free = used[i - 1] == 0 || is_follow_up(deed.action);
    const bool is_near = page_.same_clause(part.first, first - 1);
    return is_free && is_near ? std::optional(i - 1) : std::nullopt;
  }
  return std::nullopt;
}

bool RepairLinks::joined(const PhraseMatch& a, const PhraseMatch& b, const Deed& deed) const {
  if (!page_.same_clause(a.first, b.first)) return joined_by_comma(a, b, deed);
  // "regassed and condenser replaced": the second has a deed of its own.
  const bool has_own =
      deed.at.last <= b.first && page_.same_clause(b.last, b.first) && is_deed_[b.last] != 0;
  if (has_own) return false;
  bool join = false;
  for (std::size_t i = a.last; i < b.first; ++i) {
    if (joins_parts(page_.word(i))) {
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
bool RepairLinks::ends_clause(const PhraseMatch& part) const {
  return !page_.same_clause(part.last, part.first);
}

// "replaced plugs, coils and leads", "plugs, coils and leads replaced": the clause without the
// deed names nothing but parts.
bool RepairLinks::joined_by_comma(const PhraseMatch& a, const PhraseMatch& b,
                                  const Deed& deed) const {
  const bool leads = deed.at.first < a.first;
  std::size_t i = a.last;
  while (page_.same_clause(i, a.first)) {
    if (leads ? !is_stop_word(page_.word(i)) : is_deed_[i] != 0) return false;
    ++i;
  }
  if (!page_.same_clause(i, b.first)) return false;
  const std::string_view between = page_.between(i - 1, i);
  return between.starts_with(",") && names_only_parts(leads ? b : a);
}

bool RepairLinks::names_only_parts(const PhraseMatch& part) const {
  std::size_t first = part.first, last = part.last;
  while (first > 0 && page_.same_clause(first - 1, part.first)) --first;
  while (page_.same_clause(last, part.first)) ++last;
  if (last - first > kLongestList) return false;
  for (std::size_t i = first; i < last; ++i) {
    if (is_deed_[i] != 0 || page_.is_claimed(i)) return false;
    const bool known = is_stop_word(page_.word(i)) || says_position(page_.word(i)) || is_part(i);
    if (!known && !joins_parts(page_.word(i))) return false;
  }
  return true;
}

bool RepairLinks::is_part(std::size_t i) const {
  const auto part = std::partition_point(parts_.begin(), parts_.end(),
                                         [&](const PhraseMatch& each) { return each.last <= i; });
  return part != parts_.end() && part->first <= i;
}

}  // namespace shoplore
