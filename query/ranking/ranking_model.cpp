#include "query/ranking/ranking_model.hpp"

namespace shoplore {

Result<RankingModel> RankingModel::of(const CaseCounter& counter, const RankingKnobs& knobs) {
  const auto attributes = attribute_counts(counter);
  if (!attributes) return fail(attributes.error());
  const auto seen = counter.by_cause({});
  if (!seen) return fail(seen.error());
  return RankingModel(counter, {*attributes, *seen}, {*attributes, *seen}, knobs);
}

RankingModel::RankingModel(const CaseCounter& counter, ItemStrengths strengths,
                           FindingsHeld findings, const RankingKnobs& knobs)
    : counter_(&counter),
      strengths_(std::move(strengths)),
      findings_(std::move(findings)),
      pairs_(std::make_unique<PairWeights>(counter)),
      knobs_(knobs) {}

Result<Ranking> RankingModel::rank(const std::vector<EvidenceItem>& items, const Filter& filter,
                                   const std::optional<LeftOut>& left_out) const {
  return rank_causes(items, filter, basis(), knobs_, left_out);
}

Result<QuestionCounts> RankingModel::count(const std::vector<EvidenceItem>& items,
                                           const Filter& filter,
                                           const std::optional<LeftOut>& left_out) const {
  return count_question(items, filter, basis(), left_out);
}

Result<std::vector<double>> RankingModel::probabilities(
    const std::vector<EvidenceItem>& items, const Filter& filter,
    const std::optional<LeftOut>& left_out) const {
  const auto counts = count(items, filter, left_out);
  if (!counts) return fail(counts.error());
  const CauseColumns columns = columns_of(*counts, knobs_.smoothing);
  return probabilities_of(
      row_weights(columns, priors_of(counts->seen), counts->seen, counts->items.size(), knobs_));
}

}  // namespace shoplore
