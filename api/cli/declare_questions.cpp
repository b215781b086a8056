// Verbs that ask: ask, find, show.
#include "api/cli/declared_verbs.hpp"

namespace shoplore {
namespace {

void declare_ask(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    AskOptions ask;
    std::vector<std::string> words;
    FilterText filter;
    bool agreed = false, json = false;
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
                     options.agreed = typed->agreed ? AgreedToTry::kYes : AgreedToTry::kNo;
                     return options;
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

}  // namespace

void declare_questions(CLI::App& app, DeclaredVerbs& verbs) {
  declare_ask(app, verbs);
  declare_find(app, verbs);
  declare_show(app, verbs);
}

}  // namespace shoplore
