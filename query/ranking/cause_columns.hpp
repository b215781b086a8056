// What evidence adds to each cause: one column for the items, one for pairs of them, one for how
// like its past cases are, one for symptoms its cases do not even name, one for words that no
// finding was made of.
//
// With rates theta_cf = (n_cf + m p_f) / (d_cf + m), smoothed toward the background (m-estimate;
// Cestnik 1990), k items, epsilon = 0.7. m is the smoothing; of a mention it is 2 / p_f, which
// counts for two cases that mention it: conditions are rare, and by m cases alone none of 37 where
// one was to be expected would speak against a cause as loudly as none of 3,700.
//   items_c    = sum over f of w_f ln(theta_cf / p_f)
//   pairs_c    = sum over edges fg of 1/2 [w_f ln(theta_c,f|g / theta_cf)
//                                          + w_g ln(theta_c,g|f / theta_cg)],
//                theta_c,f|g = (n_cfg + 3 theta_cf) / (d_c,f|g + 3)
//   likeness_c = ln mean over c's cases i of exp B_i,
//                B_i = k ln epsilon + sum over f held by i of ln(((1 - epsilon) + epsilon theta_cf)
//                / (epsilon theta_cf)); 0 where c has no case
//   listed_c   = sum over symptoms f that are present of ln(r_cf / r_f), r_cf = (d_cf + m' r_f) /
//                (n_c + m'), m' = max(m, 1 / r_f), r_f = (D_f + 1/2) / (N + 1): a record names the
//                symptoms that are there and few that are not, so a cause whose cases hardly ever
//                speak of one is unlikely to show it. Only of symptoms: a check is known because
//                somebody chose it.
//   words_c    = 1 / (1 + .08 (k_w - 1)) sum over the k_w words f of ln((n_cf + 2) / (E_cf + 2)),
//                E_cf = n_c N_f / N: a relative rate drawn toward 1 (gamma-Poisson shrinkage, as of
//                drug-event counts; DuMouchel 1999, from memory). Words are many and rare: a rate
//                drawn toward N_f / N would make one typo in a million cases speak like a code.
// The forms came out of trials on open diagnosis data. Pure functions of counts, any thread.
#pragma once

#include <vector>

#include "query/ranking/question_counts.hpp"

namespace shoplore {

inline constexpr double kEpsilon = 0.7;

struct CauseColumns {
  std::vector<double> items, pairs, likeness, listed, words;  // by CauseNumber, like all
  std::vector<double> even_items, even_pairs;                 // the same with every w_f = 1
  std::vector<double> scarcity;                               // findings_held.hpp
};

// `smoothing` is m, in cases.
[[nodiscard]] CauseColumns columns_of(const QuestionCounts& counts, double smoothing);

// What each word adds to each cause; words_c is their sum.
[[nodiscard]] std::vector<std::vector<double>> word_parts(const QuestionCounts& counts);

// theta_cf of one item.
[[nodiscard]] double rate_in(const ItemCounts& counts, CauseNumber cause, double smoothing);

// Whether records name the item wherever it is there: a symptom that is present.
[[nodiscard]] bool is_listed_when_there(const EvidenceItem& item);

// ln(r_cf / r_f) of one item by cause; 0 of an item that is not listed when there.
[[nodiscard]] std::vector<double> listed_part(const ItemCounts& item, const CauseCounts& seen,
                                              double smoothing);

// ln(theta_cf / p_f), which w_f weighs.
[[nodiscard]] double item_part(const ItemCounts& counts, CauseNumber cause, double smoothing);

}  // namespace shoplore
