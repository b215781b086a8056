// Per scope two walks: one over known groups, which gives the margins of every table (cases in
// which all of these are known, by outcome), and one over items, which gives the sets. The sets'
// attributes are known wherever the set holds, so their margins are always there.
#include "query/patterns/pattern_tests.hpp"

#include <algorithm>
#include <unordered_map>

namespace shoplore {
namespace {

using Numbers = std::vector<std::uint32_t>;
using SetKey = std::array<std::uint32_t, kMaxSetSize>;

struct SetKeyHash {
  std::size_t operator()(const SetKey& key) const {
    std::size_t hash = 0;
    for (const std::uint32_t number : key) hash = (hash ^ number) * 0x9e3779b97f4a7c15U;
    return hash ^ (hash >> 32);
  }
};

SetKey key_of(std::span<const std::uint32_t> set) {
  SetKey key{kNoItem, kNoItem, kNoItem};
  std::copy(set.begin(), set.end(), key.begin());
  return key;
}

struct Margins {
  std::uint32_t cases = 0;
  Numbers by_outcome;
};

Margins margins_of(const Numbers& rows, const NumberRows& outcomes) {
  Margins margins{static_cast<std::uint32_t>(rows.size()), Numbers(outcomes.number_count())};
  for (const std::uint32_t row : rows) {
    for (const std::uint32_t outcome : outcomes.row(row)) ++margins.by_outcome[outcome];
  }
  return margins;
}

// What an item says of a case.
enum class Says { kThere, kNotThere, kMileage };

Says said_by(const EvidenceItem& item) {
  if (item.attribute == "mileage_band") return Says::kMileage;
  return item.value == "absent" || item.value == "pass" ? Says::kNotThere : Says::kThere;
}

// One kind of outcome in one scope after the other.
class Tester {
 public:
  Tester(PatternKind kind, const CaseRows& rows, const NumberRows& outcomes,
         const ExactTests& exact)
      : kind_(kind), rows_(rows), outcomes_(outcomes), exact_(exact) {
    for (const EvidenceItem& item : rows.items) says_.push_back(said_by(item));
  }

  // `among`: rows of the scope in which the outcome is known.
  void scope(std::uint32_t number, const Numbers& among) {
    scope_ = number;
    fewest_ = fewest_in(among.size());
    known_.clear();
    known_.emplace(key_of({}), margins_of(among, outcomes_));
    for_each_set(rows_.row_groups, outcomes_, among, fewest_, [&](const SetCount& set) {
      known_.emplace(key_of(set.set),
                     Margins{set.rows, {set.by_outcome.begin(), set.by_outcome.end()}});
    });
    for_each_set(rows_.row_items, outcomes_, among, fewest_, [&](const SetCount& set) {
      if (is_likeness(set.set)) test(set.set, set.rows, set.by_outcome, known_.at(groups_of(set)));
    });
  }

  // The scope by itself against the rest of `known`, where its attribute is written down.
  void whole_scope(std::uint32_t number, const Numbers& inside, const Numbers& known) {
    scope_ = number;
    fewest_ = fewest_in(known.size());
    const Margins set = margins_of(inside, outcomes_);
    if (set.cases < fewest_) return;
    test({}, set.cases, set.by_outcome, margins_of(known, outcomes_));
  }

  PatternTests take() { return std::move(out_); }

 private:
  SetKey groups_of(const SetCount& set) const {
    SetKey key = key_of({});
    std::size_t size = 0;
    for (const std::uint32_t item : set.set) {
      if (rows_.group_of[item] != kAlwaysKnown) key[size++] = rows_.group_of[item];
    }
    std::sort(key.begin(), key.end());
    std::fill(std::unique(key.begin(), key.end()), key.end(), kNoItem);
    return key;
  }

  // Whether cases in which all of it holds are alike at all.
  bool is_likeness(std::span<const std::uint32_t> items) const {
    if (items.size() == 1) return says_[items.front()] != Says::kNotThere;
    return std::any_of(items.begin(), items.end(),
                       [&](std::uint32_t item) { return says_[item] == Says::kThere; });
  }

  // Whether the outcome is one of the items themselves.
  bool says_itself(std::span<const std::uint32_t> items, std::uint32_t outcome) const {
    return kind_ == PatternKind::kWorkSign &&
           std::any_of(items.begin(), items.end(), [&](std::uint32_t item) {
             return rows_.items[item].attribute == rows_.signs[outcome];
           });
  }

  void test(std::span<const std::uint32_t> items, std::uint32_t set_cases,
            std::span<const std::uint32_t> by_outcome, const Margins& margins) {
    if (set_cases == margins.cases) return;  // no rest to compare with
    for (std::uint32_t outcome = 0; outcome < by_outcome.size(); ++outcome) {
      const std::uint32_t with = margins.by_outcome[outcome], both = by_outcome[outcome];
      if (with < fewest_ || says_itself(items, outcome)) continue;
      ++out_.tested;
      const bool more = std::uint64_t{both} * margins.cases > std::uint64_t{with} * set_cases;
      if (both < fewest_ || !more) continue;
      TestedPattern met{kind_, scope_, outcome, key_of(items), {}, 1};
      met.table = {both, set_cases - both, with - both, margins.cases - set_cases - (with - both)};
      met.p = exact_.fisher_more(met.table);
      out_.met.push_back(met);
    }
  }

  PatternKind kind_;
  const CaseRows& rows_;
  const NumberRows& outcomes_;
  const ExactTests& exact_;
  std::vector<Says> says_;  // by item
  std::uint32_t scope_ = 0, fewest_ = kFewestCases;
  std::unordered_map<SetKey, Margins, SetKeyHash> known_;
  PatternTests out_;
};

Numbers both(const Numbers& a, const Numbers& b) {
  Numbers out;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(out));
  return out;
}

PatternTests tests_of(PatternKind kind, const CaseRows& rows, const NumberRows& outcomes,
                      const Numbers& known, const ExactTests& exact) {
  Tester tester(kind, rows, outcomes, exact);
  for (std::uint32_t i = 0; i < rows.scopes.size(); ++i) {
    const ScopeRows& scope = rows.scopes[i];
    const Numbers among = both(scope.rows, known);
    tester.scope(i, among);
    if (i == 0) continue;
    const bool is_make = scope.scope.attribute == "make";
    tester.whole_scope(i, among, both(is_make ? rows.make_known : rows.family_known, known));
  }
  return tester.take();
}

}  // namespace

std::uint32_t fewest_in(std::size_t cases_in_scope) {
  constexpr std::size_t kOneIn = 500;
  return std::max(kFewestCases, static_cast<std::uint32_t>((cases_in_scope + kOneIn - 1) / kOneIn));
}

PatternTests tests_of_causes(const CaseRows& rows, const ExactTests& exact) {
  return tests_of(PatternKind::kCause, rows, rows.row_cause, rows.scopes.front().rows, exact);
}

PatternTests tests_of_signs(const CaseRows& rows, const ExactTests& exact) {
  return tests_of(PatternKind::kWorkSign, rows, rows.row_signs, rows.looked, exact);
}

}  // namespace shoplore
