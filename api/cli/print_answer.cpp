// Layout, top to bottom: understood; likely causes, each with what was done and why; how wide we
// looked; next check; watch out; similar cases; cautions; the note. When nothing matches, that is
// said in place of likely causes and cautions come right after it.
#include "api/cli/print_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "api/cli/print_cautions.hpp"
#include "api/cli/print_filter.hpp"
#include "api/cli/print_next_check.hpp"
#include "api/cli/print_similar.hpp"
#include "api/cli/print_understood.hpp"
#include "api/cli/print_watch_out.hpp"
#include "api/wire/display_names.hpp"
#include "query/cautions_for.hpp"

namespace shoplore {

namespace {

constexpr std::size_t kLeastName = 24;
constexpr std::size_t kDetailIndent = 5;
constexpr std::size_t kBarColumns = 16;
// Lines of why and of fixes: more of them under the first cause than under the others.
constexpr std::size_t kFirstLines = 5, kOtherLines = 2;
// Rows below the first and below this are one line: their details would bury the others'.
constexpr double kDetailedProbability = 0.05;
// Weights below this are noise to a reader; they stay in the JSON.
constexpr double kShownWeight = 0.05;

std::string percent_text(const Share& share) {
  if (share.out_of == 0) return "";
  return fmt::format("{:.0f} %", 100.0 * share.count / share.out_of);
}

// How many times likelier the item makes the cause: "×12", "÷3.1".
std::string factor_text(double weight) {
  const double factor = std::exp(std::abs(weight));
  const std::string_view sign = weight < 0 ? "÷" : "×";
  return factor < 9.95 ? fmt::format("{}{:.1f}", sign, factor)
                       : fmt::format("{}{:.0f}", sign, factor);
}

class AnswerPrinter {
 public:
  AnswerPrinter(const Answer& answer, const Vocabulary& vocabulary, const Page& page)
      : answer_(answer), vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string print() {
    out_ += print_understood(answer_.understood, vocabulary_, page_);
    if (!filter_.empty()) paragraph("Counted only  ", filter_);
    stop_first();
    if (answer_.likely_causes.empty()) {
      no_match();
      out_ += print_cautions(answer_.cautions, page_);
      breadth();
      watch_out();
    } else {
      likely_causes();
      breadth();
      next_check();
      watch_out();
    }
    similar();
    if (!answer_.likely_causes.empty()) out_ += print_cautions(answer_.cautions, page_);
    return std::move(out_) + "\n" + print_note(answer_, page_);
  }

 private:
  // What forbids to go on must not wait for the end of the page.
  void stop_first() {
    for (const Caution& caution : answer_.cautions) {
      if (!is_forbidding(caution)) continue;
      out_ += ink_.warning(hang("Stop first: ", caution.name + " (see Cautions)", page_.width));
    }
  }
  void section(std::string_view title) { out_ += "\n" + ink_.heading(title) + "\n"; }
  void paragraph(std::string_view first, std::string_view text) {
    out_ += hang(first, text, page_.width);
  }

  void no_match() {
    section("Likely causes");
    if (answer_.understood.evidence.empty()) {
      paragraph("  ", "Nothing of this was understood as a finding. Nothing is ranked.");
      return;
    }
    const std::string none =
        filter_.empty() ? "the records hold none yet." : "the filter leaves none of the records.";
    const std::string among =
        answer_.cases_in_records == 0
            ? "No case like this one: " + none
            : fmt::format("No case like this one in {}.", thousands(answer_.cases_in_records));
    paragraph("  ", among + " Nothing is ranked.");
    if (answer_.cases_in_records == 0) return;
    never_seen();
  }

  void never_seen() {
    std::vector<std::string> names;
    for (const EvidenceItem& item : answer_.never_seen) {
      names.push_back(display_item(item, vocabulary_));
    }
    if (names.empty()) return;
    const std::string where = filter_.empty() ? "here" : "within the filter";
    paragraph("  ", fmt::format("Never seen {}: {}.", where, fmt::join(names, " · ")));
  }

  std::string scope_text(const Width& width) const {
    std::string text = width.scope;
    for (const EvidenceItem& item : width.items) {
      text += ", " + display_item(item, vocabulary_);
    }
    return text;
  }

  void likely_causes() {
    section("Likely causes");
    if (!answer_.breadth.empty()) {
      const Width& used = answer_.breadth.back();
      paragraph("  ", fmt::format("counted in {} ({}): {}", counted(used.cases, "case", "cases"),
                                  counted(used.vehicles, "vehicle", "vehicles"), scope_text(used)));
    }
    never_seen();
    measure();
    for (std::size_t i = 0; i < answer_.likely_causes.size(); ++i) cause(i);
    rest();
    out_ += ink_.dim(hang("  ",
                          "bar: 90 % interval of the share; p: the model's probability; × and ÷: "
                          "what a finding does to the odds of the cause",
                          page_.width));
  }

  // Widths of the count column: all rows line up.
  void measure() {
    for (const LikelyCause& cause : answer_.likely_causes) {
      count_width_ =
          std::max(count_width_, display_width(of_text(cause.share.count, cause.share.out_of)));
    }
    bar_ = page_.width >= columns_beside_name() + kLeastName;  // asked with the bar
    name_width_ = page_.width - columns_beside_name();
  }

  // "  1  " name "  " count "  " percent "  |" bar "|" "  p " probability
  std::size_t columns_beside_name() const { return 5 + 2 + middle_width() + 4 + 4; }

  void row(const std::string& rank, const std::string& name, const std::string& middle,
           double probability) {
    const auto lines = wrap(name, name_width_);
    const std::string end = middle + "  p " + pad_left(probability_text(probability), 4);
    out_ += pad_left(rank, 3) + "  " + pad_right(lines[0], name_width_) + "  " + end + "\n";
    for (std::size_t i = 1; i < lines.size(); ++i) out_ += "     " + lines[i] + "\n";
  }

  std::size_t middle_width() const { return count_width_ + 2 + 5 + (bar_ ? kBarColumns + 4 : 0); }

  void cause(std::size_t index) {
    const LikelyCause& c = answer_.likely_causes[index];
    std::string middle = pad_left(of_text(c.share.count, c.share.out_of), count_width_) + "  " +
                         pad_left(percent_text(c.share), 5);
    if (bar_) middle += "  " + interval_bar(c.share, kBarColumns);
    std::string name = display_cause(c.component, c.failure, vocabulary_);
    if (c.vehicles != c.share.count) {
      name += "\n(" + counted(c.vehicles, "vehicle", "vehicles") + ")";
    }
    row(fmt::format("{}", index + 1), name, middle, c.probability);
    if (index > 0 && c.probability < kDetailedProbability) return;
    const std::size_t lines = index == 0 ? kFirstLines : kOtherLines;
    fixes(c, lines);
    why(c, lines);
  }

  // The first row is the table's heading.
  void details(const std::vector<TableRow>& rows) {
    const std::string text = table(rows, kDetailIndent, page_.width);
    const auto end = text.find('\n');
    out_ += ink_.dim(text.substr(0, end)) + text.substr(end);
  }

  void fixes(const LikelyCause& c, std::size_t limit) {
    const auto& list = c.fixes_together.empty() ? c.fixes : c.fixes_together;
    if (list.empty()) return;
    std::uint32_t cases = 0;
    for (const FixCount& fix : c.fixes_together) cases += fix.cases;
    const std::string heading =
        cases == 0 ? "what was done"
                   : "what was done in " + counted(cases, "case", "cases") + " of it";
    std::vector<TableRow> rows = {{heading, {"cases", "stayed fixed", "not recorded"}}};
    for (const FixCount& fix : list) {
      if (rows.size() > limit) break;
      const std::uint32_t heard = fix.stayed_fixed + fix.came_back;
      rows.push_back({display_fixes(fix.fixes, vocabulary_),
                      {thousands(fix.cases), heard == 0 ? "-" : of_text(fix.stayed_fixed, heard),
                       thousands(fix.unknown)}});
    }
    const std::size_t more = list.size() - (rows.size() - 1);
    details(rows);
    if (more > 0) out_ += std::string(kDetailIndent, ' ') + fmt::format("and {} more\n", more);
  }

  void why(const LikelyCause& c, std::size_t limit) {
    std::vector<TableRow> rows = {{"why", {"", "with this cause", "all other cases"}}};
    for (const WhyLine& line : c.why) {
      if (std::abs(line.weight) < kShownWeight || rows.size() > limit) continue;
      rows.push_back({display_item(line.item, vocabulary_),
                      {factor_text(line.weight), of_text(line.with_item, line.known),
                       of_text(line.with_item_elsewhere, line.known_elsewhere)}});
    }
    if (rows.size() > 1) {
      // The parts that are no single finding's; with the prior they make the odds complete.
      const auto add = [&](const char* name, double weight) {
        if (std::abs(weight) >= kShownWeight) rows.push_back({name, {factor_text(weight), "", ""}});
      };
      add("taken together (partly the same information)", c.pairs);
      add("like its past cases as a whole", c.likeness);
      add(c.scarcity > 0 ? "little is usually written down of it"
                         : "much is usually written down of it",
          c.scarcity);
      details(rows);
    }
  }

  void rest() {
    const std::string blank(middle_width(), ' ');
    if (answer_.causes_left_out > 0) {
      row("+", counted(answer_.causes_left_out, "further cause", "further causes"), blank,
          answer_.left_out_probability);
    }
    row("–", "something not in these records", blank, answer_.not_in_these_records);
  }

  // A rung as what changed since the one before it, or whole when more changed than one item.
  std::string widened_text(const Width& before, const Width& width) const {
    std::vector<EvidenceItem> kept = before.items;
    if (width.dropped) std::erase(kept, *width.dropped);
    if (kept != width.items) return scope_text(width);
    if (!width.dropped) return width.scope + ", the same";
    return width.scope + ", the same without \"" + display_item(*width.dropped, vocabulary_) + "\"";
  }

  void breadth() {
    if (answer_.breadth.empty()) return;
    section("How wide we looked");
    for (std::size_t i = 0; i < answer_.breadth.size(); ++i) {
      const Width& width = answer_.breadth[i];
      std::string text = i == 0 ? scope_text(width) : widened_text(answer_.breadth[i - 1], width);
      text += ": " + counted(width.cases, "case", "cases");
      if (width.cases > 0) text += ", " + counted(width.vehicles, "vehicle", "vehicles");
      paragraph(fmt::format("  {}. ", i + 1), text);
    }
  }

  void next_check() {
    const std::string text = print_next_check(answer_.next, vocabulary_, page_);
    if (text.empty()) return;
    section("Next check");
    out_ += text;
  }

  void watch_out() {
    if (answer_.watch_out.empty()) return;
    out_ += "\n" + ink_.warning(ink_.heading("Watch out")) + "\n";
    out_ += print_warnings(answer_.watch_out, kWarningsInAnswer, page_);
  }

  void similar() {
    if (answer_.similar.empty()) return;
    section("Similar cases");
    for (const SimilarCase& each : answer_.similar) {
      out_ += print_similar(each, vocabulary_, page_);
    }
  }

  const Answer& answer_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string filter_ = filter_text(answer_.filter);
  std::string out_;
  std::size_t count_width_ = 0, name_width_ = 0;
  bool bar_ = true;
};

}  // namespace

std::string interval_bar(const Share& share, std::size_t columns) {
  const auto column = [columns](double x) {
    const auto at = static_cast<std::size_t>(std::max(0.0, x) * static_cast<double>(columns));
    return std::min(at, columns - 1);
  };
  std::string bar(columns, '-');
  for (std::size_t i = column(share.interval.low); i <= column(share.interval.high); ++i) {
    bar[i] = '=';
  }
  if (share.out_of > 0) {
    bar[column(static_cast<double>(share.count) / share.out_of)] = 'o';
  }
  return "|" + bar + "|";
}

std::string print_note(const Answer& answer, const Page& page) {
  const std::string cases = counted(answer.cases_in_records, "counted case", "counted cases") +
                            (filter_text(answer.filter).empty() ? "" : " within the filter");
  return hang("",
              fmt::format("{} Records as of revision {}, {}.", kEvidenceNotDiagnosis,
                          answer.revision.value, cases),
              page.width);
}

std::string print_answer(const Answer& answer, const Vocabulary& vocabulary, const Page& page) {
  return AnswerPrinter(answer, vocabulary, page).print();
}

}  // namespace shoplore
