#include "query/ranking/fit_in_shop.hpp"

#include <numeric>

namespace shoplore {

Result<KeptKnobs> fit_in_shop(const ShopFolder& folder, const Snapshot& snapshot,
                              const Store& store, const Vocabulary& vocabulary,
                              std::uint64_t seed) {
  const auto cases = past_cases(store, vocabulary, snapshot.ledger());
  if (!cases) return fail(cases.error());
  const auto figures = work_figures(store, vocabulary);
  if (!figures) return fail(figures.error());
  if (auto kept = keep_figures(folder, *figures); !kept) return fail(kept.error());
  std::optional<Recogniser> recogniser;
  if (cases->size() >= kFewestCasesToFit) recogniser.emplace(vocabulary);
  const auto fit = fit_knobs(snapshot.ranking(), *cases, seed, recogniser ? &*recogniser : nullptr);
  if (!fit) return fail(fit.error());
  KeptKnobs kept{fit->knobs,
                 snapshot.revision(),
                 static_cast<std::int64_t>(cases->size()),
                 static_cast<std::int64_t>(fit->questions),
                 fit->log_loss,
                 fit->start_log_loss};
  if (fit->questions == 0) return kept;
  if (auto written = keep_knobs(folder, kept); !written) return fail(written.error());
  return kept;
}

Result<FitDone> fit_when_due(const ShopFolder& folder, const Snapshot& snapshot, const Store& store,
                             const Vocabulary& vocabulary) {
  // A file that cannot be read is written anew.
  const auto kept = read_knobs(folder);
  const auto closed = snapshot.ledger().by_cause({});
  if (!closed) return fail(closed.error());
  const std::int64_t cases = std::accumulate(closed->begin(), closed->end(), std::int64_t{0});
  if (!is_fit_due(kept ? *kept : std::nullopt, cases)) return FitDone::kNotDue;
  const auto fit = fit_in_shop(folder, snapshot, store, vocabulary, 1);
  if (!fit) return fail(fit.error());
  return fit->questions > 0 ? FitDone::kFitted : FitDone::kNotDue;
}

}  // namespace shoplore
