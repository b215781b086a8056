#include "api/wire/plot.hpp"

#include <cassert>
#include <cmath>

namespace shoplore {
namespace {

double round_step(double rough) {
  const double power = std::pow(10, std::floor(std::log10(rough)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (rough <= times * power * (1 + 1e-9)) return times * power;
  }
  return 10 * power;
}

}  // namespace

PlotAxis axis_from_zero(std::string label, double greatest, int wanted) {
  assert(greatest > 0 && wanted > 0);
  const double step = round_step(greatest / wanted);
  const double count = std::ceil(greatest / step * (1 - 1e-9));
  PlotAxis axis{std::move(label), 0, count * step, {}, {}};
  for (double i = 0; i <= count; ++i) axis.ticks.push_back(i * step);
  return axis;
}

}  // namespace shoplore
