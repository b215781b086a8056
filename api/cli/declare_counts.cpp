// Verbs that count over all records: mileage.
#include "api/cli/declared_verbs.hpp"

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

}  // namespace

void declare_counts(CLI::App& app, DeclaredVerbs& verbs) {
  declare_mileage(app, verbs);
}

}  // namespace shoplore
