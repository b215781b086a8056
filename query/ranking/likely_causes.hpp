// Ranking causes: what the evidence adds to each, tempered, on top of how common it is.
//
// For a question of k items, with the columns of cause_columns.hpp:
//   L_c = items_c + gamma pairs_c + eta likeness_c + listing listed_c
//   tau = sureness k^growth / (1 + rho (k - 1))
//   P(c|E) ~ prior_c exp(tau L_c + words words_c + scarcity scarcity_c),
//   prior_c = (1 - n1/N) (n_c + 1/2) / (sum over all causes of n_c + 1/2)
//   P("not in these records") ~ n1/N
//
// n1 causes were seen once (Good 1953: the unseen mass is about the singletons over N); where every
// cause was, it is (N - 1/2)/N, so that something is left for the recorded ones. Evidence that the
// recorded causes together explain worse than the average over all cases does would speak for an
// unrecorded one without end, only because findings go together more than the average allows: there
// it keeps n1/N.
//
// Every row's parts add up to its log-odds: prior + scarcity + item lines + pairs +
// likeness = ln(weight), and log-odds = ln(weight) - ln(sum of the other rows' weights).
// Threads: as the counter's. Errors: the counter's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/ranking/cause_columns.hpp"
#include "query/ranking/question_counts.hpp"
#include "query/ranking/why_line.hpp"

namespace shoplore {

// How much each part of the model may say; fitted on the shop's own cases (knob_fit.hpp).
struct RankingKnobs {
  double smoothing = 2;  // m: cases by which a rate is drawn to the background
  double rho = 0.03;     // how much evidence items repeat one another
  double gamma = 0.5;    // weight of the pairs
  double eta = 1;        // weight of likeness to past cases
  double sureness = 1;   // of all findings together
  double growth = 0;     // how much more several items say together than one by one
  double words = 1;      // of words that no finding was made of
  double listing = .5;   // of symptoms the cause's cases do not even name
  double scarcity = 0;   // of how few findings the cause's cases hold
  double strength = 1;   // how far items weigh by what their attribute tells: 0 all alike
};

struct RankedCause {
  CauseNumber cause = 0;
  double probability = 0;
  std::uint32_t seen = 0;    // n_c
  double prior = 0;          // log weight of how common it is
  double scarcity = 0;       // scarcity scarcity_c: its cases hold few findings
  double pairs = 0;          // tau gamma pairs_c: together partly the same information
  double likeness = 0;       // tau eta likeness_c: how like its past cases this one is
  double others = 0;         // minus the log of what all other rows weigh
  std::vector<WhyLine> why;  // of each item that some case holds, then of each word
};

struct Ranking {
  std::vector<RankedCause> causes;  // falling probability, then cause key
  double not_in_these_records = 0;
  std::uint32_t cases = 0;               // N
  std::vector<EvidenceItem> never_seen;  // of the question: no case holds them
  double tau = 1;
};

// Ranks every cause with n_c > 0 under the filter. Items repeat no attribute; words may be among
// them (complaint_words.hpp).
[[nodiscard]] Result<Ranking> rank_causes(const std::vector<EvidenceItem>& items,
                                          const Filter& filter, const RankingBasis& basis,
                                          const RankingKnobs& knobs,
                                          const std::optional<LeftOut>& left_out = {});

// tau of a question of so many items.
[[nodiscard]] double tempering(std::size_t items, const RankingKnobs& knobs);

// How common each cause is, and how likely one the records lack: log weights before any evidence.
struct Priors {
  std::vector<double> by_cause;  // 0 where nothing was seen, which is no weight
  double unseen = 0;             // -infinity when nothing was seen once
};
[[nodiscard]] Priors priors_of(const CauseCounts& seen);

// Log weight of "not in these records": its prior's, given the log of what all others weigh.
[[nodiscard]] double unseen_weight(double prior, double recorded);

// tau L_c + words words_c + scarcity scarcity_c.
[[nodiscard]] double evidence_of_cause(const CauseColumns& columns, CauseNumber cause, double tau,
                                       const RankingKnobs& knobs);

// ln of what each row weighs, of columns worked out already. Requires: some cause was seen.
struct RowWeights {
  std::vector<double> by_cause;  // -infinity where nothing was seen
  double recorded = 0;           // all causes together
  double unrecorded = 0;         // "not in these records"
  double all = 0;
};
[[nodiscard]] RowWeights row_weights(const CauseColumns& columns, const Priors& priors,
                                     const CauseCounts& seen, std::size_t items,
                                     const RankingKnobs& knobs);

// P by CauseNumber and, last, "not in these records".
[[nodiscard]] std::vector<double> probabilities_of(const RowWeights& weights);

// The items of a record or question that enter the ranking: its findings, and of the vehicle only
// the most telling attribute that is known (engine family, else model, else make; fuel only
// without them) and the mileage band, because the others say the same again.
[[nodiscard]] std::vector<EvidenceItem> ranking_items(const std::vector<EvidenceItem>& stated);

}  // namespace shoplore
