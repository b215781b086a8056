#include "api/cli/print_lately.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "api/wire/lately_plot.hpp"

namespace shoplore {
namespace {

constexpr std::array kLevels{"▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
constexpr std::size_t kShownYears = 4;

// A month without a case is a dot, so that it is not taken for the lowest bar.
std::string sparkline(const std::vector<std::uint32_t>& counts) {
  const double most = *std::max_element(counts.begin(), counts.end());
  std::string line;
  for (const std::uint32_t count : counts) {
    const auto level = static_cast<std::size_t>(std::ceil(count / most * kLevels.size()));
    line += count == 0 ? "·" : kLevels[level - 1];
  }
  return line;
}

std::string times(double value) {
  if (std::isinf(value)) return "∞";
  return value < 0.995  ? fmt::format("{:.2f}", value)
         : value < 9.95 ? fmt::format("{:.1f}", value)
                        : fmt::format("{:.0f}", value);
}

std::string rate_text(double rate) {
  if (rate < 0.001) return "<.001";
  const std::string text = fmt::format("{:.3f}", rate);
  return text.front() == '0' ? text.substr(1) : text;
}

std::string cases_text(std::uint32_t count) {
  return fmt::format("{} {}", thousands(count), count == 1 ? "case" : "cases");
}

class LatelyPrinter {
 public:
  LatelyPrinter(const Lately& seen, const LatelyView& view, const Vocabulary& vocabulary,
                const Page& page)
      : seen_(seen), view_(view), vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string print() {
    if (seen_.rows.empty() && seen_.pairings.empty()) return hang("", nothing(), page_.width);
    heading();
    for (const LatelyRow& each : seen_.rows) row(each);
    pairings();
    notes();
    return std::move(out_);
  }

 private:
  std::string nothing() const {
    if (seen_.cases == 0) return "No case was closed in a whole month yet: nothing to compare.";
    if (seen_.compared == 0) {
      return fmt::format(
          "{} from {} to {}: {} whole months are too few to call anything usual; it takes {}.",
          cases_text(seen_.cases), month_text(seen_.first), month_text(seen_.last),
          (seen_.last - seen_.first).count() + 1, kFewestMonthsBefore + kLatelyMonths.front());
    }
    const std::size_t months = view_.months.value_or(kLatelyMonths.front());
    const auto window = std::find(kLatelyMonths.begin(), kLatelyMonths.end(), months);
    return fmt::format(
        "Nothing is seen {} often lately than before{}: {} failures and pairings compared up to "
        "{}, {} in the last {} months.",
        view_.rows == LatelyRows::kFallen ? "less" : "more",
        view_.months ? fmt::format(" over {} months", *view_.months) : "",
        thousands(static_cast<std::int64_t>(seen_.compared)), month_text(seen_.last),
        cases_text(seen_.cases_lately.at(static_cast<std::size_t>(window - kLatelyMonths.begin()))),
        months);
  }

  std::string title() const {
    switch (view_.rows) {
      case LatelyRows::kFallen:
        return "Seen less lately";
      case LatelyRows::kAll:
        return "Everything compared";
      default:
        return "Seen more lately";
    }
  }

  void heading() {
    out_ += ink_.heading(title()) + "\n";
    std::string text =
        fmt::format("whole months up to {}; cases that came in: ", month_text(seen_.last));
    for (std::size_t i = 0; i < kLatelyMonths.size(); ++i) {
      text +=
          fmt::format("{} in the last {}, ", thousands(seen_.cases_lately[i]), kLatelyMonths[i]);
    }
    out_ += hang("  ",
                 text + fmt::format("{} since {}", thousands(seen_.cases), month_text(seen_.first)),
                 page_.width);
  }

  void row(const LatelyRow& row) {
    out_ += "\n" + hang("  ", ink_.bold(display_failure(row.cause, row.engine_family, vocabulary_)),
                        page_.width);
    if (std::any_of(row.drawn.begin(), row.drawn.end(), [](auto count) { return count > 0; })) {
      out_ += hang(
          "    ",
          fmt::format("{}  {} months, at most {} in one", sparkline(row.drawn), row.drawn.size(),
                      cases_text(*std::max_element(row.drawn.begin(), row.drawn.end()))),
          page_.width);
    }
    std::vector<TableRow> rows{{"", {"cases", "expected", "times (90 %)", "q"}}};
    for (const WindowRate& window : row.windows) {
      rows.push_back({fmt::format("last {} months", window.months), window_cells(window)});
    }
    out_ += table(rows, 4, page_.width);
    began(row);
    same_months(row);
  }

  static std::vector<std::string> window_cells(const WindowRate& window) {
    return {thousands(window.cases), fmt::format("{:.1f}", window.expected),
            fmt::format("×{} ({}-{})", times(window.rate.ratio), times(window.rate.low),
                        times(window.rate.high)),
            window.q ? rate_text(*window.q) : "-"};
  }

  void began(const LatelyRow& row) {
    if (row.trend != Trend::kRisen || !row.sum || row.sum->sum <= 0) return;
    out_ += hang(
        "    ",
        fmt::format(
            "more often since about {}{}", month_text(row.sum->began),
            row.sum->sum >= row.sum->interval ? "" : "; month by month that could still be chance"),
        page_.width);
  }

  void same_months(const LatelyRow& row) {
    if (row.earlier.empty()) return;
    std::string text = "the same three months: ";
    for (std::size_t i = 0; i < std::min(kShownYears, row.earlier.size()); ++i) {
      text +=
          fmt::format("{}{} in {}", i == 0 ? "" : ", ", row.earlier[i].cases, row.earlier[i].year);
    }
    if (row.season == Seasonality::kAllowedFor) text += "; its yearly course is allowed for";
    out_ += hang("    ", text, page_.width);
  }

  void pairings() {
    if (seen_.pairings.empty()) return;
    out_ += "\n" + ink_.heading("Never seen together before") + "\n";
    for (const NewPairing& each : seen_.pairings) {
      out_ += hang("  ",
                   fmt::format("{}: {} since {}; before, {} of this failure and {} of this engine",
                               display_failure(each.cause, each.engine_family, vocabulary_),
                               cases_text(each.cases), month_text(each.first),
                               thousands(each.cause_before), thousands(each.family_before)),
                   page_.width);
    }
  }

  void notes() {
    out_ += "\n" + hang("  ",
                        "expected: had all gone on as before, for as many cases as came in. "
                        "times: cases over expected, with the 90 % interval. q: of all lines with "
                        "a q as small, at most that share is chance; up to .01 stands out.",
                        page_.width);
    out_ += hang("  ",
                 "Counts say that, not why: one customer's many vehicles or a vehicle that came "
                 "back count too.",
                 page_.width);
  }

  const Lately& seen_;
  const LatelyView& view_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string out_;
};

}  // namespace

std::string print_lately(const Lately& seen, const LatelyView& view, const Vocabulary& vocabulary,
                         const Page& page) {
  return LatelyPrinter(seen, view, vocabulary, page).print();
}

}  // namespace shoplore
