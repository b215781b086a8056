#include <fmt/format.h>

#include <cmath>

#include "api/cli/practice_line.hpp"
#include "api/cli/print_practice.hpp"
#include "api/cli/print_progress.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/practice_json.hpp"

namespace shoplore {
namespace {

// Names shown of those that fit.
constexpr std::size_t kNamesShown = 20;

// One person at a terminal, a round after the other. What is wrong with a line is said, and the
// next line is read.
class Playing {
 public:
  Playing(const PracticeOptions& options, const PracticeDesk& desk, const Vocabulary& vocabulary,
          Session& session)
      : options_(options), desk_(desk), vocabulary_(vocabulary), session_(session) {}

  Result<ExitCode> play() {
    auto begun = options_.round.empty() ? begin() : take_up(desk_.read(options_.round));
    if (!begun) return fail(begun.error());
    if (options_.output == Output::kText) {
      session_.out << print_practice_help(round_.kind, session_.page) << std::flush;
    }
    for (std::string line; std::getline(session_.in, line);) {
      if (line.find_first_not_of(" \t\r") == line.npos) continue;
      const auto read = parse_practice_line(line);
      if (read && read->kind == PracticeLine::Kind::kStop) break;
      if (const auto done = read ? take(*read) : Result<void>(fail(read.error())); !done) {
        complain(done.error());
      }
      session_.out << std::flush;
    }
    if (round_.open == YesNo::kYes) left_open();
    return committed_ > 0 ? ExitCode::kAnswered : ExitCode::kNothingFound;
  }

 private:
  using Kind = PracticeLine::Kind;

  void complain(const Error& error) {
    session_.err << hang("  ", error.message, session_.page.width);
    for (const Problem& each : error.problems) {
      session_.err << hang("    ", each.expected, session_.page.width);
    }
    session_.err << std::flush;
  }

  Result<void> begin() { return take_up(desk_.start(options_.wish)); }

  Result<void> take_up(Result<RoundView> round) {
    if (!round) return fail(round.error());
    round_ = std::move(*round);
    say(round_json(round_, vocabulary_), print_round(round_, vocabulary_, session_.page));
    return {};
  }

  void say(const std::string& json, const std::string& text) {
    session_.out << (options_.output == Output::kJson ? json + "\n" : text);
  }

  Result<void> stepped(Result<RoundView> round) {
    if (!round) return fail(round.error());
    round_ = std::move(*round);
    say(round_json(round_, vocabulary_), print_last_step(round_, vocabulary_, session_.page));
    return {};
  }

  Result<void> take(const PracticeLine& line) {
    switch (line.kind) {
      case Kind::kBelief:
        return stepped(desk_.believe(round_.id, line.beliefs));
      case Kind::kNumber:
        return commit_number(line.number);
      case Kind::kCheck:
        return stepped(desk_.check(round_.id, line.words));
      case Kind::kCommit:
        return commit({line.words, {}, {}});
      case Kind::kCauses:
        return list_causes(line.words);
      case Kind::kChecks:
        list(desk_.checks_like(line.words));
        return {};
      case Kind::kShow:
        say(round_json(round_, vocabulary_), print_round(round_, vocabulary_, session_.page));
        return {};
      case Kind::kNext:
        if (round_.open == YesNo::kYes) {
          return fail(ErrorCode::kConflict, round_.id, "commit first, or stop and leave it open");
        }
        return begin();
      default:
        session_.out << print_practice_help(round_.kind, session_.page);
        return {};
    }
  }

  // A bare number is a choice or a percentage, as the round asks.
  Result<void> commit_number(double number) {
    if (round_.kind == PracticeKind::kCause) {
      return fail(ErrorCode::kInvalidInput, "line",
                  "expected a cause after the percentage, as in: 60 wastegate linkage seized open");
    }
    if (round_.kind == PracticeKind::kCheckTrust) return commit({"", {}, number});
    constexpr double kMostChoices = 1'000;  // none of the choices beyond, whatever was typed
    const bool is_whole = number >= 1 && number <= kMostChoices && number == std::floor(number);
    return commit({"", is_whole ? static_cast<int>(number) : 0, {}});
  }

  Result<void> commit(const Commitment& commitment) {
    auto committed = desk_.commit(round_.id, commitment);
    if (!committed) return fail(committed.error());
    ++committed_;
    round_ = committed->round;
    say(committed_json(*committed, vocabulary_),
        print_feedback(*committed, vocabulary_, session_.page) +
            "  next for another, stop to end\n");
    return {};
  }

  void list(std::vector<std::string> names) {
    if (names.empty()) names.emplace_back("nothing fits; fewer or other words may");
    const std::size_t shown = std::min(names.size(), kNamesShown);
    for (std::size_t i = 0; i < shown; ++i) {
      session_.out << hang("  ", names[i], session_.page.width);
    }
    if (names.size() > shown) {
      session_.out << fmt::format("  and {} more; say a word of it\n", names.size() - shown);
    }
  }

  Result<void> list_causes(const std::string& words) {
    auto names = desk_.causes_like(words);
    if (!names) return fail(names.error());
    list(std::move(*names));
    return {};
  }

  void left_open() {
    session_.err << hang("",
                         fmt::format("{} stays open for {} days; go on with --round {}", round_.id,
                                     kRoundDays, round_.id),
                         session_.page.width);
  }

  const PracticeOptions& options_;
  const PracticeDesk& desk_;
  const Vocabulary& vocabulary_;
  Session& session_;
  RoundView round_;
  int committed_ = 0;
};

}  // namespace

Result<ExitCode> run(const PracticeOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto snapshot = Snapshot::open(session.folder);
  if (!snapshot) return fail(snapshot.error());
  const PracticeDesk desk(session.folder, {**snapshot, records->store(), records->vocabulary()});
  auto played = Playing(options, desk, records->vocabulary(), session).play();
  const bool nothing_to_ask =
      !played && played.error().code == ErrorCode::kNotFound && played.error().place == "records";
  if (!nothing_to_ask) return played;
  session.out << hang("", "Nothing to practise: " + played.error().message + ".",
                      session.page.width);
  return ExitCode::kNothingFound;
}

Result<ExitCode> run(const PracticeProgressOptions& options, Session& session) {
  const auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto record = read_apprentice(session.folder, options.apprentice);
  if (!record) return fail(record.error());
  const PracticeProgress progress = progress_of(*record);
  session.out << (options.output == Output::kJson
                      ? progress_json(progress, records->vocabulary()) + "\n"
                      : print_progress(progress, records->vocabulary(), session.page));
  return progress.kinds.empty() ? ExitCode::kNothingFound : ExitCode::kAnswered;
}

Result<ExitCode> run(const PracticeExportOptions& options, Session& session) {
  const auto record = read_apprentice(session.folder, options.apprentice);
  if (!record) return fail(record.error());
  session.out << exported_json(*record) << "\n";
  return ExitCode::kAnswered;
}

Result<ExitCode> run(const PracticeDeleteOptions& options, Session& session) {
  const auto forgotten = forget_apprentice(session.folder, options.apprentice);
  if (!forgotten) return fail(forgotten.error());
  session.out << "Everything kept of " << options.apprentice << " is deleted.\n";
  return ExitCode::kAnswered;
}

}  // namespace shoplore
