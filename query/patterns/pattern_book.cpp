#include "query/patterns/pattern_book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <tuple>

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
  friend auto operator<=>(const Saying&, const Saying&) = default;
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
  if (cases && *cases == 0) {
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
  const auto colon = cause.find(':');
  if (colon == std::string::npos) {
    return fail(ErrorCode::kInvalidInput, "cause",
                fmt::format("\"{}\" given, expected component:failure, as in "
                            "wastegate_linkage:seized_open",
                            cause));
  }
  const Cause named{cause.substr(0, colon), cause.substr(colon + 1), Proof::kSeen};
  const auto unknown = [](const std::string& id, std::string_view kind) {
    return fail(ErrorCode::kInvalidInput, "cause",
                fmt::format("\"{}\" is not a known {}; search for it with: shoplore vocabulary "
                            "search",
                            id, kind));
  };
  if (vocabulary.find(EntryKind::kComponent, named.component) == nullptr) {
    return unknown(named.component, "component");
  }
  if (vocabulary.find(EntryKind::kFailure, named.failure) == nullptr) {
    return unknown(named.failure, "failure");
  }
  return cause_key(named, vocabulary);
}

// First the strongest of each outcome, then the second of each.
void put_in_order(std::vector<Pattern>& patterns) {
  const auto outcome = [](const Pattern& pattern) {
    return std::tuple(pattern.kind, pattern.cause + pattern.sign);
  };
  const auto stronger = [](const Pattern& a, const Pattern& b) {
    return std::tuple(-a.share.interval.low, -static_cast<double>(a.share.count), a.scope,
                      a.items) <
           std::tuple(-b.share.interval.low, -static_cast<double>(b.share.count), b.scope, b.items);
  };
  std::sort(patterns.begin(), patterns.end(), [&](const Pattern& a, const Pattern& b) {
    return outcome(a) != outcome(b) ? outcome(a) < outcome(b) : stronger(a, b);
  });
  std::vector<std::size_t> turn(patterns.size());
  for (std::size_t i = 1; i < patterns.size(); ++i) {
    if (outcome(patterns[i]) == outcome(patterns[i - 1])) turn[i] = turn[i - 1] + 1;
  }
  std::vector<std::size_t> order(patterns.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (patterns[a].kind != patterns[b].kind) return patterns[a].kind < patterns[b].kind;
    if (turn[a] != turn[b]) return turn[a] < turn[b];
    return stronger(patterns[a], patterns[b]) ||
           (!stronger(patterns[b], patterns[a]) && outcome(patterns[a]) < outcome(patterns[b]));
  });
  std::vector<Pattern> ordered;
  for (const std::size_t at : order) ordered.push_back(std::move(patterns[at]));
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

// By rank, so that whatever is shorter is decided before.
std::vector<const PatternBook::Found*> PatternBook::saying_more(
    std::vector<const Found*> chosen) const {
  const auto rank = [&](const Found* each) {
    return size_of(each->pattern.items) + wider_[each->pattern.scope].size();
  };
  std::stable_sort(chosen.begin(), chosen.end(),
                   [&](const Found* a, const Found* b) { return rank(a) < rank(b); });
  std::map<Saying, double> kept;
  std::vector<const Found*> out;
  for (const Found* each : chosen) {
    const TestedPattern& pattern = each->pattern;
    const double low = share_of(pattern.table).interval.low;
    std::vector<std::size_t> scopes = wider_[pattern.scope];
    scopes.push_back(pattern.scope);
    bool says_more = true;
    for (const std::size_t scope : scopes) {
      for (unsigned bits = 0; bits < 1U << kMaxSetSize && says_more; ++bits) {
        const auto shorter =
            kept.find({pattern.kind, pattern.outcome, static_cast<std::uint32_t>(scope),
                       some_of(pattern.items, bits)});
        says_more = shorter == kept.end() || low > shorter->second;
      }
    }
    if (!says_more) continue;
    kept.emplace(Saying{pattern.kind, pattern.outcome, pattern.scope, pattern.items},
                 observed(pattern.table));
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
  const bool has_rest = tested.kind == PatternKind::kCause || tested.kind == PatternKind::kWorkSign;
  if (has_rest) pattern.association = association_of(tested.table);
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
  for (const Found* each : saying_more(std::move(chosen))) {
    list.patterns.push_back(in_words(*each, counter.causes()));
  }
  put_in_order(list.patterns);
  return list;
}

}  // namespace shoplore
