#include "query/practice/belief.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace shoplore {
namespace {

// Least points of grades 5, 4, 3, 2, 1.
constexpr std::array<double, 5> kGradePoints{90, 80, 65, 50, 25};
constexpr double kNothingSaid = 50;
constexpr int kBest = 5, kAsGoodGrade = 4, kWrongGrade = 2;

std::string part(std::size_t i) {
  return fmt::format("/beliefs/{}", i);
}

}  // namespace

Result<void> check_beliefs(const std::vector<Belief>& beliefs) {
  const auto refuse = [](std::string place, std::string why) {
    return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
  };
  if (beliefs.empty()) return refuse("/beliefs", "expected at least one cause with a percentage");
  if (beliefs.size() > kMostBeliefs) {
    return refuse("/beliefs", fmt::format("at most {} causes are taken", kMostBeliefs));
  }
  double sum = 0;
  for (std::size_t i = 0; i < beliefs.size(); ++i) {
    const double percent = beliefs[i].percent;
    if (!std::isfinite(percent)) return refuse(part(i), "the percentage is not a number");
    if (percent < 0) return refuse(part(i), fmt::format("{:g} % is less than nothing", percent));
    if (percent > 100) return refuse(part(i), fmt::format("{:g} % is more than 100", percent));
    const auto same = [&](const Belief& other) { return other.cause == beliefs[i].cause; };
    if (std::any_of(beliefs.begin(), beliefs.begin() + static_cast<std::ptrdiff_t>(i), same)) {
      return refuse(part(i), "this cause is there twice");
    }
    sum += percent;
  }
  if (sum > 100 + kRoundingPercent) {
    return refuse("/beliefs", fmt::format("{:g} % together, at most 100 can be given away; what "
                                          "you leave over is for something else",
                                          sum));
  }
  return {};
}

std::vector<double> forecast_of(const std::vector<Belief>& beliefs, const CauseTable& causes,
                                const std::vector<std::uint32_t>& seen) {
  std::vector<double> out(seen.size() + 1);
  std::vector<char> named(seen.size());
  double left = 1, lacking = 0;
  for (const Belief& belief : beliefs) {
    left -= belief.percent / 100;
    const auto cause = causes.find(belief.cause);
    if (!cause) {  // the records held it when it was named, and hold it no more
      lacking += belief.percent / 100;
      continue;
    }
    named[*cause] = 1;
    out[*cause] = belief.percent / 100;
  }
  out.back() = lacking;
  const auto is_other = [&](std::size_t c) { return named[c] == 0 && seen[c] > 0; };
  std::size_t others = 1;  // a cause the records lack
  for (std::size_t c = 0; c < seen.size(); ++c) others += is_other(c) ? 1U : 0U;
  // Within rounding more than all was given away: in proportion.
  if (left < 0) {
    for (double& p : out) p /= 1 - left;
  }
  const double each = std::max(0.0, left) / static_cast<double>(others);
  for (std::size_t c = 0; c < seen.size(); ++c) {
    if (is_other(c)) out[c] = each;
  }
  out.back() += each;
  return out;
}

ProperScore proper_score(const std::vector<double>& probabilities, CauseNumber truth) {
  const Judged judged = judge(probabilities, truth);
  return {std::log(std::max(judged.truth, kLeastProbability)), judged.brier,
          100 * (1 - judged.brier / 2)};
}

int grade_of(double points, double records_points, YesNo committed) {
  const auto reached = std::find_if(kGradePoints.begin(), kGradePoints.end(),
                                    [&](double least) { return points >= least; });
  int grade = kBest - static_cast<int>(reached - kGradePoints.begin());
  if (points >= kNothingSaid && points >= records_points - kAsGood) {
    grade = std::max(grade, kAsGoodGrade);
  }
  return committed == YesNo::kYes ? grade : std::min(grade, kWrongGrade);
}

}  // namespace shoplore
