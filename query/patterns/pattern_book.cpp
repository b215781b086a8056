#include "query/patterns/pattern_book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <tuple>
#include <unordered_map>

#include "indexer/case_keys.hpp"
#include "query/filter_query.hpp"
#include "query/fix_counts.hpp"
#include "query/patterns/false_discovery.hpp"
#include "query/patterns/limit_tests.hpp"

namespace shoplore {
namespace {

using Items = std::array<std::uint32_t, kMaxSetSize>;

// What a pattern says, but for how often.
struct Saying {
  PatternKind kind;
  std::uint32_t outcome, scope;
  Items items;
  friend bool operator==(const Saying&, const Saying&) = default;
};

struct SayingHash {
  std::size_t operator()(const Saying& saying) const {
    std::size_t hash = static_cast<std::size_t>(saying.kind);
    const auto mix = [&](std::uint32_t number) {
      hash = (hash ^ number) * 0x9e3779b97f4a7c15U;
      hash ^= hash >> 32;
    };
    mix(saying.outcome);
    mix(saying.scope);
    for (const std::uint32_t item : saying.items) mix(item);
    return hash;
  }
};

// Lower ends of the interval at kSaysMore, each worked out once: many patterns have the same
// counts.
class LowerEnds {
 public:
  double of(const DiagnosticTable& table) {
    const std::uint32_t count = table.true_positive, out_of = count + table.false_positive;
    const auto [entry, is_new] = known_.emplace(std::uint64_t{count} << 32 | out_of, 0);
    if (is_new) entry->second = jeffreys(count, out_of, kSaysMore).low;
    return entry->second;
  }

 private:
  std::unordered_map<std::uint64_t, double> known_;
};

std::size_t size_of(const Items& items) {
  return static_cast<std::size_t>(std::count_if(
      items.begin(), items.end(), [](std::uint32_t item) { return item != kNoItem; }));
}

// The items at the places whose bit is set.
Items some_of(const Items& items, unsigned bits) {
  Items some{kNoItem, kNoItem, kNoItem};
  std::size_t size = 0;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if ((bits >> i & 1U) != 0) some[size++] = items[i];
  }
  return some;
}

Share share_of(const DiagnosticTable& table) {
  return shoplore::share_of(table.true_positive, table.true_positive + table.false_positive);
}

double observed(const DiagnosticTable& table) {
  return static_cast<double>(table.true_positive) / (table.true_positive + table.false_positive);
}

// The limits of the others stand in the place of a rest.
bool has_rest(PatternKind kind) {
  return kind == PatternKind::kCause || kind == PatternKind::kWorkSign;
}

// Patterns that are shown, by what they say.
class Kept {
 public:
  void add(const TestedPattern& pattern) {
    kept_.emplace(Saying{pattern.kind, pattern.outcome, pattern.scope, pattern.items}, &pattern);
  }

  // Those with fewer of its items, or of one of these scopes, or both.
  [[nodiscard]] std::vector<const TestedPattern*> shorter_than(
      const TestedPattern& pattern, std::vector<std::size_t> scopes) const {
    std::vector<const TestedPattern*> shorter;
    scopes.push_back(pattern.scope);
    for (const std::size_t scope : scopes) {
      for (unsigned bits = 0; bits < 1U << size_of(pattern.items); ++bits) {
        const auto found =
            kept_.find({pattern.kind, pattern.outcome, static_cast<std::uint32_t>(scope),
                        some_of(pattern.items, bits)});
        if (found != kept_.end()) shorter.push_back(found->second);
      }
    }
    return shorter;
  }

 private:
  std::unordered_map<Saying, const TestedPattern*, SayingHash> kept_;
};

// "AL15D, AL20D, BW16D" of what the records hold of the attribute.
Result<std::string> names_of(std::string_view attribute, const CaseCounter& counter) {
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  std::string names;
  for (const EvidenceItem& item : *items) {
    if (item.attribute != attribute) continue;
    const std::string shown = display_vehicle_item(item);
    names += (names.empty() ? "" : ", ") + shown.substr(attribute.size() + 1);
  }
  return names.empty() ? "none" : names;
}

Result<std::uint32_t> cases_with(const Filter& filter, const CaseCounter& counter) {
  const auto counts = counter.by_cause({{}, filter, {}});
  if (!counts) return fail(counts.error());
  return std::accumulate(counts->begin(), counts->end(), 0U);
}

// Cases of make and engine family; kInvalidInput when there are none.
Result<std::uint32_t> cases_of_choice(const PatternChoice& choice, const CaseCounter& counter) {
  for (const auto& [attribute, name] :
       {std::pair("make", &choice.make), std::pair("engine_family", &choice.engine_family)}) {
    if (name->empty()) continue;
    Filter filter;
    (name == &choice.make ? filter.make : filter.engine_family) = *name;
    const auto cases = cases_with(filter, counter);
    if (!cases) return fail(cases.error());
    if (*cases > 0) continue;
    const auto names = names_of(attribute, counter);
    if (!names) return fail(names.error());
    return fail(ErrorCode::kInvalidInput, attribute,
                fmt::format("\"{}\" is in no closed case; there are: {}", *name, *names));
  }
  Filter both;
  both.make = choice.make;
  both.engine_family = choice.engine_family;
  const auto cases = cases_with(both, counter);
  if (cases && *cases == 0 && !choice.engine_family.empty()) {
    return fail(ErrorCode::kInvalidInput, "engine_family",
                fmt::format("\"{}\" is in no closed case of the make \"{}\"", choice.engine_family,
                            choice.make));
  }
  both.make.clear();
  return choice.engine_family.empty() ? cases : cases_with(both, counter);
}

PatternScope scope_of(const PatternChoice& choice) {
  if (!choice.engine_family.empty()) return name_item("engine_family", choice.engine_family);
  if (!choice.make.empty()) return name_item("make", choice.make);
  return {};
}

// Canonical key of the chosen cause; empty when none is chosen.
Result<std::string> chosen_cause(const std::string& cause, const Vocabulary& vocabulary) {
  if (cause.empty()) return std::string();
  const CauseParts parts = cause_parts(cause);
  if (parts.failure.empty()) {
    return fail(ErrorCode::kInvalidInput, "cause",
                fmt::format("\"{}\" given, expected component:failure, as in "
                            "wastegate_linkage:seized_open",
                            cause));
  }
  const auto unknown = [](const std::string& id, std::string_view kind) {
    return fail(ErrorCode::kInvalidInput, "cause",
                fmt::format("\"{}\" is not a known {}; search for it with: shoplore vocabulary "
                            "search",
                            id, kind));
  };
  if (vocabulary.find(EntryKind::kComponent, parts.component) == nullptr) {
    return unknown(parts.component, "component");
  }
  if (vocabulary.find(EntryKind::kFailure, parts.failure) == nullptr) {
    return unknown(parts.failure, "failure");
  }
  return cause_key({parts.component, parts.failure, Proof::kSeen}, vocabulary);
}

auto outcome_of(const Pattern& pattern) {
  return std::tie(pattern.kind, pattern.cause, pattern.sign);
}

bool is_stronger(const Pattern& a, const Pattern& b) {
  if (a.share.interval.low != b.share.interval.low) {
    return a.share.interval.low > b.share.interval.low;
  }
  if (a.share.count != b.share.count) return a.share.count > b.share.count;
  return std::tie(a.scope, a.items, a.cause, a.sign) < std::tie(b.scope, b.items, b.cause, b.sign);
}

// First the strongest of each outcome, then the second of each.
void put_in_order(std::vector<Pattern>& patterns) {
  std::sort(patterns.begin(), patterns.end(), [](const Pattern& a, const Pattern& b) {
    return outcome_of(a) != outcome_of(b) ? outcome_of(a) < outcome_of(b) : is_stronger(a, b);
  });
  struct Turn {
    std::size_t turn = 0, at = 0;
  };
  std::vector<Turn> order(patterns.size());
  for (std::size_t i = 0; i < patterns.size(); ++i) {
    const bool goes_on = i > 0 && outcome_of(patterns[i]) == outcome_of(patterns[i - 1]);
    order[i] = {goes_on ? order[i - 1].turn + 1 : 0, i};
  }
  std::sort(order.begin(), order.end(), [&](const Turn& a, const Turn& b) {
    const PatternKind left = patterns[a.at].kind, right = patterns[b.at].kind;
    if (left != right) return left < right;
    return a.turn != b.turn ? a.turn < b.turn : is_stronger(patterns[a.at], patterns[b.at]);
  });
  std::vector<Pattern> ordered;
  for (const Turn& each : order) ordered.push_back(std::move(patterns[each.at]));
  patterns = std::move(ordered);
}

}  // namespace

Result<PatternBook> PatternBook::mine(const CaseCounter& counter, const Vocabulary& vocabulary) {
  PatternBook book;
  const auto cases = cases_with({}, counter);
  if (!cases) return fail(cases.error());
  book.cases_ = *cases;
  if (!book.is_mined()) return book;
  const auto rows = CaseRows::of(counter);
  if (!rows) return fail(rows.error());
  book.items_ = rows->items;
  book.signs_ = rows->signs;
  for (const ScopeRows& scope : rows->scopes) {
    book.scopes_.push_back(scope.scope);
    book.wider_.push_back(scope.wider);
  }
  const ExactTests exact(book.cases_);
  book.keep_found(tests_of_causes(*rows, exact), PatternKind::kCause);
  book.keep_found(tests_of_signs(*rows, exact), PatternKind::kWorkSign);
  book.keep_found(tests_of_repairs(*rows, counter.causes(), exact), PatternKind::kInVain);
  book.keep_found(tests_of_passes(*rows, counter.causes(), vocabulary, exact),
                  PatternKind::kPassed);
  return book;
}

void PatternBook::keep_found(PatternTests tests, PatternKind kind) {
  std::vector<double> p;
  p.reserve(tests.met.size());
  for (const TestedPattern& met : tests.met) p.push_back(met.p);
  const auto q = benjamini_hochberg(p, tests.tested), adjusted = holm(p, tests.tested);
  const std::size_t before = found_.size();
  for (std::size_t i = 0; i < tests.met.size(); ++i) {
    if (q[i] <= kMostChance) found_.push_back({tests.met[i], q[i], adjusted[i]});
  }
  counts_[static_cast<std::size_t>(kind)] = {tests.tested, found_.size() - before};
}

// The share of the shorter pattern's outcome in those of its cases in which all attributes of the
// longer one are known.
Result<double> PatternBook::share_where_known(const TestedPattern& shorter,
                                              const TestedPattern& longer,
                                              const CaseCounter& counter) const {
  CountQuestion question;
  if (shorter.scope != 0) question.all_of.push_back(scopes_[shorter.scope]);
  for (std::size_t i = 0; i < size_of(shorter.items); ++i) {
    question.all_of.push_back(items_[shorter.items[i]]);
  }
  for (std::size_t i = 0; i < size_of(longer.items); ++i) {
    question.known.push_back(items_[longer.items[i]].attribute);
  }
  const bool is_sign = longer.kind == PatternKind::kWorkSign;
  if (is_sign) question.known.push_back(signs_[longer.outcome]);
  const auto all = counter.by_cause(question);
  if (!all) return fail(all.error());
  if (is_sign) question.all_of.push_back({signs_[longer.outcome], "present"});
  const auto with = is_sign ? counter.by_cause(question) : all;
  if (!with) return fail(with.error());
  const double out_of = std::accumulate(all->begin(), all->end(), 0U);
  return (is_sign ? std::accumulate(with->begin(), with->end(), 0U) : (*with)[longer.outcome]) /
         out_of;
}

// By rank, so that whatever is shorter is decided before.
Result<std::vector<const PatternBook::Found*>> PatternBook::saying_more(
    std::vector<const Found*> chosen, const CaseCounter& counter) const {
  const auto rank = [&](const Found* each) {
    return size_of(each->pattern.items) + wider_[each->pattern.scope].size();
  };
  std::stable_sort(chosen.begin(), chosen.end(),
                   [&](const Found* a, const Found* b) { return rank(a) < rank(b); });
  Kept kept;
  std::vector<const Found*> out;
  LowerEnds lower_ends;
  for (const Found* each : chosen) {
    const TestedPattern& pattern = each->pattern;
    const double low = lower_ends.of(pattern.table);
    const auto shorter = kept.shorter_than(pattern, wider_[pattern.scope]);
    bool says_more = std::all_of(shorter.begin(), shorter.end(), [&](const TestedPattern* other) {
      return low > observed(other->table);
    });
    for (std::size_t i = 0; i < shorter.size() && says_more && has_rest(pattern.kind); ++i) {
      const auto share = share_where_known(*shorter[i], pattern, counter);
      if (!share) return fail(share.error());
      says_more = low > *share;
    }
    if (!says_more) continue;
    kept.add(pattern);
    out.push_back(each);
  }
  return out;
}

Pattern PatternBook::in_words(const Found& found, const CauseTable& causes) const {
  const TestedPattern& tested = found.pattern;
  Pattern pattern;
  pattern.kind = tested.kind;
  pattern.scope = scopes_[tested.scope];
  for (std::size_t i = 0; i < size_of(tested.items); ++i) {
    pattern.items.push_back(items_[tested.items[i]]);
  }
  const bool by_cause = tested.kind == PatternKind::kCause || tested.kind == PatternKind::kPassed;
  if (by_cause) pattern.cause = causes.key(tested.outcome);
  if (tested.kind == PatternKind::kWorkSign) pattern.sign = signs_[tested.outcome];
  pattern.table = tested.table;
  pattern.share = share_of(tested.table);
  if (has_rest(tested.kind)) pattern.association = association_of(tested.table);
  pattern.p = tested.p;
  pattern.q = found.q;
  pattern.holm = found.holm;
  return pattern;
}

Result<PatternList> PatternBook::choose(const PatternChoice& choice, const CaseCounter& counter,
                                        const Vocabulary& vocabulary) const {
  PatternList list;
  list.scope = scope_of(choice);
  const auto cases = cases_of_choice(choice, counter);
  if (!cases) return fail(cases.error());
  const auto cause = chosen_cause(choice.cause, vocabulary);
  if (!cause) return fail(cause.error());
  list.scope_cases = *cases;
  list.fewest = fewest_in(list.scope_cases);
  const auto number = counter.causes().find(*cause);
  std::vector<const Found*> chosen;
  for (const Found& each : found_) {
    const bool in_scope = list.scope.attribute.empty() || scopes_[each.pattern.scope] == list.scope;
    const bool of_cause =
        each.pattern.kind == PatternKind::kCause || each.pattern.kind == PatternKind::kPassed;
    const bool asked_for = cause->empty() || (of_cause && number == each.pattern.outcome);
    if (in_scope && asked_for) chosen.push_back(&each);
  }
  list.found = chosen.size();
  const auto saying = saying_more(std::move(chosen), counter);
  if (!saying) return fail(saying.error());
  for (const Found* each : *saying) {
    list.patterns.push_back(in_words(*each, counter.causes()));
  }
  put_in_order(list.patterns);
  return list;
}

}  // namespace shoplore
