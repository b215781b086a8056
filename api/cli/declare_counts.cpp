// Verbs that count over all records: mileage, lately.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "api/cli/declared_verbs.hpp"
#include "api/cli/option_values.hpp"

namespace shoplore {
namespace {

void declare_mileage(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    MileageOptions options;
    std::vector<std::string> words;
    bool json = false;
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* mileage = verb(app, "mileage", "At what mileage does a failure come?");
  mileage
      ->add_option("cause", typed->words,
                   "The failure: wastegate linkage seized open, or component:failure")
      ->required();
  mileage->add_option("--make", typed->options.make, "Only vehicles of this make");
  mileage->add_option("--engine-family", typed->options.engine_family,
                      "Only vehicles of this engine family");
  mileage->add_option("--svg", typed->options.svg_file,
                      "Write the curve as a picture to this file");
  add_json(mileage, typed->json);
  verbs.push_back({mileage, [typed]() -> Result<Command> {
                     MileageOptions options = typed->options;
                     options.cause = joined_words(typed->words);
                     options.output = output_of(typed->json);
                     return options;
                   }});
}

// "--months 5" names the months there are.
Result<std::optional<std::size_t>> read_months(const std::string& text) {
  if (text.empty()) return std::optional<std::size_t>();
  std::size_t months = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), months);
  const bool whole = error == std::errc() && end == text.data() + text.size();
  if (!whole ||
      std::find(kLatelyMonths.begin(), kLatelyMonths.end(), months) == kLatelyMonths.end()) {
    return fail(ErrorCode::kInvalidInput, "--months",
                fmt::format("\"{}\" given, expected 3, 6 or 12", text));
  }
  return std::optional(months);
}

struct TypedLately {
  LatelyOptions options;
  std::string months, as_of;
  bool falling = false, all = false, json = false;
};

Result<Command> read_lately_options(const TypedLately& typed) {
  LatelyOptions options = typed.options;
  const auto months = read_months(typed.months);
  if (!months) return fail(months.error());
  options.view.months = *months;
  if (typed.falling && typed.all) {
    return fail(ErrorCode::kInvalidInput, "--falling", "has no meaning beside --all");
  }
  options.view.rows = typed.falling ? LatelyRows::kFallen
                      : typed.all   ? LatelyRows::kAll
                                    : LatelyRows::kRisen;
  if (!typed.as_of.empty()) {
    const auto day = parse_day(typed.as_of, "--as-of");
    if (!day) return fail(day.error());
    options.as_of = *day;
  }
  options.output = output_of(typed.json);
  return options;
}

void declare_lately(CLI::App& app, DeclaredVerbs& verbs) {
  const auto typed = std::make_shared<TypedLately>();
  CLI::App* lately = verb(app, "lately", "What fails more often lately than it did?");
  lately->add_option("--months", typed->months, "Judged by the last 3, 6 or 12 months alone");
  lately->add_option("--engine-family", typed->options.view.engine_family,
                     "Only failures on this engine family");
  lately->add_flag("--falling", typed->falling, "What fails less often, instead");
  lately->add_flag("--all", typed->all, "Everything compared, changed or not");
  lately->add_option("--svg", typed->options.svg_file, "Write bar charts to this file");
  lately->add_option("--as-of", typed->as_of, "As it was on that day, as in 2026-03-31");
  add_json(lately, typed->json);
  verbs.push_back({lately, [typed] { return read_lately_options(*typed); }});
}

}  // namespace

void declare_counts(CLI::App& app, DeclaredVerbs& verbs) {
  declare_mileage(app, verbs);
  declare_lately(app, verbs);
}

}  // namespace shoplore
