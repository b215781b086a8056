#include "api/cli/print_patterns.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "api/cli/count_text.hpp"
#include "api/wire/pattern_text.hpp"
#include "query/patterns/limit_tests.hpp"

namespace shoplore {
namespace {

std::string cases_text(std::size_t cases) {
  return fmt::format("{} closed {}", thousands(static_cast<std::int64_t>(cases)),
                     cases == 1 ? "case" : "cases");
}

std::string q_text(double q) {
  return q < 0.001 ? "q <.001" : fmt::format("q {:.3f}", q).replace(2, 1, "");
}

// With an empty cell the ratio itself rests on the halves added; only its lower end says something.
std::string odds_text(const std::optional<Ratio>& ratio) {
  constexpr double kEnoughToSay = 1'000;
  if (!ratio) return "-";
  if (!ratio->half_added && ratio->value < kEnoughToSay) return factor(ratio);
  return "above " + thousands(std::lround(std::min(std::floor(ratio->low), kEnoughToSay)));
}

class PatternPrinter {
 public:
  PatternPrinter(const PatternBook& book, const PatternList& list, ShowCases cases,
                 const Vocabulary& vocabulary, const Page& page)
      : book_(book),
        list_(list),
        cases_(cases),
        vocabulary_(vocabulary),
        page_(page),
        ink_(page.colour) {}

  std::string print(const std::vector<OpenedPattern>& shown) {
    title();
    if (shown.empty()) nothing();
    for (const auto& [kind, name] : kEnumNames<PatternKind>) section(kind, shown);
    notes(shown);
    return std::move(out_);
  }

 private:
  void paragraph(const std::string& text) { out_ += hang("", text, page_.width); }

  void title() {
    const bool scoped = !list_.scope.attribute.empty();
    paragraph(ink_.heading(fmt::format("What recurs in {}{}",
                                       cases_text(scoped ? list_.scope_cases : book_.cases()),
                                       scoped ? " of " + scope_text(list_.scope) : "")));
  }

  void nothing() {
    if (list_.scope_cases < kFewestInScope) {
      paragraph(
          fmt::format("Too few for patterns of its own: from {} cases on they are looked "
                      "for. Ask again without it for what holds of all vehicles.",
                      kFewestInScope));
      return;
    }
    paragraph("Nothing that could be told from chance.");
  }

  std::size_t matches_of(PatternKind kind) const {
    return static_cast<std::size_t>(
        std::count_if(list_.patterns.begin(), list_.patterns.end(),
                      [kind](const Pattern& each) { return each.kind == kind; }));
  }

  void section(PatternKind kind, const std::vector<OpenedPattern>& shown) {
    const auto here = static_cast<std::size_t>(
        std::count_if(shown.begin(), shown.end(),
                      [kind](const OpenedPattern& each) { return each.pattern.kind == kind; }));
    if (here == 0) return;
    const std::size_t all = matches_of(kind);
    const std::string count =
        here == all ? thousands(static_cast<std::int64_t>(all))
                    : fmt::format("{} of {}", thousands(static_cast<std::int64_t>(here)),
                                  thousands(static_cast<std::int64_t>(all)));
    out_ += "\n";
    paragraph(fmt::format("{} ({})", ink_.heading(heading_of(kind)), count));
    std::size_t number = 0;
    for (const OpenedPattern& each : shown) {
      if (each.pattern.kind == kind) pattern(each, ++number);
    }
  }

  void pattern(const OpenedPattern& opened, std::size_t number) {
    const Pattern& pattern = opened.pattern;
    out_ += hang(fmt::format("{:>3}  ", number), conditions_of(pattern), page_.width);
    std::string counts = fmt::format("{} in {}", ink_.bold(pattern_outcome(pattern, vocabulary_)),
                                     counted(pattern.share));
    if (pattern.association) {
      const DiagnosticTable& table = pattern.table;
      counts += fmt::format(", otherwise in {} of {}", thousands(table.false_negative),
                            thousands(table.false_negative + table.true_negative));
    }
    out_ += hang("     ", counts, page_.width);
    out_ += hang("     ", ink_.dim(strength(opened)), page_.width);
    if (cases_ == ShowCases::kNo) return;
    out_ += hang("     ", fmt::format("{}", fmt::join(opened.refs, ", ")), page_.width);
  }

  // The scope only where it is not that of all.
  std::string conditions_of(const Pattern& pattern) const {
    if (list_.scope.attribute.empty()) return pattern_conditions(pattern, vocabulary_);
    return conditions_within_scope(pattern, vocabulary_);
  }

  static std::string strength(const OpenedPattern& opened) {
    const Pattern& pattern = opened.pattern;
    std::string text = fmt::format("{} {}", thousands(opened.vehicles),
                                   opened.vehicles == 1 ? "vehicle" : "vehicles");
    if (pattern.association) {
      text += fmt::format("; {} times the usual share; odds ratio {}",
                          factor(pattern.association->lift),
                          odds_text(pattern.association->odds_ratio));
    }
    return text + "; " + q_text(pattern.q);
  }

  static bool any(const std::vector<OpenedPattern>& shown, PatternKind kind) {
    return std::any_of(shown.begin(), shown.end(),
                       [kind](const OpenedPattern& each) { return each.pattern.kind == kind; });
  }

  void notes(const std::vector<OpenedPattern>& shown) {
    if (shown.empty()) return;
    out_ += "\n";
    paragraph(fmt::format(
        "A pattern: up to three findings in at least {} cases. Otherwise: cases in which the same "
        "was looked at and not all of it found; what nobody looked at counts on neither side. Of "
        "each cause the strongest comes first; longer ones that say no more than a shorter one are "
        "left out.",
        list_.fewest));
    paragraph(fmt::format(
        "q: of the patterns of a kind with this q or less about that share is chance; shown up to "
        ".05. Counted over everything tested of its kind in all scopes: {}.",
        tested_text()));
    if (any(shown, PatternKind::kInVain)) {
      paragraph(
          "Repaired before: vehicles which that repair cured never came, so this is no cure rate. "
          "Shown when it was in vain more often than not.");
    }
    if (any(shown, PatternKind::kPassed)) {
      paragraph(
          fmt::format("Passed: of the cases of that cause in which the check was clear. Shown when "
                      "more than {} "
                      "in 10 passed.",
                      std::lround(10 * kPassedLimit)));
    }
    paragraph("Counts are evidence, not a diagnosis.");
    if (shown.size() < list_.patterns.size()) {
      paragraph("More with --limit N or --all; the cases behind each with --cases.");
    }
  }

  std::string tested_text() const {
    return fmt::format(
        "{} of findings and a cause, {} of findings and a sign, {} repairs, {} checks",
        tested(PatternKind::kCause), tested(PatternKind::kWorkSign), tested(PatternKind::kInVain),
        tested(PatternKind::kPassed));
  }

  std::string tested(PatternKind kind) const {
    return thousands(static_cast<std::int64_t>(book_.count(kind).tested));
  }

  const PatternBook& book_;
  const PatternList& list_;
  ShowCases cases_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string out_;
};

}  // namespace

std::string print_patterns(const PatternBook& book, const PatternList& list,
                           const std::vector<OpenedPattern>& shown, ShowCases cases,
                           const Vocabulary& vocabulary, const Page& page) {
  return PatternPrinter(book, list, cases, vocabulary, page).print(shown);
}

std::string print_too_few_for_patterns(const PatternBook& book, const Page& page) {
  return hang(
      "",
      fmt::format("{} {} too few to tell a pattern from chance. It makes sense from about "
                  "{} on, and gets good with some hundred; until then \"ask\" and \"find\" "
                  "show the cases themselves.",
                  cases_text(book.cases()), book.cases() == 1 ? "is" : "are", kFewestForPatterns),
      page.width);
}

}  // namespace shoplore
