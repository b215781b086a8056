#include <fmt/format.h>

#include "api/cli/verbs.hpp"
#include "api/wire/track_record_json.hpp"
#include "query/ranking/fit_in_shop.hpp"

namespace shoplore {
namespace {

std::string text_of(const KeptKnobs& kept) {
  if (kept.questions == 0 && kept.cases >= static_cast<std::int64_t>(kFewestCasesToFit)) {
    return fmt::format(
        "{} closed cases, no cause seen twice: nothing to fit on. The start values "
        "stand.\n",
        kept.cases);
  }
  if (kept.questions == 0) {
    return fmt::format(
        "{} closed cases: too few to fit, from {} on the ranking is fitted. The start values "
        "stand.\n",
        kept.cases, kFewestCasesToFit);
  }
  return fmt::format(
      "Fitted on {} closed cases, {} of them asked as if new, each with all, half and a quarter of "
      "its evidence.\n"
      "Log loss {:.4f}, with the start values {:.4f}.\n"
      "Smoothing {:g} cases, repetition {:.3f}, pairs {:.2f}, likeness "
      "{:.2f}, growth {:.2f}, strength {:.2f}, listing {:.2f}, words {:.2f}, scarcity {:.2f}, "
      "sureness {:.2f}.\n",
      kept.cases, kept.questions, kept.log_loss, kept.start_log_loss, kept.knobs.smoothing,
      kept.knobs.rho, kept.knobs.gamma, kept.knobs.eta, kept.knobs.growth, kept.knobs.strength,
      kept.knobs.listing, kept.knobs.words, kept.knobs.scarcity, kept.knobs.sureness);
}

}  // namespace

Result<ExitCode> run(const FitOptions& options, Session& session) {
  auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto snapshot = Snapshot::open(session.folder);
  if (!snapshot) return fail(snapshot.error());
  const auto kept = fit_in_shop(session.folder, **snapshot, records->store(), records->vocabulary(),
                                options.seed);
  if (!kept) return fail(kept.error());
  session.out << (options.output == Output::kJson ? fit_json(*kept) + "\n" : text_of(*kept));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
