// The only source that includes CLI11: it costs seconds to compile.
#include "api/cli/arguments.hpp"

#include <CLI/CLI.hpp>

#include <limits>

#include "api/cli/option_values.hpp"

namespace shoplore {

namespace {

constexpr const char* kAbout =
    "Shoplore: what a workshop's own records say about a fault. Exit codes: 0 answered, 1 nothing "
    "found, 2 error.";

// Options of a filter as typed; read after parsing so that errors are ours.
struct FilterText {
  std::string make, engine_family, mileage, year, closed_since, proof;
};

// Everything the command line can hold.
struct Raw {
  std::string shop;
  std::vector<std::string> words;
  FilterText filter;
  bool json = false, history = false;
  std::int64_t if_revision = -1, restore = -1;
  AddOptions add;
  ShowOptions show;
  FindOptions find;
  AskOptions ask;
  std::string file = "-";
  std::string kind, reason, to;  // of vocabulary
  bool all = false, undo = false;
  EntryEdit edit;
  ServeOptions serve;
  TrackRecordVerbOptions track_record;
  FitOptions fit;
  bool agreed = false;
};

std::string joined_words(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += ' ';
    text += word;
  }
  return text;
}

CLI::App* verb(CLI::App& app, const std::string& name, const std::string& about) {
  CLI::App* sub = app.add_subcommand(name, about);
  sub->fallthrough();  // --shop may stand after the verb
  return sub;
}

void add_filter(CLI::App* sub, Raw& raw) {
  FilterText& f = raw.filter;
  sub->add_option("--make", f.make, "Only cases of this make");
  sub->add_option("--engine-family", f.engine_family, "Only cases of this engine family");
  sub->add_option("--mileage", f.mileage, "LOW..HIGH km: from LOW to below HIGH");
  sub->add_option("--year", f.year, "LOW..HIGH model years, both included");
  sub->add_option("--closed-since", f.closed_since, "Only cases closed that day or later");
  sub->add_option("--proof", f.proof, "Only causes so proved: seen,measured,cured_by_fix,presumed");
}

void add_json(CLI::App* sub, Raw& raw) {
  sub->add_flag("--json", raw.json, "One JSON object instead of text");
}

void add_questions(CLI::App& app, Raw& raw) {
  CLI::App* ask = verb(app, "ask", "What were cases like this one, and what fixed them?");
  ask->add_option("text", raw.words, "Complaint and findings as you would type them");
  ask->add_option("--case", raw.ask.case_ref, "Take the findings of this case too");
  ask->add_option("--rows", raw.ask.rows, "Likely causes shown")->check(CLI::Range(1, 50));
  ask->add_option("--similar-cases", raw.ask.similar_cases, "Similar cases shown")
      ->check(CLI::Range(0, 50));
  ask->add_option("--open", raw.ask.open, "A removal that is off already, as in plug_cover")
      ->allow_extra_args(false);
  ask->add_option("--not-possible", raw.ask.not_possible, "A check that cannot be done here today")
      ->allow_extra_args(false);
  ask->add_flag("--agreed", raw.agreed, "The customer agreed to a repair on suspicion");
  add_filter(ask, raw);
  add_json(ask, raw);

  CLI::App* find = verb(app, "find", "Search past cases by their words");
  find->add_option("text", raw.words, "Words to look for");
  find->add_option("--page-size", raw.find.page_size, "Cases a page")->check(CLI::Range(1, 100));
  find->add_option("--after", raw.find.after, "Cursor of the page before");
  add_filter(find, raw);
  add_json(find, raw);

  CLI::App* show = verb(app, "show", "Show a case");
  show->add_option("ref", raw.show.ref, "The case, as in case-7")->required();
  show->add_flag("--history", raw.history, "Every change instead of the record");
  add_json(show, raw);
}

void add_recording(CLI::App& app, Raw& raw) {
  verb(app, "init", "Make a new shop folder");
  CLI::App* add = verb(app, "add", "Record a case, or change one");
  add->add_option("text", raw.words, "Complaint or findings as you would type them");
  add->add_option("--json", raw.add.json_file,
                  "FILE or - with a case, or with --to a merge patch (RFC 7396)");
  add->add_option("--to", raw.add.to, "Change this case instead of making one");
  add->add_option("--vin", raw.add.vin, "Gives the vehicle its pseudonym; not stored");
  add->add_option("--plate", raw.add.plate, "Likewise");
  add->add_option("--customer", raw.add.customer, "Name to remove from the texts; not stored");
  add->add_option("--job-number", raw.add.job_number, "The workshop's own number");
  add->add_option("--if-revision", raw.if_revision, "With --to: only if it is still that revision")
      ->check(CLI::NonNegativeNumber);
  add->add_option("--restore", raw.restore, "With --to: put it back as it was at that revision")
      ->check(CLI::PositiveNumber);

  CLI::App* import = verb(app, "import", "Record cases from JSON Lines");
  import->add_option("file", raw.file, "FILE or - for standard input");
  add_json(import, raw);
  CLI::App* export_verb = verb(app, "export", "Write every case as JSON Lines");
  export_verb->add_option("file", raw.file, "FILE or - for standard output");
}

void add_entry(CLI::App* sub, Raw& raw) {
  sub->add_option("kind", raw.kind, "The kind of entry, as in symptom")->required();
  sub->add_option("id", raw.edit.id, "The entry's id, as in lack_of_power")->required();
}

void add_entry_fields(CLI::App* add, EntryEdit& edit) {
  const auto list = [add](const char* name, std::vector<std::string>& values, const char* about) {
    add->add_option(name, values, about)->allow_extra_args(false);
  };
  add->add_option("--name", edit.name, "What people read; a new entry needs one");
  list("--phrase", edit.phrases, "Another way it is typed, lower case; may be repeated");
  list("--contrary", edit.contraries, "Of a symptom: a phrase that denies it; may be repeated");
  list("--drop", edit.dropped, "Take this out of phrases, removals, components ...");
  add->add_option("--minutes", edit.minutes, "Of a check, removal or verification");
  add->add_option("--unit", edit.unit, "Of a check's reading");
  add->add_option("--low", edit.low, "Of the range a check's reading is expected in");
  add->add_option("--high", edit.high, "Likewise");
  add->add_option("--where", edit.where, "Where a check looks or measures");
  add->add_option("--how", edit.how, "How to do it safely; of a caution its text");
  add->add_option("--source", edit.source, "Where a value comes from");
  list("--caution", edit.cautions, "Id of a caution; may be repeated, as may all below");
  list("--removal", edit.removals, "Id of a removal that a check needs first");
  list("--component", edit.components, "Id of a component it tells about");
  list("--condition", edit.conditions, "Id of a condition that a check needs");
  add->add_option("--expands-to", edit.expands_to, "What a shorthand stands for");
  add->add_option("--make", edit.make, "Of a vehicle model");
  list("--engine-family", edit.engine_families, "Of a vehicle model");
}

void add_vocabulary(CLI::App& app, Raw& raw) {
  CLI::App* words = verb(app, "vocabulary", "Look up and change the words that are understood");
  words->require_subcommand(1);
  CLI::App* search = verb(*words, "search", "Find entries by id, name or phrase");
  search->add_option("words", raw.words, "Words, or the beginnings of words");
  search->add_option("--kind", raw.kind, "Only this kind of entry");
  search->add_flag("--all", raw.all, "Every match, retired entries too");
  CLI::App* show = verb(*words, "show", "Show one entry whole");
  add_entry(show, raw);
  add_json(show, raw);
  CLI::App* add = verb(*words, "add", "Add an entry, or change the given fields of one");
  add_entry(add, raw);
  add_entry_fields(add, raw.edit);
  CLI::App* retire = verb(*words, "retire", "No longer recognise or offer an entry");
  add_entry(retire, raw);
  CLI::Option* reason = retire->add_option("--reason", raw.reason, "Why, for whoever meets it");
  retire->add_flag("--undo", raw.undo, "Take it back")->excludes(reason);
  CLI::App* alias = verb(*words, "alias", "Count an entry as another of its kind");
  add_entry(alias, raw);
  CLI::Option* to = alias->add_option("--to", raw.to, "Id of the entry that stands for it");
  alias->add_flag("--undo", raw.undo, "Take it back")->excludes(to);
}

void add_housekeeping(CLI::App& app, Raw& raw) {
  add_json(verb(app, "verify", "Check records and index against each other"), raw);
  add_json(verb(app, "reindex", "Build the index anew from the records"), raw);
  CLI::App* record = verb(app, "track-record", "How good these records are at telling causes");
  CLI::Option* folds = record
                           ->add_option("--folds", raw.track_record.folds,
                                        "Hold out a share at a time instead of one case; 2 to 20")
                           ->check(CLI::Range(2, 20));
  CLI::Option* seed =
      record->add_option("--seed", raw.track_record.seed, "Of what is hidden, and of the shares");
  record->add_flag("--checks", raw.track_record.checks, "How far each check can be trusted instead")
      ->excludes(folds)
      ->excludes(seed);
  add_json(record, raw);
  CLI::App* fit = verb(app, "fit", "Fit the ranking to these records");
  fit->add_option("--seed", raw.fit.seed, "Of the cases asked and what is hidden");
  add_json(fit, raw);
  CLI::App* serve = verb(app, "serve", "Answer over HTTP on this machine");
  serve->add_option("--host", raw.serve.host, "Loopback address to listen on");
  serve->add_option("--port", raw.serve.port, "0 takes any free one")->check(CLI::Range(0, 65535));
}

Result<Filter> read_filter(const FilterText& text) {
  Filter filter;
  filter.make = text.make;
  filter.engine_family = text.engine_family;
  if (!text.mileage.empty()) {
    const auto band = parse_mileage_band(text.mileage);
    if (!band) return fail(band.error());
    filter.mileage = *band;
  }
  if (!text.year.empty()) {
    const auto band = parse_year_band(text.year);
    if (!band) return fail(band.error());
    filter.model_year = *band;
  }
  if (!text.closed_since.empty()) {
    const auto day = parse_day(text.closed_since, "--closed-since");
    if (!day) return fail(day.error());
    filter.closed_since = *day;
  }
  if (!text.proof.empty()) {
    auto proofs = parse_proofs(text.proof);
    if (!proofs) return fail(proofs.error());
    filter.proofs = std::move(*proofs);
  }
  return filter;
}

Result<Command> read_add(Raw& raw) {
  AddOptions add = raw.add;
  add.text = joined_words(raw.words);
  if (raw.if_revision >= 0) add.if_revision = Revision{raw.if_revision};
  if (raw.restore >= 0) add.restore = Revision{raw.restore};
  const int ways =
      (add.text.empty() ? 0 : 1) + (add.json_file.empty() ? 0 : 1) + (add.restore ? 1 : 0);
  const auto refuse = [](std::string place, std::string why) {
    return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
  };
  if (ways != 1) return refuse("command line", "expected one of TEXT, --json and --restore");
  const bool identity = !add.vin.empty() || !add.plate.empty() || !add.customer.empty();
  if (add.to.empty()) {
    if (add.if_revision) return refuse("--if-revision", "needs --to");
    if (add.restore) return refuse("--restore", "needs --to");
    if (!add.json_file.empty() && (identity || !add.job_number.empty())) {
      return refuse("--json", "the JSON itself says identity and job number");
    }
    return add;
  }
  if (!add.job_number.empty())
    return refuse("--job-number", "is of a new case; change it with --json");
  if (identity && add.text.empty())
    return refuse("--to", "--vin, --plate and --customer need TEXT");
  if (add.if_revision && add.json_file.empty()) return refuse("--if-revision", "needs --json");
  return add;
}

// Everything found without --all is shown on a screen or two.
constexpr std::size_t kShownMatches = 20;

Result<Command> read_vocabulary(const std::string& name, Raw& raw, Output output) {
  const auto kind = enum_from_name<EntryKind>(raw.kind);
  if (!kind && !raw.kind.empty()) {
    return fail(ErrorCode::kInvalidInput, name == "search" ? "--kind" : "kind",
                "\"" + raw.kind + "\" given, expected " + expected_names<EntryKind>());
  }
  if (name == "search") {
    if (raw.words.empty() && !kind) {
      return fail(ErrorCode::kInvalidInput, "command line", "expected words, or --kind, or both");
    }
    return VocabularySearchOptions{
        {joined_words(raw.words), kind,
         raw.all ? RetiredEntries::kIncluded : RetiredEntries::kLeftOut,
         raw.all ? std::numeric_limits<std::size_t>::max() : kShownMatches}};
  }
  if (name == "show") return VocabularyShowOptions{*kind, raw.edit.id, output};
  EntryEdit edit = raw.edit;
  edit.kind = *kind;
  if (name == "add") {
    edit.if_missing = IfMissing::kAdd;
    return VocabularyEditOptions{std::move(edit)};
  }
  const bool retires = name == "retire";
  const std::string& given = retires ? raw.reason : raw.to;
  if (given.empty() && !raw.undo) {
    return fail(ErrorCode::kInvalidInput, retires ? "--reason" : "--to",
                "is needed, or --undo to take it back");
  }
  (retires ? edit.retired : edit.alias_of) = given;
  return VocabularyEditOptions{std::move(edit)};
}

Result<Command> read_command(const std::string& name, Raw& raw) {
  const auto filter = read_filter(raw.filter);
  if (!filter) return fail(filter.error());
  const Output output = raw.json ? Output::kJson : Output::kText;
  if (name == "init") return InitOptions{};
  if (name == "add") return read_add(raw);
  if (name == "show") {
    const auto what = raw.history ? ShowOptions::What::kHistory : ShowOptions::What::kRecord;
    return ShowOptions{raw.show.ref, what, output};
  }
  if (name == "find") {
    return FindOptions{joined_words(raw.words), raw.find.after, raw.find.page_size, *filter,
                       output};
  }
  if (name == "ask") {
    return AskOptions{joined_words(raw.words),
                      raw.ask.case_ref,
                      raw.ask.rows,
                      raw.ask.similar_cases,
                      *filter,
                      output,
                      raw.ask.open,
                      raw.ask.not_possible,
                      raw.agreed ? AgreedToTry::kYes : AgreedToTry::kNo};
  }
  constexpr std::string_view kVocabulary = "vocabulary ";
  if (name.starts_with(kVocabulary)) {
    return read_vocabulary(name.substr(kVocabulary.size()), raw, output);
  }
  if (name == "import") return ImportOptions{raw.file, output};
  if (name == "export") return ExportOptions{raw.file};
  if (name == "verify") return VerifyOptions{output};
  if (name == "reindex") return ReindexOptions{output};
  if (name == "track-record") {
    const TrackRecordVerbOptions& record = raw.track_record;
    return TrackRecordVerbOptions{record.folds, record.seed, record.checks, output};
  }
  if (name == "fit") return FitOptions{raw.fit.seed, output};
  return raw.serve;
}

// The library's messages may span lines; ours are one sentence.
std::string one_line(std::string text) {
  for (char& c : text) {
    if (c == '\n') c = ' ';
  }
  while (!text.empty() && (text.back() == ' ' || text.back() == '.')) text.pop_back();
  return text;
}

}  // namespace

Parsed parse_arguments(const std::vector<std::string>& arguments) {
  Raw raw;
  CLI::App app(kAbout, "shoplore");
  app.set_version_flag("--version", std::string("shoplore ") + SHOPLORE_VERSION);
  app.add_option("--shop", raw.shop,
                 "The shop folder (default: SHOPLORE_SHOP, else the data folder)");
  app.require_subcommand(1);
  add_questions(app, raw);
  add_recording(app, raw);
  add_vocabulary(app, raw);
  add_housekeeping(app, raw);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  const auto chosen = [&app] {
    std::string name;
    for (auto subs = app.get_subcommands(); !subs.empty(); subs = subs.front()->get_subcommands()) {
      name += (name.empty() ? "" : " ") + subs.front()->get_name();
    }
    return name;
  };
  try {
    app.parse(reversed);
  } catch (const CLI::CallForHelp&) {
    return {chosen(), Invocation{chosen(), raw.shop, HelpText{app.help()}}};
  } catch (const CLI::CallForAllHelp&) {
    return {chosen(), Invocation{chosen(), raw.shop, HelpText{app.help()}}};
  } catch (const CLI::CallForVersion& version) {
    return {chosen(), Invocation{chosen(), raw.shop, HelpText{std::string(version.what()) + "\n"}}};
  } catch (const CLI::ParseError& error) {
    if (chosen().empty()) {
      return {"", fail(ErrorCode::kInvalidInput, "command line",
                       "expected one of the verbs that shoplore --help lists")};
    }
    // The library would only say that a subcommand is required.
    const std::string why = chosen() == "vocabulary" ? "expected search, show, add, retire or alias"
                                                     : one_line(error.what());
    return {chosen(), fail(ErrorCode::kInvalidInput, "command line", why)};
  }
  auto command = read_command(chosen(), raw);
  if (!command) return {chosen(), fail(command.error())};
  return {chosen(), Invocation{chosen(), raw.shop, std::move(*command)}};
}

}  // namespace shoplore
