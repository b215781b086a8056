#include "api/wire/practice_words.hpp"

#include <fmt/format.h>

#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

// "vacuum on the boost actuator" and "pass" of "boost_vacuum=pass".
std::pair<std::string, std::string> check_and_verdict(const std::string& subject,
                                                      const Vocabulary& vocabulary) {
  const auto equals = subject.find('=');
  return {vocabulary.display_name(EntryKind::kCheck, subject.substr(0, equals)),
          subject.substr(equals + 1)};
}

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

}  // namespace

std::string practice_question(const RoundView& round, const Vocabulary& vocabulary) {
  switch (round.kind) {
    case PracticeKind::kCause:
      return "What is wrong with it? Say in percent what you believe, ask for checks, say again "
             "what you believe, and commit to one cause.";
    case PracticeKind::kNextCheck:
      return "Which of these checks tells most about the cause for its minutes?";
    case PracticeKind::kCode:
      return fmt::format(
          "What does {} say by itself: what its letter stands for, who gives it its "
          "meaning, what it is about?",
          round.about);
    case PracticeKind::kVainRepair:
      return fmt::format("When it was {}: which of these repairs came back most often here?",
                         display_cause_key(round.about, vocabulary));
    case PracticeKind::kCheckTrust: {
      const auto [check, verdict] = check_and_verdict(round.about, vocabulary);
      return fmt::format(
          "'{}' said {}, and it is known what became of it: in how many percent of "
          "these cases did that mislead us?",
          check, verdict);
    }
  }
  return "";
}

std::string practice_choice(PracticeKind kind, std::string_view choice,
                            const Vocabulary& vocabulary) {
  if (kind == PracticeKind::kNextCheck) {
    return vocabulary.display_name(EntryKind::kCheck, choice);
  }
  if (kind != PracticeKind::kVainRepair) return std::string(choice);
  std::string text;
  while (true) {
    const auto plus = std::min(choice.find('+'), choice.size());
    text += (text.empty() ? "" : " + ") + display_fix(choice.substr(0, plus), vocabulary);
    if (plus == choice.size()) return text;
    choice.remove_prefix(plus + 1);
  }
}

std::string practice_answer(const PracticeStep& step) {
  if (step.unsafe == YesNo::kYes) {
    return "not with these findings: it may harm people or the vehicle; choose another";
  }
  if (step.verdict.empty()) return "not recorded in this case; not counted against you";
  return step.reading.empty() ? step.verdict : step.verdict + ", " + step.reading;
}

std::string calibration_sentence(const Calibration& calibration) {
  if (calibration.word == CalibrationWord::kTooFew) {
    return fmt::format(
        "{} {} that came up by chance: too few to tell how far your percentages can be trusted; "
        "{} are needed.",
        calibration.rounds, calibration.rounds == 1 ? "round" : "rounds", kFewestToTell);
  }
  const Share& so = calibration.first_was_so;
  const std::string facts = fmt::format(
      "Of the cause you believed most you said {:.0f} % on average; it was so in {} of {} rounds "
      "that came up by chance "
      "({}, 90 %: {} to {}).",
      calibration.said_of_first, so.count, so.out_of,
      percent(static_cast<double>(so.count) / so.out_of), percent(so.interval.low),
      percent(so.interval.high));
  switch (calibration.word) {
    case CalibrationWord::kOverconfident:
      return facts +
             " You are surer than you have reason to be: leave more for the other causes, "
             "or check once more before you commit.";
    case CalibrationWord::kUnderconfident:
      return facts +
             " You know more than you say: your first cause is right more often than your "
             "percentages claim.";
    default:
      return facts + " Your percentages can be trusted as far as this many rounds tell.";
  }
}

}  // namespace shoplore
