// The cumulative sum (CUSUM) of counts above what is usual: small rises that last add up, chance
// does not. It tells that a rate has risen, and since when.
//
// C(0) = 0, C(t) = max(0, C(t-1) + x(t) - k(t)) (Page, Biometrika 41, 1954). The reference k lies
// between the usual mean and the risen one that is looked for (Lucas, Technometrics 27, 1985). A
// sum at or above its decision interval signals; the rise began after the last 0.
// Usual means may differ from month to month: then so does k, in proportion, and the chance of a
// high sum is worked out over just those months, exactly (the Markov chain of Brook & Evans,
// Biometrika 59, 1972, with one step a month instead of its long run).
// Only rises: of a fall, hand in everything with its sign changed.
// Pure functions, any thread; they cannot fail.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace shoplore {

// k of counts whose usual mean is `usual` and whose risen mean would be `risen`:
// (risen - usual) / (ln risen - ln usual). Requires: 0 < usual < risen.
[[nodiscard]] double poisson_reference(double usual, double risen);

// C(1), C(2), ... Requires: as many references as observations.
[[nodiscard]] std::vector<double> upper_cusum(std::span<const double> observations,
                                              std::span<const double> references);

// Index of the first observation of the rise that the last sum tells of: the one after the last 0.
// The number of sums when the last is 0.
[[nodiscard]] std::size_t rise_began(std::span<const double> sums);

// Chances of the last sum when nothing has changed. Counts are Poisson with the usual means, but
// how well those are known is part of it: means told by few events may all be too low together,
// and a sum of what is above them then climbs by itself.
class CusumChances {
 public:
  // Of the usual means, references that many times the means. The means come from a rate told by
  // `events` events: it is averaged over as a lognormal with variance 1 / events (5-point
  // Gauss-Hermite rule, Abramowitz & Stegun 1964, table 25.10). Counted in steps of
  // 1 / kCusumSteps, to which references are rounded; sums beyond `highest` stay there.
  // Requires: means above 0, factor above 1, events and highest above 0.
  CusumChances(std::span<const double> usual_means, double events, double factor, double highest);

  // The chance of a last sum of at least that.
  [[nodiscard]] double at_least(double sum) const;
  // The smallest sum whose chance is at most that: the decision interval. Infinite when even
  // `highest` is likelier.
  [[nodiscard]] double interval(double chance) const;

  // The references it reckons with.
  [[nodiscard]] const std::vector<double>& references() const { return references_; }

 private:
  std::vector<double> references_;
  std::vector<double> tail_;  // by steps: chance of at least that
};

inline constexpr int kCusumSteps = 4;

}  // namespace shoplore
