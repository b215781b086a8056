#include <algorithm>
#include <array>

#include "api/cli/output_file.hpp"
#include "api/cli/print_patterns.hpp"
#include "api/cli/verbs.hpp"
#include "api/cli/wall_sheet.hpp"
#include "api/wire/patterns_json.hpp"

namespace shoplore {
namespace {

// The first `limit` of each kind; 0: all.
std::vector<Pattern> first_of_each_kind(const std::vector<Pattern>& patterns, std::size_t limit) {
  std::array<std::size_t, kEnumNames<PatternKind>.size()> taken{};
  std::vector<Pattern> first;
  for (const Pattern& each : patterns) {
    if (limit == 0 || taken[static_cast<std::size_t>(each.kind)]++ < limit) first.push_back(each);
  }
  return first;
}

Result<ExitCode> write_sheet(const PatternBook& book, const PatternsOptions& options,
                             const Ledger& ledger, const Vocabulary& vocabulary, Session& session) {
  const auto sheet = wall_sheet(book, options.choice, ledger, vocabulary, today());
  if (!sheet) return fail(sheet.error());
  if (sheet->lines == 0) {
    session.err << "shoplore patterns: nothing sure enough for a wall sheet; none written\n";
    return ExitCode::kNothingFound;
  }
  const auto written = write_output(options.sheet, [&](std::ostream& out) -> Result<void> {
    out << sheet->html;
    return {};
  });
  if (!written) return fail(written.error());
  session.out << sheet->lines << " patterns of " << sheet->families
              << " engine families written to " << options.sheet << "\n";
  return ExitCode::kAnswered;
}

// Places as they are typed.
Error as_option(Error error) {
  if (error.place == "make") error.place = "--make";
  if (error.place == "engine_family") error.place = "--engine-family";
  if (error.place == "cause") error.place = "--cause";
  return error;
}

}  // namespace

Result<ExitCode> run(const PatternsOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto snapshot = Snapshot::open(session.folder);
  if (!snapshot) return fail(snapshot.error());
  const Ledger& ledger = (*snapshot)->ledger();
  const Vocabulary& vocabulary = records->vocabulary();
  const auto book = PatternBook::mine(ledger, vocabulary);
  if (!book) return fail(book.error());
  const auto list = book->choose(options.choice, ledger, vocabulary);
  if (!list) return fail(as_option(list.error()));
  const bool as_json = options.output == Output::kJson;
  if (!book->is_mined() && !as_json) {
    session.out << print_too_few_for_patterns(*book, session.page);
    return ExitCode::kNothingFound;
  }
  if (!options.sheet.empty()) return write_sheet(*book, options, ledger, vocabulary, session);
  const auto shown =
      opened(first_of_each_kind(list->patterns, options.limit), ledger, records->store());
  if (!shown) return fail(shown.error());
  session.out << (as_json ? patterns_json(*book, *list, *shown, "", vocabulary) + "\n"
                          : print_patterns(*book, *list, *shown,
                                           options.cases ? ShowCases::kYes : ShowCases::kNo,
                                           vocabulary, session.page));
  return shown->empty() ? ExitCode::kNothingFound : ExitCode::kAnswered;
}

}  // namespace shoplore
