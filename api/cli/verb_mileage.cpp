#include "api/cli/output_file.hpp"
#include "api/cli/print_mileage.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/mileage_json.hpp"
#include "api/wire/mileage_plot.hpp"
#include "api/wire/svg_plot.hpp"
#include "query/cause_words.hpp"

namespace shoplore {

Result<ExitCode> run(const MileageOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto snapshot = Snapshot::open(session.folder);
  if (!snapshot) return fail(snapshot.error());
  const Vocabulary& vocabulary = records->vocabulary();
  const auto cause =
      cause_from_words(options.cause, options.cause, vocabulary, (*snapshot)->ledger());
  if (!cause) return fail(cause.error());
  const auto histories = vehicle_histories(records->store(), vocabulary);
  if (!histories) return fail(histories.error());
  const auto answer =
      failure_mileage(*histories, {cause->key, {options.make, options.engine_family}});
  if (!answer) return fail(answer.error());
  if (!options.svg_file.empty()) {
    const auto written = write_output(options.svg_file, svg_of(mileage_plot(*answer, vocabulary)));
    if (!written) return fail(written.error());
  }
  session.out << (options.output == Output::kJson
                      ? mileage_json(*answer) + "\n"
                      : print_mileage(*answer, vocabulary, session.page));
  return answer->cases.cases > 0 ? ExitCode::kAnswered : ExitCode::kNothingFound;
}

}  // namespace shoplore
