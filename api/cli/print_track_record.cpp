#include "api/cli/print_track_record.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace shoplore {
namespace {

constexpr std::array<const char*, 3> kLevelNames{"all of it", "half", "a quarter"};
constexpr std::size_t kShownFamilies = 12;
constexpr int kPlotWidth = 50;

std::string share(double value) {
  return fmt::format("{:>3.0f} %", 100 * value);
}

std::string summary(const TrackRecordRow& row) {
  std::string out =
      fmt::format("{:<12}{:>9}{:>8}{:>14}{:>8}{:>10}{:>8}{:>13}\n", "asked with", "cases", "first",
                  "first three", "MRR", "log loss", "Brier", "calibration");
  for (std::size_t i = 0; i < row.levels.size(); ++i) {
    const Scores& s = row.levels[i];
    out += fmt::format("{:<12}{:>9}{:>8}{:>14}{:>8.3f}{:>10.3f}{:>8.3f}{:>13.3f}\n", kLevelNames[i],
                       s.questions, share(s.first), share(s.first_three), s.mean_reciprocal_rank,
                       s.log_loss, s.brier, s.calibration_error);
  }
  return out;
}

// Right first, with all, half and a quarter of the evidence.
std::string rows(const std::string& title, const std::vector<TrackRecordRow>& rows,
                 std::size_t most) {
  std::string out = fmt::format("\n{:<34}{:>7}{:>10}{:>8}{:>12}\n", title, "cases", "all of it",
                                "half", "a quarter");
  for (std::size_t i = 0; i < std::min(most, rows.size()); ++i) {
    const TrackRecordRow& row = rows[i];
    const std::size_t n = row.levels[0].questions;
    out += fmt::format("  {:<32}{:>7}", row.name, n);
    if (n < kFewestToTell) {
      out += "   too few to tell\n";
      continue;
    }
    out += fmt::format("{:>10}{:>8}{:>12}\n", share(row.levels[0].first),
                       share(row.levels[1].first), share(row.levels[2].first));
  }
  if (rows.size() > most) out += fmt::format("  and {} more (--json)\n", rows.size() - most);
  return out;
}

// One line a bin: how often what was said that likely was right.
std::string reliability_plot(const Scores& scores) {
  std::string out =
      "\nHow far a stated probability can be trusted, asked with half the evidence:\n"
      "  said of the first cause   cases   it was   | marks what was said, # how often "
      "right\n";
  for (const ReliabilityBin& bin : scores.bins) {
    if (bin.count == 0) continue;
    std::string bar(static_cast<std::size_t>(std::lround(bin.right * kPlotWidth)), '#');
    bar.resize(kPlotWidth + 1, ' ');
    bar[static_cast<std::size_t>(std::lround(bin.said * kPlotWidth))] = '|';
    bar.erase(bar.find_last_not_of(' ') + 1);
    out += fmt::format("  {:>14}{:>17}{:>9}   {}\n", share(bin.said), bin.count, share(bin.right),
                       bar);
  }
  return out;
}

}  // namespace

std::string print_track_record(const TrackRecord& record) {
  if (record.cases == 0) {
    return "No closed case has anything to ask by yet, so there is nothing to tell.\n";
  }
  std::string out = fmt::format("{} closed cases, each asked as if it were new.\n", record.cases);
  if (record.only_of_their_cause > 0) {
    out +=
        fmt::format("{} of them are the only case of their cause: nothing recorded could tell.\n",
                    record.only_of_their_cause);
  }
  if (record.cases < kFewestToTell) {
    out += fmt::format("Fewer than {}: too few to tell how good the records are.\n", kFewestToTell);
    return out;
  }
  out += "\n" + summary(record.all);
  out += rows("right first, other cases of the cause", record.by_seen, record.by_seen.size());
  out += rows("right first, by year closed", record.by_year, record.by_year.size());
  std::vector<TrackRecordRow> families = record.by_family;
  for (TrackRecordRow& family : families) {
    if (family.name == "not written down") continue;
    for (char& c : family.name) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  }
  out += rows("right first, by engine family", families, kShownFamilies);
  out += reliability_plot(record.all.levels[1]);
  return out;
}

}  // namespace shoplore
