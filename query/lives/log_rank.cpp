// Age by age over both groups: of n at risk, n1 of them in the first group, d failed. Were both
// alike, d n1 / n of them would be of the first, with the hypergeometric variance
// d (n1 / n) (n2 / n) (n - d) / (n - 1). Those at risk are
// counted anew at each age: ages times lives, which thousands of either do not make slow.
#include "query/lives/log_rank.hpp"

#include <cmath>
#include <set>
#include <string>

namespace shoplore {
namespace {

struct AtAge {
  double at_risk = 0, failed = 0;
};

AtAge at_age(std::span<const Life> lives, double age) {
  AtAge at;
  for (const Life& life : lives) {
    if (life.exit < age || (life.entry && *life.entry >= age)) continue;
    ++at.at_risk;
    if (life.failed && life.exit == age) ++at.failed;
  }
  return at;
}

Result<void> check_group(std::span<const Life> lives, const std::string& name) {
  auto checked = check_lives(lives);
  if (checked) return {};
  Error error = checked.error();
  error.place = error.place.empty() ? name : name + " " + error.place;
  return fail(std::move(error));
}

}  // namespace

Result<LogRank> log_rank(std::span<const Life> first, std::span<const Life> second) {
  if (auto checked = check_group(first, "first"); !checked) return fail(checked.error());
  if (auto checked = check_group(second, "second"); !checked) return fail(checked.error());
  std::set<double> ages;
  for (const auto group : {first, second}) {
    for (const Life& life : group) {
      if (life.failed) ages.insert(life.exit);
    }
  }
  LogRank test;
  double variance = 0;
  for (const double age : ages) {
    const AtAge one = at_age(first, age), other = at_age(second, age);
    const double n = one.at_risk + other.at_risk, d = one.failed + other.failed;
    test.first_expected += d * one.at_risk / n;
    test.second_expected += d * other.at_risk / n;
    if (n > 1) variance += d * (one.at_risk / n) * (other.at_risk / n) * (n - d) / (n - 1);
  }
  if (variance <= 0) {
    return fail(ErrorCode::kInvalidInput, "", "the failures cannot tell the groups apart");
  }
  test.first_failed = count_failures(first);
  test.second_failed = count_failures(second);
  const double excess = static_cast<double>(test.first_failed) - test.first_expected;
  test.chi_squared = excess * excess / variance;
  test.p = std::erfc(std::sqrt(test.chi_squared / 2));  // of chi-squared with 1 degree
  return test;
}

}  // namespace shoplore
