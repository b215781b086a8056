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

double share_value(const Share& share) {
  return static_cast<double>(share.count) / share.out_of;
}

}  // namespace

std::vector<FixCompany> fixes_beside(std::span<const PlanCase> cases,
                                     const std::vector<std::string>& fixes) {
  std::vector<FixCompany> all;
  for (const std::string& fix : fixes) {
    FixCompany company{fix, 0, {}};
    std::map<std::string, std::uint32_t> beside;
    for (const PlanCase& each : cases) {
      if (!holds(each.fixes, fix)) continue;
      ++company.cases;
      for (const std::string& other : each.fixes) {
        if (other != fix) ++beside[other];
      }
    }
    company.beside = most_first(beside);
    all.push_back(std::move(company));
  }
  return all;
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
  std::map<std::string, Heard> alone;
  std::map<std::pair<std::string, std::string>, Heard> together;
  for (const FixLife& life : lives) {
    if (life.end == FixEnd::kNotHeardOf) continue;
    if (life.fixes.size() == 1) alone[life.fixes.front()].add(life);
    for (const std::string& fix : life.fixes) {
      for (const std::string& other : life.fixes) {
        if (fix != other) together[{fix, other}].add(life);
      }
    }
  }
  std::vector<MissedPart> missed;
  for (const auto& [pair, with] : together) {
    const auto without = alone.find(pair.first);
    if (without == alone.end()) continue;
    if (without->second.known < kFewestToPlan || with.known < kFewestToPlan) continue;
    MissedPart one{pair.first, pair.second, without->second.share(), with.share()};
    if (one.alone.interval.low > one.together.interval.high) missed.push_back(std::move(one));
  }
  std::stable_sort(missed.begin(), missed.end(), [](const MissedPart& a, const MissedPart& b) {
    return share_value(a.alone) - share_value(a.together) >
           share_value(b.alone) - share_value(b.together);
  });
  return missed;
}

}  // namespace shoplore
