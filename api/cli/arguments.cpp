#include "api/cli/arguments.hpp"

#include <algorithm>
#include <optional>

#include "api/cli/declared_verbs.hpp"

namespace shoplore {

namespace {

constexpr const char* kAbout =
    "Shoplore: what a workshop's own records say about a fault. Exit codes: 0 answered, 1 nothing "
    "found, 2 error.";

// The library's messages may span lines; ours are one sentence.
std::string one_line(std::string text) {
  for (char& c : text) {
    if (c == '\n') c = ' ';
  }
  while (!text.empty() && (text.back() == ' ' || text.back() == '.')) text.pop_back();
  return text;
}

// "vocabulary add"; empty when no verb was chosen.
std::string chosen_name(const CLI::App& app) {
  std::string name;
  for (auto subs = app.get_subcommands(); !subs.empty(); subs = subs.front()->get_subcommands()) {
    name += (name.empty() ? "" : " ") + subs.front()->get_name();
  }
  return name;
}

Error parse_error(const std::string& chosen, const CLI::ParseError& error) {
  // The library would only say that a subcommand is required.
  const std::string why = chosen.empty() ? "expected one of the verbs that shoplore --help lists"
                          : chosen == "vocabulary" ? "expected search, show, add, retire or alias"
                                                   : one_line(error.what());
  return {ErrorCode::kInvalidInput, "command line", why};
}

// An option given without a value would quietly be as if it were not there. Of a vocabulary entry an
// empty value clears a field.
std::optional<Error> empty_value(const CLI::App& verb) {
  if (verb.get_parent() != nullptr && verb.get_parent()->get_name() == "vocabulary") return {};
  for (const CLI::Option* option : verb.get_options()) {
    if (option->get_positional() || option->count() == 0) continue;
    for (const std::string& value : option->results()) {
      if (value.empty()) return Error{ErrorCode::kInvalidInput, option->get_name(), "is empty"};
    }
  }
  return {};
}

}  // namespace

Parsed parse_arguments(const std::vector<std::string>& arguments) {
  std::string shop;
  CLI::App app(kAbout, "shoplore");
  app.set_version_flag("--version", std::string("shoplore ") + SHOPLORE_VERSION);
  app.add_option("--shop", shop, "The shop folder (default: SHOPLORE_SHOP, else the data folder)");
  app.require_subcommand(1);
  DeclaredVerbs verbs;
  declare_questions(app, verbs);
  declare_counts(app, verbs);
  declare_recording(app, verbs);
  declare_outcomes(app, verbs);
  declare_vocabulary(app, verbs);
  declare_practice(app, verbs);
  declare_housekeeping(app, verbs);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  try {
    app.parse(reversed);
  } catch (const CLI::CallForHelp&) {
    return {chosen_name(app), Invocation{chosen_name(app), shop, HelpText{app.help()}}};
  } catch (const CLI::CallForAllHelp&) {
    return {chosen_name(app), Invocation{chosen_name(app), shop, HelpText{app.help()}}};
  } catch (const CLI::CallForVersion& version) {
    return {chosen_name(app),
            Invocation{chosen_name(app), shop, HelpText{std::string(version.what()) + "\n"}}};
  } catch (const CLI::ParseError& error) {
    return {chosen_name(app), fail(parse_error(chosen_name(app), error))};
  }
  const std::string name = chosen_name(app);
  const auto chosen = std::find_if(verbs.begin(), verbs.end(),
                                   [](const DeclaredVerb& each) { return each.app->parsed(); });
  if (auto error = empty_value(*chosen->app)) return {name, fail(std::move(*error))};
  auto command = chosen->read();
  if (!command) return {name, fail(command.error())};
  return {name, Invocation{name, shop, std::move(*command)}};
}

}  // namespace shoplore
