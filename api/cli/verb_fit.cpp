#include <fmt/format.h>

#include "api/cli/text_layout.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/track_record_json.hpp"
#include "query/ranking/fit_in_shop.hpp"

namespace shoplore {
namespace {

std::vector<TableRow> rows_of(const RankingKnobs& knobs) {
  const auto row = [](const char* name, double value, double start) {
    return TableRow{name, {fmt::format("{:.2f}", value), fmt::format("{:.2f}", start)}};
  };
  const RankingKnobs start;
  return {{"how much each part says (0: nothing)", {"here", "at the start"}},
          row("findings, by how much their kind tells", knobs.strength, start.strength),
          row("findings that go together", knobs.gamma, start.gamma),
          row("likeness to past cases as a whole", knobs.eta, start.eta),
          row("symptoms that a cause's cases hardly name", knobs.listing, start.listing),
          row("how little is written down of a cause", knobs.scarcity, start.scarcity),
          row("words of the complaint not understood", knobs.words, start.words),
          row("findings repeat one another", knobs.rho, start.rho),
          row("several findings say more than one by one", knobs.growth, start.growth)};
}

std::string text_of(const KeptKnobs& kept, const Page& page) {
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
             "Fitted on {} closed cases, {} of them asked as if new, each with all, half and a "
             "quarter of its evidence.\n"
             "Log loss {:.4f}, with the start values {:.4f}.\n"
             "Rates in a cause are drawn to the usual by {:g} cases; all findings together count "
             "{:.2f} times.\n",
             kept.cases, kept.questions, kept.log_loss, kept.start_log_loss, kept.knobs.smoothing,
             kept.knobs.sureness) +
         table(rows_of(kept.knobs), 0, page.width);
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
  session.out << (options.output == Output::kJson ? fit_json(*kept) + "\n"
                                                  : text_of(*kept, session.page));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
