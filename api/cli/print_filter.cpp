#include "api/cli/print_filter.hpp"

#include <fmt/format.h>

#include <vector>

#include "api/cli/text_layout.hpp"

namespace shoplore {
namespace {

std::string mileage_text(const Band<Kilometres>& band) {
  const auto number = [](Kilometres x) { return thousands(x.value); };
  if (!band.high) return "from " + number(*band.low) + " km";
  if (!band.low) return "below " + number(*band.high) + " km";
  return number(*band.low) + " to below " + number(*band.high) + " km";
}

std::string years_text(const Band<int>& band) {
  if (!band.high) return fmt::format("model years from {}", *band.low);
  if (!band.low) return fmt::format("model years up to {}", *band.high - 1);
  return fmt::format("model years {} to {}", *band.low, *band.high - 1);
}

}  // namespace

std::string filter_text(const Filter& filter) {
  std::vector<std::string> parts;
  if (!filter.make.empty()) parts.push_back("make " + filter.make);
  if (!filter.engine_family.empty()) parts.push_back("engine family " + filter.engine_family);
  if (!filter.mileage.is_open()) parts.push_back(mileage_text(filter.mileage));
  if (!filter.model_year.is_open()) parts.push_back(years_text(filter.model_year));
  if (filter.closed_since) parts.push_back("closed since " + format_date(*filter.closed_since));
  std::string proofs;
  for (const Proof proof : filter.proofs) {
    proofs += (proofs.empty() ? "cause " : " or ") + std::string(name_of(proof));
  }
  if (!proofs.empty()) parts.push_back(proofs);
  return fmt::format("{}", fmt::join(parts, ", "));
}

}  // namespace shoplore
