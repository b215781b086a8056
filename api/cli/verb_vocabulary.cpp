#include <fmt/format.h>

#include "api/cli/print_vocabulary.hpp"
#include "api/cli/verbs.hpp"

namespace shoplore {

namespace {

constexpr std::chrono::milliseconds kPatience{10'000};

// Without its shop folder the built-in words would be shown for the shop's, and nobody would know.
Result<Vocabulary> vocabulary_of(const Session& session) {
  if (auto there = require_shop_folder(session.folder); !there) return fail(there.error());
  return Vocabulary::load(session.folder.vocabulary());
}

}  // namespace

Result<ExitCode> run(const VocabularySearchOptions& options, Session& session) {
  const auto vocabulary = vocabulary_of(session);
  if (!vocabulary) return fail(vocabulary.error());
  const auto found = vocabulary_search(*vocabulary, options.search);
  if (found.matches.empty()) {
    session.out << "No entry matches \"" << options.search.words << "\".\n";
    return ExitCode::kNothingFound;
  }
  session.out << print_matches(found, session.page);
  return ExitCode::kAnswered;
}

Result<ExitCode> run(const VocabularyShowOptions& options, Session& session) {
  const auto vocabulary = vocabulary_of(session);
  if (!vocabulary) return fail(vocabulary.error());
  const Entry* entry = vocabulary->find(options.kind, options.id);
  if (entry == nullptr) {
    const auto near = near_ids(*vocabulary, options.kind, options.id);
    return fail(ErrorCode::kNotFound, options.id,
                fmt::format("no such {}{}{}", name_of(options.kind),
                            near.empty() ? "" : "; near it: ", fmt::join(near, ", ")));
  }
  if (options.output == Output::kJson) {
    session.out << entry_line(*entry) << "\n";
    return ExitCode::kAnswered;
  }
  const auto built_in = Vocabulary::built_in();
  if (!built_in) return fail(built_in.error());
  session.out << print_entry(*entry, origin_of(*entry, *built_in), *vocabulary, session.page);
  return ExitCode::kAnswered;
}

Result<ExitCode> run(const VocabularyEditOptions& options, Session& session) {
  if (auto there = require_shop_folder(session.folder); !there) return fail(there.error());
  const auto report = edit_vocabulary(session.folder.vocabulary(), options.edit, kPatience);
  if (!report) return fail(report.error());
  session.out << print_edit(*report, session.page);
  return ExitCode::kAnswered;
}

}  // namespace shoplore
