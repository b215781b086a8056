#include "api/cli/wall_sheet.hpp"

#include <fmt/format.h>

#include <set>

#include "api/cli/text_layout.hpp"
#include "api/wire/markup_text.hpp"
#include "api/wire/pattern_text.hpp"

namespace shoplore {
namespace {

constexpr std::string_view kHead = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>What recurs here</title>
<style>
@page { size: A4; margin: 14mm; }
body { font: 11pt/1.35 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 182mm; }
h1 { font-size: 20pt; margin: 0 0 2mm; }
h2 { font-size: 14pt; margin: 6mm 0 1mm; border-bottom: 1.5pt solid #000; break-after: avoid; }
table { width: 100%; border-collapse: collapse; }
th, td { text-align: left; vertical-align: top; padding: 1mm 2mm 1mm 0; }
th { font-size: 9pt; font-weight: normal; }
tr { border-bottom: 0.5pt solid #000; break-inside: avoid; }
td.count { white-space: nowrap; }
td.cause { font-weight: bold; }
p { margin: 1mm 0; }
footer { margin-top: 6mm; font-size: 9pt; border-top: 1.5pt solid #000; }
</style>
</head>
<body>
)";

std::string line_of(const Pattern& pattern, const Vocabulary& vocabulary) {
  const DiagnosticTable& table = pattern.table;
  return fmt::format(
      "<tr><td>{}</td><td class=\"cause\">{}</td><td class=\"count\">{} of {}</td>"
      "<td class=\"count\">{} of {}</td></tr>\n",
      markup_text(conditions_within_scope(pattern, vocabulary)),
      markup_text(pattern_outcome(pattern, vocabulary)), thousands(pattern.share.count),
      thousands(pattern.share.out_of), thousands(table.false_negative),
      thousands(table.false_negative + table.true_negative));
}

// The strongest of each cause that is sure enough.
std::vector<const Pattern*> surest(const std::vector<Pattern>& patterns) {
  std::vector<const Pattern*> lines;
  std::set<std::string> causes;
  for (const Pattern& each : patterns) {
    if (each.kind != PatternKind::kCause || each.holm > kMostChance) continue;
    if (lines.size() < kLinesAFamily && causes.insert(each.cause).second) lines.push_back(&each);
  }
  return lines;
}

std::string foot_of(const PatternBook& book, Date printed) {
  return fmt::format(
      "<footer>\n<p>Counted in {} closed cases of this workshop, {}. Each line recurs in at least "
      "{} cases; the chance that even one line of this sheet came about by chance is at most "
      "{:.0f} "
      "in 100.</p>\n"
      "<p>Otherwise: cases of the same engine family in which the same was looked at and not all "
      "of it found; of any complaint, cases of the other engine families. What nobody looked at "
      "counts on neither side.</p>\n"
      "<p>Counts are evidence, not a diagnosis. Check before you replace. Follow the vehicle "
      "maker's procedure and local rules.</p>\n</footer>\n</body>\n</html>\n",
      thousands(book.cases()), format_date(printed), kFewestCases, 100 * kMostChance);
}

}  // namespace

Result<WallSheet> wall_sheet(const PatternBook& book, const PatternChoice& choice,
                             const CaseCounter& counter, const Vocabulary& vocabulary,
                             Date printed) {
  const auto asked = book.choose(choice, counter, vocabulary);
  if (!asked) return fail(asked.error());
  WallSheet sheet;
  sheet.html = std::string(kHead) + "<h1>What recurs here</h1>\n";
  for (const PatternScope& scope : book.scopes()) {
    if (scope.attribute != "engine_family") continue;
    const bool one_only = asked->scope.attribute == "engine_family";
    if (one_only && asked->scope != scope) continue;
    const auto list = book.choose({choice.make, scope.value, choice.cause}, counter, vocabulary);
    // Not of the make that was asked for.
    if (!list && list.error().code == ErrorCode::kInvalidInput) continue;
    if (!list) return fail(list.error());
    const auto lines = surest(list->patterns);
    if (lines.empty()) continue;
    sheet.html += fmt::format(
        "<h2>{}</h2>\n<p>{} closed cases</p>\n<table>\n<tr><th>what there was</th><th>what it "
        "turned out to be</th><th>in</th><th>otherwise in</th></tr>\n",
        markup_text(display_vehicle_item(scope)), thousands(list->scope_cases));
    for (const Pattern* each : lines) sheet.html += line_of(*each, vocabulary);
    sheet.html += "</table>\n";
    ++sheet.families;
    sheet.lines += lines.size();
  }
  sheet.html += foot_of(book, printed);
  return sheet;
}

}  // namespace shoplore
