// The verb practice and its own verbs: progress, export, delete.
#include "api/cli/declared_verbs.hpp"

namespace shoplore {
namespace {

constexpr const char* kHandleAbout = "A handle that is nobody's name, as in a1";

struct Typed {
  PracticeOptions practice;
  std::string apprentice, kind = "cause", difficulty;
  std::optional<std::uint64_t> seed;
  bool json = false;
};

Result<Command> read_practice(const Typed& typed) {
  PracticeOptions options = typed.practice;
  options.output = output_of(typed.json);
  options.wish.apprentice = typed.apprentice;
  options.wish.seed = typed.seed;
  const auto refuse = [](std::string place, std::string why) {
    return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
  };
  if (options.round.empty() && typed.apprentice.empty()) {
    return refuse("--apprentice", std::string("is missing. ") + kHandleAbout);
  }
  const auto kind = enum_from_name<PracticeKind>(typed.kind);
  if (!kind) {
    return refuse("--kind",
                  "\"" + typed.kind + "\" given, expected " + expected_names<PracticeKind>());
  }
  options.wish.kind = *kind;
  if (typed.difficulty.empty()) return options;
  options.wish.difficulty = enum_from_name<Difficulty>(typed.difficulty);
  if (options.wish.difficulty) return options;
  return refuse("--difficulty",
                "\"" + typed.difficulty + "\" given, expected " + expected_names<Difficulty>());
}

template <class Options>
void declare_own(CLI::App* practice, DeclaredVerbs& verbs, const char* name, const char* about) {
  const auto options = std::make_shared<Options>();
  CLI::App* sub = verb(*practice, name, about);
  sub->add_option("--apprentice", options->apprentice, kHandleAbout)->required();
  verbs.push_back({sub, [options]() -> Result<Command> { return *options; }});
}

void declare_progress(CLI::App* practice, DeclaredVerbs& verbs) {
  const auto options = std::make_shared<PracticeProgressOptions>();
  const auto json = std::make_shared<bool>(false);
  CLI::App* sub = verb(*practice, "progress", "How far you have come, for your own eyes");
  sub->add_option("--apprentice", options->apprentice, kHandleAbout)->required();
  add_json(sub, *json);
  verbs.push_back({sub, [options, json]() -> Result<Command> {
                     PracticeProgressOptions read = *options;
                     read.output = output_of(*json);
                     return read;
                   }});
}

}  // namespace

void declare_practice(CLI::App& app, DeclaredVerbs& verbs) {
  const auto typed = std::make_shared<Typed>();
  CLI::App* practice = verb(app, "practice", "Practise on closed cases, line by line");
  // Before itself, so that of two that were typed the inner one is found.
  declare_progress(practice, verbs);
  declare_own<PracticeExportOptions>(practice, verbs, "export",
                                     "Everything kept of your practice, as JSON");
  declare_own<PracticeDeleteOptions>(practice, verbs, "delete",
                                     "Delete everything kept of your practice");
  practice->add_option("--apprentice", typed->apprentice, kHandleAbout);
  practice->add_option("--kind", typed->kind, "cause, next_check, code, vain_repair, check_trust");
  practice->add_option("--difficulty", typed->difficulty,
                       "clear, fair or hard; else by your last answers");
  practice->add_option("--seed", typed->seed, "The same seed draws the same exercise")
      ->check(CLI::Range(0, kMostSeed));
  practice->add_option("--round", typed->practice.round, "Go on with this open round");
  add_json(practice, typed->json);
  verbs.push_back({practice, [typed] { return read_practice(*typed); }});
}

}  // namespace shoplore
