// The vehicles a demo workshop knows: a bounded pool from which repeat visits come.
//
// Keeps at most kPerFamily vehicles of an engine family; the oldest entry makes room. A vehicle
// whose comeback is still to come stays out of the pool, so its mileage never runs backwards.
#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <vector>

#include "corpus-demo/case_draw.hpp"

namespace shoplore {

class Fleet {
 public:
  explicit Fleet(std::size_t families) : pools_(families) {}

  void add(const DemoVehicle& vehicle);

  // Takes out a vehicle of the same family, model and facts that could have driven from its last
  // visit to `wanted`'s mileage by that day; nothing when there is none.
  [[nodiscard]] std::optional<DemoVehicle> take_like(const DemoVehicle& wanted);

  // Takes out any vehicle not seen for three weeks; nothing when luck finds none.
  [[nodiscard]] std::optional<DemoVehicle> take_any(Date day, Random& random);

 private:
  static constexpr std::size_t kPerFamily = 120;
  std::vector<std::deque<DemoVehicle>> pools_;
};

}  // namespace shoplore
