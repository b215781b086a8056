#include "api/cli/print_check_trust.hpp"

#include <fmt/format.h>

#include "api/cli/count_text.hpp"

namespace shoplore {
namespace {

std::string percent(const Share& share) {
  if (share.out_of == 0) return "-";
  return fmt::format("{:.0f} % ({:.0f}-{:.0f})", 100.0 * share.count / share.out_of,
                     100 * share.interval.low, 100 * share.interval.high);
}

class TrustPrinter {
 public:
  TrustPrinter(const std::vector<CheckTrust>& checks, const std::vector<ConditionTrust>& conditions,
               const Vocabulary& vocabulary, const Page& page)
      : conditions_(conditions), vocabulary_(vocabulary), page_(page), ink_(page.colour) {
    for (const CheckTrust& check : checks) {
      if (check.done >= kEnoughToTrust) shown_.push_back(&check);
    }
    seldom_ = checks.size() - shown_.size();
  }

  std::string print() {
    if (shown_.empty()) {
      paragraph(
          fmt::format("No check was done {} times yet: there is nothing to tell.", kEnoughToTrust));
      return std::move(out_);
    }
    verdicts();
    causes();
    by_condition();
    notes();
    return std::move(out_);
  }

 private:
  void paragraph(const std::string& text) { out_ += hang("", text, page_.width); }

  std::string name(const std::string& check) const {
    return vocabulary_.display_name(EntryKind::kCheck, check);
  }

  // The first row is the heading.
  void list(const std::vector<TableRow>& rows) {
    const std::string text = table(rows, 0, page_.width);
    out_ += ink_.heading(text.substr(0, text.find('\n'))) + text.substr(text.find('\n'));
  }

  static std::vector<std::string> verdict_cells(std::uint32_t done, const VerdictTrust& pass,
                                                const VerdictTrust& fail) {
    return {thousands(done), thousands(pass.given), counted(pass.misled_us), thousands(fail.given),
            counted(fail.misled_us)};
  }

  void verdicts() {
    std::vector<TableRow> rows{{"Verdicts", {"done", "pass", "misled us", "fail", "misled us"}}};
    for (const CheckTrust* check : shown_) {
      rows.push_back({name(check->check), verdict_cells(check->done, check->pass, check->fail)});
    }
    list(rows);
  }

  void causes() {
    std::vector<TableRow> rows{
        {"How well a fail tells the cause", {"sensitivity", "specificity", "LR+", "LR-"}}};
    for (const CheckTrust* check : shown_) {
      if (!check->tells_about_components) continue;
      const DiagnosticAccuracy accuracy = check->accuracy();
      rows.push_back({name(check->check),
                      {percent(accuracy.sensitivity), percent(accuracy.specificity),
                       factor(accuracy.positive_ratio), factor(accuracy.negative_ratio)}});
    }
    if (rows.size() == 1) return;
    out_ += "\n";
    list(rows);
  }

  void by_condition() {
    std::vector<TableRow> rows{
        {"By condition", {"done", "pass", "misled us", "fail", "misled us"}}};
    for (const ConditionTrust& each : conditions_) {
      if (each.condition.empty() || each.done() < kEnoughToTrust) continue;
      rows.push_back({name(each.check) + ": " +
                          vocabulary_.display_name(EntryKind::kCondition, each.condition),
                      verdict_cells(each.done(), each.pass, each.fail)});
    }
    if (rows.size() == 1) return;
    out_ += "\n";
    list(rows);
  }

  void notes() {
    out_ += "\n";
    std::uint32_t unknown = 0;
    for (const CheckTrust* check : shown_) unknown += check->pass.unknown + check->fail.unknown;
    paragraph(
        "misled us: of verdicts that the cause bore out or of which somebody said later whether "
        "they were right; in brackets the 90 % interval.");
    if (unknown > 0) {
      paragraph(
          fmt::format("{} {} neither borne out by the cause nor spoken of later: unknown is "
                      "not right, so they count neither way.",
                      thousands(unknown), unknown == 1 ? "verdict is" : "verdicts are"));
    }
    paragraph(
        "LR+ and LR-: what a fail and a pass do to the odds that the cause is on a part the check "
        "tells about. Only cases in which it was done are counted, and it may have proved the "
        "cause itself, which flatters. ~: a count was 0, so 1/2 was added to each.");
    if (seldom_ > 0) {
      paragraph(fmt::format("{} more done fewer than {} times (--json).", thousands_of(seldom_),
                            kEnoughToTrust));
    }
  }

  static std::string thousands_of(std::size_t count) {
    return thousands(static_cast<std::int64_t>(count));
  }

  std::vector<const CheckTrust*> shown_;
  const std::vector<ConditionTrust>& conditions_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::size_t seldom_ = 0;
  std::string out_;
};

}  // namespace

std::string print_check_trust(const std::vector<CheckTrust>& checks,
                              const std::vector<ConditionTrust>& conditions,
                              const Vocabulary& vocabulary, const Page& page) {
  return TrustPrinter(checks, conditions, vocabulary, page).print();
}

}  // namespace shoplore
