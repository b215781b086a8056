#include <algorithm>

#include "api/cli/output_file.hpp"
#include "api/cli/print_lately.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/lately_json.hpp"
#include "api/wire/lately_plot.hpp"
#include "api/wire/svg_plot.hpp"

namespace shoplore {
namespace {

// A picture a row gets long: the first say most.
constexpr std::size_t kMostPictures = 12;

// Places as the command line knows them.
Error as_option(Error error) {
  std::replace(error.place.begin(), error.place.end(), ' ', '-');
  error.place = "--" + error.place;
  return error;
}

Result<Lately> seen(const LatelyOptions& options, const Session& session) {
  return on_snapshot(session.folder, [&](const Snapshot& snapshot) -> Result<Lately> {
    const auto counts = monthly_counts(snapshot.ledger(), options.as_of.value_or(today()));
    if (!counts) return fail(counts.error());
    return seen_by(options.view, lately(*counts));
  });
}

Result<void> write_pictures(const std::string& file, const Lately& seen,
                            const Vocabulary& vocabulary) {
  std::vector<Plot> plots;
  for (const LatelyRow& row : seen.rows) {
    if (plots.size() == kMostPictures) break;
    plots.push_back(lately_plot(row, seen.last, vocabulary));
  }
  if (plots.empty()) {
    plots.emplace_back();
    plots.back().title = "Seen more lately";
    plots.back().note = "Nothing stands out.";
  }
  return write_output(file, svg_of(plots));
}

}  // namespace

Result<ExitCode> run(const LatelyOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto answer = seen(options, session);
  if (!answer) {
    const bool about_options = answer.error().code == ErrorCode::kInvalidInput;
    return fail(about_options ? as_option(answer.error()) : answer.error());
  }
  if (!options.svg_file.empty()) {
    const auto written = write_pictures(options.svg_file, *answer, records->vocabulary());
    if (!written) return fail(written.error());
  }
  session.out << (options.output == Output::kJson
                      ? lately_json(*answer) + "\n"
                      : print_lately(*answer, options.view, records->vocabulary(), session.page));
  const bool nothing = answer->rows.empty() && answer->pairings.empty();
  return nothing ? ExitCode::kNothingFound : ExitCode::kAnswered;
}

}  // namespace shoplore
