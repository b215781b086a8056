#include "api/cli/print_outcomes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "api/wire/comeback_words.hpp"
#include "indexer/case_keys.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {
namespace {

std::string due_text(const DueOutcome& due, const Vocabulary& vocabulary, const Page& page) {
  const Ink ink(page.colour);
  std::string head = ink.bold(due.ref);
  if (!due.job_number.empty()) head += " · job " + due.job_number;
  if (const std::string vehicle = vehicle_text(due.vehicle); !vehicle.empty()) {
    head += " · " + vehicle;
  }
  std::string text =
      fmt::format("{}, {} days ago: {} ({})", format_date(due.done), thousands(due.since.count()),
                  display_fixes(due.fixes, vocabulary), display_cause_key(due.cause, vocabulary));
  if (due.asked) text += "; asked on " + format_date(*due.asked) + ", nobody knew";
  return hang("  ", head, page.width) + hang("    ", text, page.width);
}

std::string after_text(std::chrono::days after) {
  return fmt::format("{} days", after.count());
}
std::string after_text(Kilometres after) {
  return thousands(after.value) + " km";
}

// "97" of 0.97, never rounded to a certainty that nobody has.
std::string hundredths(double share) {
  if (share > 0 && share < 0.005) return "<1";
  if (share < 1 && share > 0.995) return ">99";
  return fmt::format("{:.0f}", 100 * share);
}

template <class After>
TableRow share_row(const StayedShare<After>& share) {
  const auto& [low, high] = share.interval;
  return {"after " + after_text(share.after),
          {hundredths(share.share) + " %", hundredths(low) + " to " + hundredths(high) + " %",
           fmt::format("{}", share.came_back), fmt::format("{}", share.still_watched)}};
}

std::string reason_words(const ReasonCount& reason) {
  return fmt::format("{} {}", reason.cases,
                     reason.reason ? reason_text(*reason.reason) : "no reason given");
}

// "12 cases: 2 came back (1 part, 1 workmanship), 7 still fixed when last heard of, 3 not heard
// of".
std::string counts_text(const StayedFixed& group) {
  std::string text = fmt::format("{} {}", group.cases, group.cases == 1 ? "case" : "cases");
  text += fmt::format(": {} came back", group.came_back);
  std::vector<std::string> reasons;
  for (const ReasonCount& reason : group.reasons) reasons.push_back(reason_words(reason));
  if (!reasons.empty()) text += fmt::format(" ({})", fmt::join(reasons, ", "));
  text += fmt::format(", {} still fixed when last heard of", group.still_fixed);
  if (group.seen_by_later_visits > 0) {
    text += fmt::format(" ({} known only from a later visit without the complaint)",
                        group.seen_by_later_visits);
  }
  text += fmt::format(", {} not heard of", group.not_heard_of);
  if (group.no_day > 0) text += fmt::format("; of {} nobody wrote the day", group.no_day);
  return text;
}

// Where it cured, nobody ever revised the cause: such a group tells of no cure.
bool stands_here_as_wrong(const StayedFixed& group) {
  return group.came_back == group.cases && group.reasons.size() == 1 &&
         group.reasons.front().reason == ComebackReason::kWrongCause;
}

}  // namespace

std::string reason_text(ComebackReason reason) {
  std::string text(name_of(reason));
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::string print_outcomes_due(const OutcomesDue& due, const Vocabulary& vocabulary,
                               const Page& page) {
  if (due.cases.empty()) {
    return hang("",
                fmt::format("Nothing is due: of every repair done {} days ago or earlier something "
                            "was heard since.",
                            kDueAfter.count()),
                page.width);
  }
  std::string head = fmt::format("{} {} done at least {} days ago and not heard of since",
                                 thousands(static_cast<std::int64_t>(due.all)),
                                 due.all == 1 ? "repair" : "repairs", kDueAfter.count());
  if (due.cases.size() < due.all) head += fmt::format("; the latest {}", due.cases.size());
  std::string out = hang("", head, page.width) + "\n";
  for (const DueOutcome& each : due.cases) out += due_text(each, vocabulary, page);
  out +=
      "\n" + hang("",
                  "Heard something? shoplore outcomes REF stayed_fixed, came_back or unknown; "
                  "with --on DATE, --mileage KM, --reason and, when it is here again, --of NEWREF.",
                  page.width);
  return out;
}

std::string print_comeback_offers(const std::vector<ComebackOffer>& offers, const std::string& ref,
                                  const Vocabulary& vocabulary, const Page& page) {
  if (offers.empty()) return "";
  const Ink ink(page.colour);
  std::string out = ink.warning(ink.heading("Back again?")) + "\n";
  for (std::size_t i = 0; i < std::min(kShownOffers, offers.size()); ++i) {
    out += hang("  ! ", comeback_words(offers[i], vocabulary), page.width);
    if (!ref.empty()) out += hang("    ", "if so: " + comeback_command(offers[i], ref), page.width);
  }
  if (offers.size() > kShownOffers) {
    out += fmt::format("    and {} earlier\n", offers.size() - kShownOffers);
  }
  return out;
}

std::string print_stayed_fixed(const StayedFixed& group, const Vocabulary& vocabulary,
                               const Page& page) {
  std::string out =
      hang("  ", display_fixes(group.fixes, vocabulary) + ", " + counts_text(group), page.width);
  if (stands_here_as_wrong(group)) {
    return out + hang("    ",
                      "Done for another cause and counted here because it came back: where it "
                      "cured, the case counts there.",
                      page.width);
  }
  std::vector<TableRow> rows{{"", {"fixed", "90 % interval", "back", "watched"}}};
  for (const auto& share : group.by_days) rows.push_back(share_row(share));
  for (const auto& share : group.by_km) rows.push_back(share_row(share));
  if (rows.size() == 1) {
    return out + hang("    ", "too few watched long enough to state a share", page.width);
  }
  out += table(rows, 4, page.width);
  return out + hang("    ",
                    "Each counted as long as it was watched: back by then, watched till then. Who "
                    "went elsewhere afterwards we never see.",
                    page.width);
}

}  // namespace shoplore
