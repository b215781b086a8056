#include "api/cli/print_next_check.hpp"

#include <fmt/format.h>

#include "api/wire/display_names.hpp"

namespace shoplore {
namespace {

constexpr std::string_view kIndent = "     ";

class NextCheckPrinter {
 public:
  NextCheckPrinter(const Vocabulary& vocabulary, const Page& page)
      : vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string print(const CheckAdvice& advice) {
    if (advice.repair) repair(*advice.repair);
    for (const AdvisedCheck& question : advice.questions) {
      paragraph("  ?  ", display_question(question.item.attribute, vocabulary_));
      outlooks(question);
    }
    int rank = 0;
    for (const AdvisedCheck& check : advice.checks) one_check(check, ++rank);
    return std::move(out_);
  }

 private:
  void paragraph(std::string_view first, std::string_view text) {
    out_ += hang(first, text, page_.width);
  }

  void one_check(const AdvisedCheck& check, int rank) {
    std::string text = ink_.bold(display_question(check.item.attribute, vocabulary_)) + ", " +
                       duration_text(check.minutes);
    if (!check.removals.empty()) {
      std::vector<std::string> names;
      for (const std::string& id : check.removals) {
        names.push_back(vocabulary_.display_name(EntryKind::kRemoval, id));
      }
      text += fmt::format(" + {} for the {}", duration_text(check.removal_minutes),
                          fmt::join(names, " and the "));
    }
    paragraph(fmt::format("  {}. ", rank), text);
    outlooks(check);
    trust(check);
    if (!check.where.empty()) paragraph(kIndent, "where: " + check.where);
    if (!check.how.empty()) paragraph(kIndent, ink_.dim(check.how));
  }

  // "fail (p .63): plug-well seal, leaking .91; ignition coil, internal fault .06"
  void outlooks(const AdvisedCheck& check) {
    for (const AdvisedOutlook& outlook : check.outlooks) {
      std::vector<std::string> leading;
      for (const LeadingCause& cause : outlook.leading) {
        leading.push_back(display_cause(cause.component, cause.failure, vocabulary_) + " " +
                          probability_text(cause.probability));
      }
      paragraph(kIndent,
                fmt::format("{} (p {}): {}", outlook.answer, probability_text(outlook.probability),
                            fmt::join(leading, "; ")));
    }
  }

  void trust(const AdvisedCheck& check) {
    const auto misled = [&](const char* verdict, const Share& share) {
      if (share.out_of == 0) return;
      paragraph(kIndent, fmt::format("a {} misled us {} of {} times (90 %: {:.0f} to {:.0f} %)",
                                     verdict, share.count, share.out_of, 100 * share.interval.low,
                                     100 * share.interval.high));
    };
    misled("pass", check.pass_misled);
    misled("fail", check.fail_misled);
  }

  void repair(const RepairOnSuspicion& repair) {
    std::vector<std::string> steps;
    for (const RepairStep& step : repair.order) {
      steps.push_back(fmt::format("{} (p {}, {})",
                                  display_cause(step.component, step.failure, vocabulary_),
                                  probability_text(step.probability), duration_text(step.minutes)));
    }
    paragraph(
        "  !  ",
        fmt::format("Stop checking and repair: expected {} at once, {} with the best check "
                    "first. In this order: {}. Parts are counted as working time.",
                    duration_text(repair.expected_minutes),
                    duration_text(repair.expected_minutes_checked), fmt::join(steps, ", then ")));
  }

  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string out_;
};

}  // namespace

std::string print_next_check(const CheckAdvice& advice, const Vocabulary& vocabulary,
                             const Page& page) {
  return NextCheckPrinter(vocabulary, page).print(advice);
}

}  // namespace shoplore
