#include "query/drive_of_vehicle.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace shoplore {

Result<std::optional<Fuel>> electric_drive_of(const std::vector<EvidenceItem>& stated,
                                              const CaseCounter& counter) {
  const auto of = [&](std::string_view attribute) {
    return std::find_if(stated.begin(), stated.end(),
                        [&](const EvidenceItem& item) { return item.attribute == attribute; });
  };
  if (of("fuel") != stated.end()) return std::optional<Fuel>();
  auto vehicle = of("engine_family");
  if (vehicle == stated.end()) vehicle = of("model");
  if (vehicle == stated.end()) return std::optional<Fuel>();
  std::optional<Fuel> most;
  std::uint64_t most_cases = 0;
  for (const Fuel fuel : std::array{Fuel::kElectric, Fuel::kHybrid}) {
    const auto counts = counter.by_cause({{*vehicle, {"fuel", std::string(name_of(fuel))}}, {}});
    if (!counts) return fail(counts.error());
    const auto cases = std::accumulate(counts->begin(), counts->end(), std::uint64_t{0});
    if (cases <= most_cases) continue;
    most_cases = cases;
    most = fuel;
  }
  return most;
}

}  // namespace shoplore
