#include "query/lives/lives.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <boost/math/special_functions/erf.hpp>
#include <cassert>
#include <cmath>
#include <string>

namespace shoplore {
namespace {

using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

bool is_time(double time) {
  return std::isfinite(time) && time >= 0;
}

auto refuse(std::size_t number, std::string message) {
  return fail(ErrorCode::kInvalidInput, number == 0 ? "" : fmt::format("life {}", number),
              std::move(message));
}

}  // namespace

Result<void> check_lives(std::span<const Life> lives) {
  if (lives.empty()) return refuse(0, "no lives were given");
  for (std::size_t i = 0; i < lives.size(); ++i) {
    const Life& life = lives[i];
    if (!is_time(life.exit)) return refuse(i + 1, "its exit is not a time of 0 or more");
    if (!life.entry) continue;
    if (!is_time(*life.entry)) return refuse(i + 1, "its entry is not a time of 0 or more");
    if (*life.entry >= life.exit) {
      return refuse(i + 1,
                    fmt::format("it was seen from {} but ended at {}: entry must be before exit",
                                *life.entry, life.exit));
    }
  }
  return {};
}

Result<void> check_lives_to_fit(std::span<const Life> lives) {
  if (const auto checked = check_lives(lives); !checked) return fail(checked.error());
  double longest = 0;
  for (std::size_t i = 0; i < lives.size(); ++i) {
    if (lives[i].exit <= 0) return refuse(i + 1, "a life to fit must be longer than 0");
    longest = std::max(longest, lives[i].exit);
  }
  const std::uint64_t failures = count_failures(lives);
  if (failures < 2) {
    return refuse(0, fmt::format("{} failed: fitting a life needs at least 2 failures", failures));
  }
  const bool spread = std::any_of(lives.begin(), lives.end(), [&](const Life& life) {
    return life.failed && life.exit < longest;
  });
  if (!spread) return refuse(0, fmt::format("all failures are at {}, the longest life", longest));
  return {};
}

std::uint64_t count_failures(std::span<const Life> lives) {
  return static_cast<std::uint64_t>(
      std::count_if(lives.begin(), lives.end(), [](const Life& life) { return life.failed; }));
}

double normal_quantile(double share) {
  assert(share > 0 && share < 1);
  return -std::sqrt(2.0) * boost::math::erfc_inv(2 * share, Policy());
}

Estimate estimate_on_log_scale(double log_value, double log_error, double confidence) {
  const double half = two_sided_z(confidence) * log_error;
  return {std::exp(log_value), std::exp(log_value - half), std::exp(log_value + half)};
}

std::optional<PairCovariance> inverted(const PairCovariance& information) {
  const auto& [first, second, between] = information;
  const double determinant = first * second - between * between;
  // Written so that a NaN is refused too.
  if (!(first > 0) || !(second > 0) || !(determinant > 1e-14 * first * second)) return std::nullopt;
  return PairCovariance{second / determinant, first / determinant, -between / determinant};
}

}  // namespace shoplore
