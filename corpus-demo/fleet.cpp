#include "corpus-demo/fleet.hpp"

#include <algorithm>

namespace shoplore {

void Fleet::add(const DemoVehicle& vehicle) {
  auto& pool = pools_[vehicle.family];
  if (pool.size() >= kPerFamily) pool.pop_front();
  pool.push_back(vehicle);
}

std::optional<DemoVehicle> Fleet::take_like(const DemoVehicle& wanted) {
  auto& pool = pools_[wanted.family];
  const auto fits = [&](const DemoVehicle& known) {
    const std::int64_t days = (wanted.seen.days - known.seen.days).count();
    const std::int64_t driven = wanted.mileage.value - known.mileage.value;
    return known.model == wanted.model && known.facts == wanted.facts && days >= 1 && driven >= 0 &&
           driven <= days * 250;
  };
  const auto found = std::find_if(pool.begin(), pool.end(), fits);
  if (found == pool.end()) return {};
  const DemoVehicle vehicle = *found;
  pool.erase(found);
  return vehicle;
}

std::optional<DemoVehicle> Fleet::take_any(Date day, Random& random) {
  auto& pool = pools_[static_cast<std::size_t>(
      random.integer(0, static_cast<std::int64_t>(pools_.size()) - 1))];
  if (pool.empty()) return {};
  const auto index = random.integer(0, static_cast<std::int64_t>(pool.size()) - 1);
  const auto found = pool.begin() + index;
  if (day.days - found->seen.days < std::chrono::days(21)) return {};
  const DemoVehicle vehicle = *found;
  pool.erase(found);
  return vehicle;
}

}  // namespace shoplore
