#include "api/cli/print_practice.hpp"

#include <fmt/format.h>

#include <cmath>

#include "api/cli/print_case.hpp"
#include "api/wire/practice_words.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

std::string whole(double number) {
  return fmt::format("{:.0f}", number);
}

std::string percent(double number) {
  return fmt::format("{:g} %", number);
}

class PracticePrinter {
 public:
  PracticePrinter(const Vocabulary& vocabulary, const Page& page)
      : vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string round(const RoundView& round) {
    out_ = ink_.heading("Practice " + round.id);
    if (round.difficulty) out_ += fmt::format("  {}", name_of(*round.difficulty));
    out_ += "\n";
    if (round.arrival) out_ += print_as_it_came_in(*round.arrival, vocabulary_, page_);
    paragraph("  ", practice_question(round, vocabulary_));
    for (std::size_t i = 0; i < round.choices.size(); ++i) {
      paragraph(fmt::format("  {}. ", i + 1),
                practice_choice(round.kind, round.choices[i], vocabulary_));
    }
    for (const PracticeStep& each : round.steps) step(each);
    return std::move(out_);
  }

  std::string last_step(const RoundView& round) {
    if (!round.steps.empty()) step(round.steps.back());
    return std::move(out_);
  }

  std::string feedback(const PracticeDesk::Committed& committed) {
    const PracticeFeedback& feedback = committed.feedback;
    const PracticeKind kind = committed.round.kind;
    if (kind == PracticeKind::kCause) {
      case_feedback(feedback);
    } else {
      choice_feedback(kind, feedback);
    }
    paragraph("  ", feedback.due <= today()
                        ? std::string("The like of it comes up again today.")
                        : fmt::format("The like of it comes up again from {} on.",
                                      format_date(feedback.due)));
    return std::move(out_);
  }

 private:
  void paragraph(std::string_view first, std::string_view text) {
    out_ += hang(first, text, page_.width);
  }

  std::string beliefs(const std::vector<Belief>& beliefs) const {
    std::string text;
    double left = 100;
    for (const Belief& each : beliefs) {
      text +=
          fmt::format("{} {}; ", percent(each.percent), display_cause_key(each.cause, vocabulary_));
      left -= each.percent;
    }
    return text +
           fmt::format("{} something else", percent(std::max(0.0, std::round(left * 100) / 100)));
  }

  void step(const PracticeStep& step) {
    if (step.kind == StepKind::kBelief) return paragraph("  you said  ", beliefs(step.beliefs));
    paragraph("  check     ", vocabulary_.display_name(EntryKind::kCheck, step.check) + ": " +
                                  practice_answer(step));
  }

  void case_feedback(const PracticeFeedback& feedback) {
    const bool right = feedback.right == YesNo::kYes;
    paragraph("", ink_.heading(right ? "Right: " : "No: ") + (right ? "" : "it was ") +
                      ink_.bold(display_cause_key(feedback.truth, vocabulary_)) +
                      fmt::format("; shoplore show {} tells the rest", feedback.case_ref));
    paragraph("  points    ",
              fmt::format("{} of 100 for your last percentages; the records, with "
                          "that case left out: {}. 50 is what saying nothing gets.",
                          whole(feedback.points), whole(feedback.records_score->points)));
    for (const FeedbackStep& each : feedback.steps) moment(each);
    work(feedback);
    for (const PracticeWarning& each : feedback.warnings) {
      paragraph(each.heeded == YesNo::kNo ? "  ! you went past this: " : "  ! ", each.warning.text);
    }
  }

  void moment(const FeedbackStep& step) {
    out_ += step.check.empty()
                ? "  as it came in\n"
                : hang("  ",
                       fmt::format("after: {}: {}",
                                   vocabulary_.display_name(EntryKind::kCheck, step.check),
                                   step.verdict),
                       page_.width);
    std::string records;
    for (const LeadingCause& each : step.records) {
      records += fmt::format("{}{} {}", records.empty() ? "" : "; ",
                             display_cause_key(each.component + ":" + each.failure, vocabulary_),
                             probability_text(each.probability));
    }
    paragraph("    records   ", records + fmt::format(" ({} points)", whole(step.records_points)));
    if (step.points) {
      paragraph("    you       ",
                beliefs(step.beliefs) + fmt::format(" ({} points)", whole(*step.points)));
    }
    if (!step.best_check.empty()) {
      paragraph(
          "    best next ",
          fmt::format("{}, {} min", vocabulary_.display_name(EntryKind::kCheck, step.best_check),
                      whole(step.best_minutes)));
    }
  }

  void work(const PracticeFeedback& feedback) {
    std::string best;
    for (const std::string& check : feedback.best_checks) {
      best += (best.empty() ? "" : ", then ") + vocabulary_.display_name(EntryKind::kCheck, check);
    }
    if (best.empty()) best = "no check recorded in this case was worth its minutes";
    paragraph("  minutes   ",
              fmt::format("yours {}; by the records' advice {} ({}). Only checks recorded in this "
                          "case count.",
                          whole(feedback.minutes), whole(feedback.best_minutes), best));
  }

  void choice_feedback(PracticeKind kind, const PracticeFeedback& feedback) {
    const bool right = feedback.right == YesNo::kYes;
    if (feedback.counted) {
      const Share& share = *feedback.counted;
      paragraph("", ink_.heading(right ? "As far as can be known, yes" : "No") +
                        fmt::format(": it misled us {} of {} times (90 %: {} to {} %); {} points "
                                    "of 100.",
                                    share.count, share.out_of, whole(100 * share.interval.low),
                                    whole(100 * share.interval.high), whole(feedback.points)));
      return;
    }
    paragraph("", ink_.heading(right ? "Right: " : "No: ") +
                      practice_choice(kind, feedback.truth, vocabulary_) +
                      fmt::format("; {} points of 100", whole(feedback.points)));
    for (const ChoiceFeedback& each : feedback.choices) {
      std::string text = practice_choice(kind, each.choice, vocabulary_);
      if (each.share) {
        text += fmt::format(": came back {} of {} (90 %: {} to {} %)", each.share->count,
                            each.share->out_of, whole(100 * each.share->interval.low),
                            whole(100 * each.share->interval.high));
      }
      if (each.minutes) {
        text += fmt::format(": {:.2f} bits in {} min", *each.information, whole(*each.minutes));
      }
      paragraph(fmt::format("  {:>3}  ", whole(each.points)), text);
    }
    if (!feedback.case_ref.empty()) paragraph("  case      ", feedback.case_ref);
  }

  const Vocabulary& vocabulary_;
  const Page& page_;
  const Ink ink_;
  std::string out_;
};

}  // namespace

std::string print_round(const RoundView& round, const Vocabulary& vocabulary, const Page& page) {
  return PracticePrinter(vocabulary, page).round(round);
}

std::string print_last_step(const RoundView& round, const Vocabulary& vocabulary,
                            const Page& page) {
  return PracticePrinter(vocabulary, page).last_step(round);
}

std::string print_feedback(const PracticeDesk::Committed& committed, const Vocabulary& vocabulary,
                           const Page& page) {
  return PracticePrinter(vocabulary, page).feedback(committed);
}

std::string print_practice_help(PracticeKind kind, const Page& page) {
  const auto lines = [&](std::initializer_list<std::pair<const char*, const char*>> help) {
    std::string out;
    for (const auto& [line, about] : help)
      out += hang("  ", fmt::format("{}: {}", line, about), page.width);
    return out;
  };
  if (kind == PracticeKind::kCause) {
    return lines({{"60 wastegate linkage seized open, 30 turbo vanes sticking",
                   "what you believe; the rest is something else"},
                  {"check WORDS", "what that check said in this case"},
                  {"commit CAUSE", "your answer; then the feedback"},
                  {"causes WORDS, checks WORDS", "names that fit"},
                  {"show, stop", "the case again; leave it open for later"}});
  }
  return lines({{kind == PracticeKind::kCheckTrust ? "a percentage" : "the number of a choice",
                 "your answer; then the feedback"},
                {"show, stop", "the question again; leave it open for later"}});
}

}  // namespace shoplore
