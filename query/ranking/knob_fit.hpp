// Fits the ranking's knobs to a shop's own cases, so that its probabilities are honest there.
//
// Up to kMostCasesAsked closed cases whose cause was seen more than once are asked as if new
// (itself left out) with none, half and three quarters of their evidence hidden. Of a small grid of
// smoothings the one is taken at which the first 600 cases are told best; then all other knobs are
// fitted together (knob_descent.hpp). A part that does not help gets no weight. At last the
// sureness is set so that over all questions the model is as sure of its first cause as it is
// right: next to no log loss is lost by it, and it halves the calibration error on the demo's
// unseen cases with all evidence. That hangs on how many were right by chance, hence so many cases:
// with 600 the sureness is off by one percent point from seed to seed. Threads: one; the counter's
// errors.
#pragma once

#include <cstdint>
#include <vector>

#include "query/ranking/kept_knobs.hpp"
#include "query/ranking/past_cases.hpp"
#include "query/ranking/ranking_model.hpp"

namespace shoplore {

inline constexpr std::size_t kMostCasesAsked = 2'400;

struct KnobFit {
  RankingKnobs knobs;
  double log_loss = 0;        // mean, at these knobs
  double start_log_loss = 0;  // at the start values
  std::size_t questions = 0;  // cases asked, each at three levels
};

// The seed draws the cases and what is hidden. Without a recogniser no words are asked with. With
// too few cases: the start values, 0 questions.
[[nodiscard]] Result<KnobFit> fit_knobs(const RankingModel& model,
                                        const std::vector<PastCase>& cases, std::uint64_t seed,
                                        const Recogniser* recogniser = nullptr);

}  // namespace shoplore
