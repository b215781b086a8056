#include "api/cli/count_text.hpp"

#include <fmt/format.h>

namespace shoplore {

std::string counted(const Share& share) {
  if (share.out_of == 0) return "-";
  return fmt::format("{} of {} ({:.0f}-{:.0f} %)", share.count, share.out_of,
                     100 * share.interval.low, 100 * share.interval.high);
}

std::string factor(double value) {
  return value < 0.995  ? fmt::format("{:.2f}", value)
         : value < 9.95 ? fmt::format("{:.1f}", value)
                        : fmt::format("{:.0f}", value);
}

std::string factor(const std::optional<Ratio>& ratio) {
  if (!ratio) return "-";
  return fmt::format("{}{} ({}-{})", ratio->half_added ? "~" : "", factor(ratio->value),
                     factor(ratio->low), factor(ratio->high));
}

}  // namespace shoplore
