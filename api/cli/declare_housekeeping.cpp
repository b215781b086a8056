// Verbs that look after the records: verify, reindex, track-record, fit, serve.
#include "api/cli/declared_verbs.hpp"

namespace shoplore {
namespace {

template <class Options>
void declare_plain(CLI::App& app, DeclaredVerbs& verbs, const char* name, const char* about) {
  const auto json = std::make_shared<bool>(false);
  CLI::App* sub = verb(app, name, about);
  add_json(sub, *json);
  verbs.push_back({sub, [json]() -> Result<Command> { return Options{output_of(*json)}; }});
}

void declare_track_record(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    TrackRecordVerbOptions options;
    bool json = false;
  };
  const auto typed = std::make_shared<Typed>();
  TrackRecordVerbOptions& options = typed->options;
  CLI::App* record = verb(app, "track-record", "How good these records are at telling causes");
  CLI::Option* folds = record
                           ->add_option("--folds", options.folds,
                                        "Hold out a share at a time instead of one case; 2 to 20")
                           ->check(CLI::Range(2, 20));
  CLI::Option* seed =
      record->add_option("--seed", options.seed, "Of what is hidden, and of the shares")
          ->check(CLI::Range(0, kMostSeed));
  record->add_flag("--checks", options.checks, "How far each check can be trusted instead")
      ->excludes(folds)
      ->excludes(seed);
  add_json(record, typed->json);
  verbs.push_back({record, [typed]() -> Result<Command> {
                     TrackRecordVerbOptions read = typed->options;
                     read.output = output_of(typed->json);
                     return read;
                   }});
}

void declare_fit(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    FitOptions options;
    bool json = false;
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* sub = verb(app, "fit", "Fit the ranking to these records");
  sub->add_option("--seed", typed->options.seed, "Of the cases asked and what is hidden")
      ->check(CLI::Range(0, kMostSeed));
  add_json(sub, typed->json);
  verbs.push_back({sub, [typed]() -> Result<Command> {
                     return FitOptions{typed->options.seed, output_of(typed->json)};
                   }});
}

void declare_serve(CLI::App& app, DeclaredVerbs& verbs) {
  const auto options = std::make_shared<ServeOptions>();
  CLI::App* serve = verb(app, "serve", "Answer over HTTP on this machine");
  serve->add_option("--host", options->host, "Loopback address to listen on");
  serve->add_option("--port", options->port, "0 takes any free one")->check(CLI::Range(0, 65535));
  verbs.push_back({serve, [options]() -> Result<Command> { return *options; }});
}

}  // namespace

void declare_housekeeping(CLI::App& app, DeclaredVerbs& verbs) {
  declare_plain<VerifyOptions>(app, verbs, "verify", "Check records and index against each other");
  declare_plain<ReindexOptions>(app, verbs, "reindex", "Build the index anew from the records");
  declare_track_record(app, verbs);
  declare_fit(app, verbs);
  declare_serve(app, verbs);
}

}  // namespace shoplore
