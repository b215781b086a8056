#include "api/cli/print_progress.hpp"

#include <fmt/format.h>

#include <cmath>

#include "api/wire/practice_words.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kShownPatterns = 12;
constexpr int kPlotWidth = 40;

std::string kind_name(PracticeKind kind) {
  std::string name(name_of(kind));
  for (char& c : name) c = c == '_' ? ' ' : c;
  return name;
}

// As the track record's: one line a bin, what was said against how often it was so.
std::string reliability_lines(const std::vector<ReliabilityBin>& bins) {
  std::string out = "  you said    times   it was so   | marks what you said, # how often it was\n";
  for (const ReliabilityBin& bin : bins) {
    if (bin.count == 0) continue;
    std::string bar(static_cast<std::size_t>(std::lround(bin.right * kPlotWidth)), '#');
    bar.resize(kPlotWidth + 1, ' ');
    bar[static_cast<std::size_t>(std::lround(bin.said * kPlotWidth))] = '|';
    bar.erase(bar.find_last_not_of(' ') + 1);
    out += fmt::format("  {:>6.0f} %{:>9}{:>10.0f} %   {}\n", 100 * bin.said, bin.count,
                       100 * bin.right, bar);
  }
  return out;
}

std::string patterns(const std::string& title, const std::vector<PatternProgress>& patterns,
                     const Vocabulary& vocabulary, std::size_t width) {
  if (patterns.empty()) return "";
  std::vector<TableRow> rows{{title, {"rounds", "points", "next"}}};
  for (const PatternProgress& each : patterns) {
    if (rows.size() > kShownPatterns) break;
    rows.push_back({display_cause_key(each.cause, vocabulary),
                    {fmt::format("{}", each.rounds), fmt::format("{:.0f}", each.points),
                     format_date(each.due)}});
  }
  std::string out = "\n" + table(rows, 2, width);
  if (patterns.size() > kShownPatterns) {
    out += fmt::format("  and {} more (--json)\n", patterns.size() - kShownPatterns);
  }
  return out;
}

std::string weak_lines(const std::vector<SymptomProgress>& weak, const Vocabulary& vocabulary,
                       std::size_t width) {
  if (weak.empty()) return "";
  std::vector<TableRow> rows{{"weaker than your mean when it came in with", {"rounds", "points"}}};
  for (const SymptomProgress& each : weak) {
    rows.push_back({vocabulary.display_name(EntryKind::kSymptom, each.symptom),
                    {fmt::format("{}", each.rounds), fmt::format("{:.0f}", each.points)}});
  }
  return "\n" + table(rows, 2, width);
}

}  // namespace

std::string print_progress(const PracticeProgress& progress, const Vocabulary& vocabulary,
                           const Page& page) {
  std::vector<TableRow> rows{{"practised", {"rounds", "right", "points of 100"}}};
  for (const KindProgress& each : progress.kinds) {
    rows.push_back({kind_name(each.kind),
                    {fmt::format("{}", each.rounds), fmt::format("{}", each.right),
                     fmt::format("{:.0f}", each.points)}});
  }
  std::string out =
      "Practice of " + progress.apprentice + ", for their own eyes\n" + table(rows, 2, page.width);
  const Calibration& calibration = progress.calibration;
  if (calibration.rounds > 0) {
    out += hang("  ",
                fmt::format("In the same cases the records, each left out, get {:.0f}.",
                            progress.records_points),
                page.width);
    out += "\n" + hang("", calibration_sentence(calibration), page.width);
    out += reliability_lines(calibration.bins);
  }
  if (progress.unheeded > 0) {
    out +=
        hang("  ", fmt::format("Warnings of these records you went past: {}.", progress.unheeded),
             page.width);
  }
  out += patterns("mastered", progress.mastered, vocabulary, page.width);
  out += patterns("to learn", progress.to_learn, vocabulary, page.width);
  out += weak_lines(progress.weak, vocabulary, page.width);
  return out;
}

}  // namespace shoplore
