#include "query/repair_plan/parts_together.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "indexer/text.hpp"
#include "indexer/vocabulary_search.hpp"
#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

bool holds(const std::vector<std::string>& list, const std::string& one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

std::vector<FixInCases> most_first(const std::map<std::string, std::uint32_t>& counts) {
  std::vector<FixInCases> sorted;
  for (const auto& [fix, cases] : counts) sorted.push_back({fix, cases});
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const FixInCases& a, const FixInCases& b) { return a.cases > b.cases; });
  return sorted;
}

// The first of those counted most often.
template <class Value>
Value most_often(const std::map<Value, std::uint32_t>& counts) {
  return std::max_element(counts.begin(), counts.end(),
                          [](const auto& a, const auto& b) { return a.second < b.second; })
      ->first;
}

std::string plain_form(const std::string& written) {
  std::vector<std::string> words;
  for (const Word& word : words_of(written)) words.push_back(word.text);
  return fmt::format("{}", fmt::join(words, " "));
}

class PartCounter {
 public:
  explicit PartCounter(const Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

  void add(const std::vector<Part>& parts) {
    std::map<std::string, double> taken;
    for (const Part& part : parts) {
      const std::string key = key_of(part.part);
      taken[key] += part.quantity;
      ++seen_[key].spellings[part.part];
    }
    for (const auto& [key, quantity] : taken) {
      ++seen_[key].cases;
      ++seen_[key].quantities[quantity];
    }
  }

  std::vector<PartUsed> parts() const {
    std::vector<PartUsed> all;
    for (const auto& [key, seen] : seen_) {
      PartUsed part;
      if (vocabulary_.find(EntryKind::kComponent, key) != nullptr) part.component = key;
      part.name = part.component.empty() ? most_often(seen.spellings)
                                         : vocabulary_.display_name(EntryKind::kComponent, key);
      part.cases = seen.cases;
      part.usual_quantity = most_often(seen.quantities);
      all.push_back(std::move(part));
    }
    std::sort(all.begin(), all.end(), [](const PartUsed& a, const PartUsed& b) {
      return std::pair(b.cases, a.name) < std::pair(a.cases, b.name);
    });
    return all;
  }

 private:
  struct Seen {
    std::uint32_t cases = 0;
    std::map<double, std::uint32_t> quantities;
    std::map<std::string, std::uint32_t> spellings;
  };

  // The component's id, else the plain form of what was written.
  const std::string& key_of(const std::string& written) {
    const std::string plain = plain_form(written);
    const auto known = keys_.find(plain);
    if (known != keys_.end()) return known->second;
    const auto found =
        vocabulary_search(vocabulary_, {plain, EntryKind::kComponent, RetiredEntries::kLeftOut, 1});
    const bool is_named =
        !plain.empty() && found.found > 0 && found.matches[0].by == MatchedBy::kWholePhrase;
    return keys_
        .emplace(plain,
                 is_named ? vocabulary_.canonical(EntryKind::kComponent, found.matches[0].entry->id)
                          : plain)
        .first->second;
  }

  const Vocabulary& vocabulary_;
  std::map<std::string, std::string> keys_;
  std::map<std::string, Seen> seen_;
};

struct Heard {
  std::uint32_t came_back = 0, known = 0;
  void add(const FixLife& life) {
    came_back += life.end == FixEnd::kCameBack ? 1 : 0;
    ++known;
  }
  [[nodiscard]] Share share() const { return share_of(came_back, known); }
};

bool heard_of(const FixLife& life) {
  return life.end != FixEnd::kNotHeardOf;
}

Heard alone(std::span<const FixLife> lives, const std::string& fix) {
  Heard heard;
  for (const FixLife& life : lives) {
    const bool is_alone = life.fixes.size() == 1 && life.fixes.front() == fix;
    if (heard_of(life) && is_alone) heard.add(life);
  }
  return heard;
}

// With both, and with none of the others.
Heard together(std::span<const FixLife> lives, const std::string& fix, const std::string& other,
               const std::set<std::string>& without = {}) {
  Heard heard;
  for (const FixLife& life : lives) {
    const bool apart =
        std::none_of(life.fixes.begin(), life.fixes.end(),
                     [&](const std::string& each) { return without.contains(each); });
    if (heard_of(life) && apart && holds(life.fixes, fix) && holds(life.fixes, other)) {
      heard.add(life);
    }
  }
  return heard;
}

// What was missed of this fix.
std::vector<MissedPart> missed_of(std::span<const FixLife> lives, const FixCompany& company) {
  std::vector<MissedPart> missed;
  const Heard without = alone(lives, company.fix);
  if (without.known < kFewestToPlan) return missed;
  std::set<std::string> told;
  for (const FixInCases& other : company.beside) {
    if (together(lives, company.fix, other.fix, told).known < kFewestToPlan) continue;
    const Heard with = together(lives, company.fix, other.fix);
    MissedPart one{company.fix, other.fix, without.share(), with.share()};
    if (one.alone.interval.low <= one.together.interval.high) continue;
    told.insert(other.fix);
    missed.push_back(std::move(one));
  }
  return missed;
}

// Of each of the fixes, in how many of the lists it is and what else is there.
std::vector<FixCompany> companies(const std::vector<const std::vector<std::string>*>& lists,
                                  const std::vector<std::string>& fixes) {
  std::vector<FixCompany> all;
  for (const std::string& fix : fixes) {
    FixCompany company{fix, 0, {}};
    std::map<std::string, std::uint32_t> beside;
    for (const std::vector<std::string>* list : lists) {
      if (!holds(*list, fix)) continue;
      ++company.cases;
      for (const std::string& other : *list) {
        if (other != fix) ++beside[other];
      }
    }
    company.beside = most_first(beside);
    all.push_back(std::move(company));
  }
  return all;
}

}  // namespace

std::vector<FixCompany> fixes_beside(std::span<const PlanCase> cases,
                                     const std::vector<std::string>& fixes) {
  std::vector<const std::vector<std::string>*> lists;
  for (const PlanCase& each : cases) lists.push_back(&each.fixes);
  return companies(lists, fixes);
}

PartsUsed parts_used(std::span<const PlanCase* const> cases, const Vocabulary& vocabulary) {
  PartsUsed used;
  PartCounter counter(vocabulary);
  for (const PlanCase* each : cases) {
    if (!each->record.correction || each->record.correction->parts.empty()) continue;
    ++used.out_of;
    counter.add(each->record.correction->parts);
  }
  used.parts = counter.parts();
  return used;
}

std::vector<MissedPart> missed_when_left_out(std::span<const FixLife> lives) {
  std::vector<const std::vector<std::string>*> lists;
  std::set<std::string> fixes;
  for (const FixLife& life : lives) {
    if (!heard_of(life)) continue;
    lists.push_back(&life.fixes);
    fixes.insert(life.fixes.begin(), life.fixes.end());
  }
  std::vector<MissedPart> missed;
  for (const FixCompany& company : companies(lists, {fixes.begin(), fixes.end()})) {
    for (MissedPart& one : missed_of(lives, company)) missed.push_back(std::move(one));
  }
  return missed;
}

}  // namespace shoplore
