#include "api/cli/print_similar.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/answer_json.hpp"
#include "indexer/text.hpp"

namespace shoplore {

Result<ExitCode> run(const FindOptions& options, Session& session) {
  if (words_of(options.text).empty()) {
    return fail(ErrorCode::kInvalidInput, "question", "is empty: a search needs words");
  }
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const SearchQuestion question{options.text, options.filter, options.page_size, options.after};
  const auto found = on_snapshot(session.folder, [&](const Snapshot& snapshot) {
    return find_similar(question, snapshot, records->store(), records->vocabulary(),
                        records->recogniser());
  });
  if (!found) return fail(found.error());
  session.out << (options.output == Output::kJson
                      ? search_page_json(*found) + "\n"
                      : print_search_page(*found, records->vocabulary(), session.page));
  return found->matches == 0 ? ExitCode::kNothingFound : ExitCode::kAnswered;
}

}  // namespace shoplore
