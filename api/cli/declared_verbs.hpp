// Verbs as the command line declares them: each brings its options and how to read them.
//
// A group of verbs shares a source because the library behind them takes seconds to compile. What
// was typed lives in a value that the readers share with the options, so nothing here is global.
// Reading happens after the whole line was parsed; errors are ours: kInvalidInput whose place is
// the option or "command line". Only sources that include CLI11 include this.
#pragma once

#include <CLI/CLI.hpp>

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "api/cli/arguments.hpp"

namespace shoplore {

// A verb that can be chosen, with what makes its options a command.
struct DeclaredVerb {
  CLI::App* app = nullptr;
  std::function<Result<Command>()> read;
};
using DeclaredVerbs = std::vector<DeclaredVerb>;

void declare_questions(CLI::App& app, DeclaredVerbs& verbs);     // ask, plan, find, show ...
void declare_counts(CLI::App& app, DeclaredVerbs& verbs);        // mileage, lately
void declare_recording(CLI::App& app, DeclaredVerbs& verbs);     // init, add, import, export
void declare_outcomes(CLI::App& app, DeclaredVerbs& verbs);      // outcomes
void declare_vocabulary(CLI::App& app, DeclaredVerbs& verbs);    // vocabulary and its own verbs
void declare_practice(CLI::App& app, DeclaredVerbs& verbs);      // practice and its own verbs
void declare_housekeeping(CLI::App& app, DeclaredVerbs& verbs);  // verify, reindex, fit, serve ...

// A verb of `app` after which --shop may still stand.
CLI::App* verb(CLI::App& app, const std::string& name, const std::string& about);

// Options of a filter as typed; read after parsing so that errors are ours.
struct FilterText {
  std::string make, engine_family, mileage, year, closed_since, proof;
};
void add_filter(CLI::App* sub, FilterText& text);
[[nodiscard]] Result<Filter> read_filter(const FilterText& text);

// What a --seed may be at most: more of them than anybody tries.
inline constexpr int kMostSeed = 1'000'000'000;

// --json; read with output_of after parsing.
void add_json(CLI::App* sub, bool& json);
[[nodiscard]] Output output_of(bool json);

// With single spaces between.
[[nodiscard]] std::string joined_words(const std::vector<std::string>& words);

}  // namespace shoplore
