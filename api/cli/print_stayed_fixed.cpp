#include "api/cli/print_stayed_fixed.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

constexpr std::chrono::days kYear{365};

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

std::string after_text(std::chrono::days after) {
  if (after.count() % kYear.count() != 0) return fmt::format("{} days", after.count());
  const auto years = after / kYear;
  return years == 1 ? "a year" : fmt::format("{} years", years);
}

std::string after_text(Kilometres after) {
  return thousands(after.value) + " km";
}

std::string a_year_on(const StayedFixed& done) {
  for (const auto& stayed : done.by_days) {
    if (stayed.after != kYear) continue;
    return fmt::format("{} ({})", percent(stayed.share), interval_text(stayed.interval));
  }
  return "-";
}

}  // namespace

std::string interval_text(const Interval& interval) {
  return fmt::format("{:.0f}-{:.0f} %", 100 * interval.low, 100 * interval.high);
}

std::string still_fixed_text(const StayedFixed& done) {
  std::vector<std::string> shares;
  const auto add = [&](const auto& stayed) {
    shares.push_back(fmt::format("{} after {} ({})", percent(stayed.share),
                                 after_text(stayed.after), interval_text(stayed.interval)));
  };
  for (const auto& stayed : done.by_days) add(stayed);
  for (const auto& stayed : done.by_km) add(stayed);
  return fmt::format("{}", fmt::join(shares, ", "));
}

std::string comeback_reasons_text(const StayedFixed& done) {
  std::vector<std::string> texts;
  for (const ReasonCount& count : done.reasons) {
    std::string name =
        count.reason ? std::string(name_of(*count.reason)) : "no reason written down";
    std::replace(name.begin(), name.end(), '_', ' ');
    texts.push_back(fmt::format("{} {}", name, thousands(count.cases)));
  }
  return fmt::format("{}", fmt::join(texts, ", "));
}

std::string stayed_fixed_table(const std::vector<StayedFixed>& all, std::size_t most,
                               std::size_t indent, const Vocabulary& vocabulary, const Page& page) {
  std::vector<TableRow> rows{
      {"what was done", {"cases", "came back", "not heard of", "fixed a year on"}}};
  for (const StayedFixed& done : all) {
    if (rows.size() > most) break;
    const std::uint32_t heard = done.came_back + done.still_fixed;
    rows.push_back({display_fixes(done.fixes, vocabulary),
                    {thousands(done.cases), heard == 0 ? "-" : of_text(done.came_back, heard),
                     thousands(done.not_heard_of), a_year_on(done)}});
  }
  return table(rows, indent, page.width);
}

}  // namespace shoplore
