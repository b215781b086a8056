// What fitting the knobs makes small, and which way is down.
//
//   mean over questions of -ln P(truth) + 1/(2n) sum over knobs of ((x - start) / spread)^2
//
// n the number of questions, x a knob (of rho its logarithm): the second part pulls a small shop's
// knobs to their start values. A truth given less than kLeastProbability costs as much as one given
// that, and has no slope. Where the weight of "not in these records" reaches its bound
// (likely_causes.hpp) there is a kink; the gradient is that of one side.
// Pure functions, any thread.
#pragma once

#include <cstddef>
#include <vector>

#include "query/ranking/likely_causes.hpp"

namespace shoplore {

// A past question at one smoothing, with what no knob moves.
struct FitQuestion {
  CauseColumns columns;
  CauseCounts seen;       // n_c
  Priors priors;          // of them
  std::size_t items = 0;  // k
  CauseNumber truth = 0;  // was seen
};

// Of one fitted knob: where it may be, and how far from its start it is likely to be.
struct KnobRange {
  double RankingKnobs::*knob;
  enum class Scale { kPlain, kLogarithm } scale;
  double least, most, spread;  // spread of x
};
[[nodiscard]] const std::vector<KnobRange>& fitted_knobs();

// x by position in fitted_knobs, and back; smoothing and sureness stay as they are given.
[[nodiscard]] std::vector<double> coordinates_of(const RankingKnobs& knobs);
[[nodiscard]] RankingKnobs knobs_at(const std::vector<double>& x, RankingKnobs knobs);

// The first part. Requires: at least one question.
[[nodiscard]] double log_loss(const std::vector<FitQuestion>& questions, const RankingKnobs& knobs);

// The whole, and its gradient along x where one is asked for. Requires: at least one question.
[[nodiscard]] double fit_objective(const std::vector<FitQuestion>& questions,
                                   const RankingKnobs& knobs, std::vector<double>* gradient);

}  // namespace shoplore
