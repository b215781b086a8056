// Ranking causes: a tempered naive Bayes on rates shrunk to the background, explained item by
// item. The simple first form, with start values.
//
// For question items E, k = |E|, cause c with n_c of N cases, item f of an attribute known in
// D_f cases (d_cf of the cause's) with V_f possible values, N_f (n_cf) of them with f:
//   background p_f = (N_f + 1/2) / (D_f + V_f/2); of a mention (N_f + 1/2) / (N + 1)
//   rate theta_cf = (n_cf + m p_f) / (d_cf + m), m = 2
//   L_c = sum over f of ln(theta_cf / p_f);  tau = 1 / (1 + rho (k - 1)), rho = 0.03
//   P(c|E) proportional to (1 - n1/N) (n_c + 1/2) / sum over c of (n_c + 1/2) * exp(tau L_c)
//   P("not in these records") proportional to n1/N, n1 causes seen once (Good 1953: the unseen
//   mass is about the singletons over N); where every cause was seen once, (N - 1/2)/N, so that
//   something is left for the recorded ones
// m is additive smoothing toward the background (Zadrozny & Elkan 2001 call it m-estimation).
// Threads: as the counter's. Errors: the counter's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/answer.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

struct RankingKnobs {
  double m = 2;       // strength of the background, in cases
  double rho = 0.03;  // how much evidence items repeat one another
};

// A case to be left out of all counts: asking a closed case as if it were new.
struct LeftOut {
  CauseNumber cause = 0;
  std::vector<EvidenceItem> items;  // it stated
  std::vector<std::string> known;   // groups known in it
};

struct RankedCause {
  CauseNumber cause = 0;
  double probability = 0;
  std::uint32_t seen = 0;    // n_c
  std::vector<WhyLine> why;  // in the order of the items; weight = tau ln(theta/p)
};

struct Ranking {
  std::vector<RankedCause> causes;  // falling probability, then cause key
  double not_in_these_records = 0;
  std::uint32_t cases = 0;  // N
  double tau = 1;
};

// Ranks every cause with n_c > 0 under the filter. Items repeat no attribute.
[[nodiscard]] Result<Ranking> rank_causes(const std::vector<EvidenceItem>& items,
                                          const Filter& filter, const CaseCounter& counter,
                                          const RankingKnobs& knobs = {},
                                          const std::optional<LeftOut>& left_out = {});

// The items of a record or question that enter the ranking: its findings, and of the vehicle only
// the most telling attribute that is known (engine family, else model, else make; fuel only
// without them) and the mileage band, because the others say the same again.
[[nodiscard]] std::vector<EvidenceItem> ranking_items(const std::vector<EvidenceItem>& stated);

}  // namespace shoplore
