// Verbs that ask: ask, plan, find, show, patterns.
#include "api/cli/declared_verbs.hpp"

namespace shoplore {
namespace {

void declare_ask(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    AskOptions ask;
    std::vector<std::string> words;
    FilterText filter;
    bool agreed = false, watch_out = false, json = false;
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* ask = verb(app, "ask", "What were cases like this one, and what fixed them?");
  ask->add_option("text", typed->words, "Complaint and findings as you would type them");
  ask->add_option("--case", typed->ask.case_ref, "Take the findings of this case too");
  ask->add_option("--rows", typed->ask.rows, "Likely causes shown")->check(CLI::Range(1, 50));
  ask->add_option("--similar-cases", typed->ask.similar_cases, "Similar cases shown")
      ->check(CLI::Range(0, 50));
  ask->add_option("--open", typed->ask.open, "A removal that is off already, as in plug_cover")
      ->allow_extra_args(false);
  ask->add_option("--not-possible", typed->ask.not_possible,
                  "A check that cannot be done here today")
      ->allow_extra_args(false);
  ask->add_option("--vin", typed->ask.vin, "Was this vehicle here before? Not stored");
  ask->add_option("--plate", typed->ask.plate, "Was this vehicle here before? Not stored");
  ask->add_flag("--watch-out", typed->watch_out, "Only what to watch out for, all of it");
  ask->add_flag("--agreed", typed->agreed, "The customer agreed to a repair on suspicion");
  add_filter(ask, typed->filter);
  add_json(ask, typed->json);
  verbs.push_back({ask, [typed]() -> Result<Command> {
                     auto filter = read_filter(typed->filter);
                     if (!filter) return fail(filter.error());
                     AskOptions options = typed->ask;
                     options.text = joined_words(typed->words);
                     options.filter = std::move(*filter);
                     options.output = output_of(typed->json);
                     if (typed->watch_out) options.what = AskOptions::What::kWatchOut;
                     options.agreed = typed->agreed ? AgreedToTry::kYes : AgreedToTry::kNo;
                     return options;
                   }});
}

Result<Command> read_plan(PlanOptions options, const std::vector<std::string>& words, bool json) {
  options.question.cause = joined_words(words);
  options.output = output_of(json);
  if (options.approval_file.empty()) return options;
  if (options.question.case_ref.empty()) {
    return fail(ErrorCode::kInvalidInput, "--approval",
                "needs --case: it is about one vehicle and its complaint");
  }
  if (json)
    return fail(ErrorCode::kInvalidInput, "--approval", "is a page and goes without --json");
  return options;
}

void declare_plan(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    PlanOptions plan;
    std::vector<std::string> words, open;
    bool json = false;
  };
  const auto typed = std::make_shared<Typed>();
  VehicleNaming& vehicle = typed->plan.question.vehicle;
  CLI::App* plan = verb(app, "plan", "What putting a cause right takes, and what lasts");
  plan->add_option("cause", typed->words, "component:failure, or its name in plain words")
      ->required();
  plan->add_option("--case", typed->plan.question.case_ref,
                   "Take the vehicle and findings of this case");
  plan->add_option("--vehicle", vehicle.words, "The vehicle, as in \"2016 Brackwater Tidal\"");
  plan->add_option("--make", vehicle.make, "Its make");
  plan->add_option("--engine-family", vehicle.engine_family, "Its engine family");
  plan->add_option("--open", typed->open, "A removal that is off already, as in plug_cover")
      ->allow_extra_args(false);
  plan->add_option("--approval", typed->plan.approval_file,
                   "Write the customer's approval of --case as HTML instead; - is the output");
  add_json(plan, typed->json);
  verbs.push_back({plan, [typed]() -> Result<Command> {
                     PlanOptions options = typed->plan;
                     options.question.open = {typed->open.begin(), typed->open.end()};
                     return read_plan(std::move(options), typed->words, typed->json);
                   }});
}

void declare_find(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    FindOptions find;
    std::vector<std::string> words;
    FilterText filter;
    bool json = false;
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* find = verb(app, "find", "Search past cases by their words");
  find->add_option("text", typed->words, "Words to look for");
  find->add_option("--page-size", typed->find.page_size, "Cases a page")->check(CLI::Range(1, 100));
  find->add_option("--after", typed->find.after, "Cursor of the page before");
  add_filter(find, typed->filter);
  add_json(find, typed->json);
  verbs.push_back({find, [typed]() -> Result<Command> {
                     auto filter = read_filter(typed->filter);
                     if (!filter) return fail(filter.error());
                     FindOptions options = typed->find;
                     options.text = joined_words(typed->words);
                     options.filter = std::move(*filter);
                     options.output = output_of(typed->json);
                     return options;
                   }});
}

void declare_show(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    std::string ref;
    bool history = false, json = false;
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* show = verb(app, "show", "Show a case");
  show->add_option("ref", typed->ref, "The case, as in case-7")->required();
  show->add_flag("--history", typed->history, "Every change instead of the record");
  add_json(show, typed->json);
  verbs.push_back({show, [typed]() -> Result<Command> {
                     const auto what =
                         typed->history ? ShowOptions::What::kHistory : ShowOptions::What::kRecord;
                     return ShowOptions{typed->ref, what, output_of(typed->json)};
                   }});
}

void declare_patterns(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    PatternsOptions options;
    bool all = false, json = false;
  };
  const auto typed = std::make_shared<Typed>();
  PatternsOptions& options = typed->options;
  CLI::App* sub = verb(app, "patterns", "What recurs: findings and what they turned out to be");
  sub->add_option("--engine-family", options.choice.engine_family,
                  "Within this engine family instead of everywhere");
  sub->add_option("--make", options.choice.make, "Within this make instead of everywhere");
  sub->add_option("--cause", options.choice.cause, "Only this component:failure");
  CLI::Option* limit = sub->add_option("--limit", options.limit, "Patterns of each kind shown")
                           ->check(CLI::Range(1, 1'000));
  CLI::Option* all = sub->add_flag("--all", typed->all, "Every pattern")->excludes(limit);
  CLI::Option* cases = sub->add_flag("--cases", options.cases, "Name the cases behind each");
  CLI::Option* json =
      sub->add_flag("--json", typed->json, "One JSON object instead of text")->excludes(cases);
  CLI::Option* sheet = sub->add_option("--sheet", options.sheet,
                                       "Write the surest of each engine family to this HTML file");
  for (CLI::Option* other : {limit, all, cases, json}) sheet->excludes(other);
  verbs.push_back({sub, [typed]() -> Result<Command> {
                     PatternsOptions read = typed->options;
                     if (typed->all) read.limit = 0;
                     read.output = output_of(typed->json);
                     return read;
                   }});
}

}  // namespace

void declare_questions(CLI::App& app, DeclaredVerbs& verbs) {
  declare_ask(app, verbs);
  declare_plan(app, verbs);
  declare_find(app, verbs);
  declare_show(app, verbs);
  declare_patterns(app, verbs);
}

}  // namespace shoplore
