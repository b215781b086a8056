// The ranking of one set of records, ready to be asked: strengths, pair weights and knobs.
//
// Lifetime: refers to the counter. Threads: any number may rank at once.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "query/ranking/likely_causes.hpp"

namespace shoplore {

class RankingModel {
 public:
  // Works strengths and findings held out from the records.
  [[nodiscard]] static Result<RankingModel> of(const CaseCounter& counter,
                                               const RankingKnobs& knobs);

  // With both given.
  RankingModel(const CaseCounter& counter, ItemStrengths strengths, FindingsHeld findings,
               const RankingKnobs& knobs);

  [[nodiscard]] Result<Ranking> rank(const std::vector<EvidenceItem>& items, const Filter& filter,
                                     const std::optional<LeftOut>& left_out = {}) const;

  [[nodiscard]] Result<QuestionCounts> count(const std::vector<EvidenceItem>& items,
                                             const Filter& filter,
                                             const std::optional<LeftOut>& left_out = {}) const;

  // Only the probabilities, by CauseNumber, "not in these records" last: what scoring needs.
  [[nodiscard]] Result<std::vector<double>> probabilities(
      const std::vector<EvidenceItem>& items, const Filter& filter,
      const std::optional<LeftOut>& left_out = {}) const;

  [[nodiscard]] const RankingKnobs& knobs() const { return knobs_; }
  void set_knobs(const RankingKnobs& knobs) { knobs_ = knobs; }

 private:
  [[nodiscard]] RankingBasis basis() const { return {*counter_, strengths_, findings_, *pairs_}; }

  const CaseCounter* counter_;
  ItemStrengths strengths_;
  FindingsHeld findings_;
  std::unique_ptr<PairWeights> pairs_;  // holds a lock, so that it cannot be moved itself
  RankingKnobs knobs_;
};

}  // namespace shoplore
