// The verb vocabulary and its own verbs: search, show, add, retire, alias.
#include <limits>

#include "api/cli/declared_verbs.hpp"

namespace shoplore {
namespace {

struct Typed {
  std::vector<std::string> words;
  std::string kind, reason, to;
  bool all = false, undo = false, json = false;
  EntryEdit edit;
};

void add_entry(CLI::App* sub, Typed& typed) {
  sub->add_option("kind", typed.kind, "The kind of entry, as in symptom")->required();
  sub->add_option("id", typed.edit.id, "The entry's id, as in lack_of_power")->required();
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
  list("--afterwards", edit.afterwards, "What a component needs once it was renewed");
  list("--condition", edit.conditions, "Id of a condition that a check needs");
  add->add_option("--expands-to", edit.expands_to, "What a shorthand stands for");
  add->add_option("--make", edit.make, "Of a vehicle model");
  list("--engine-family", edit.engine_families, "Of a vehicle model");
}

// Everything found without --all is shown on a screen or two.
constexpr std::size_t kShownMatches = 20;

Result<Command> read_vocabulary(const std::string& name, const Typed& typed) {
  const auto kind = enum_from_name<EntryKind>(typed.kind);
  if (!kind && !typed.kind.empty()) {
    return fail(ErrorCode::kInvalidInput, name == "search" ? "--kind" : "kind",
                "\"" + typed.kind + "\" given, expected " + expected_names<EntryKind>());
  }
  if (name == "search") {
    if (typed.words.empty() && !kind) {
      return fail(ErrorCode::kInvalidInput, "command line", "expected words, or --kind, or both");
    }
    return VocabularySearchOptions{
        {joined_words(typed.words), kind,
         typed.all ? RetiredEntries::kIncluded : RetiredEntries::kLeftOut,
         typed.all ? std::numeric_limits<std::size_t>::max() : kShownMatches}};
  }
  if (name == "show") return VocabularyShowOptions{*kind, typed.edit.id, output_of(typed.json)};
  EntryEdit edit = typed.edit;
  edit.kind = *kind;
  if (name == "add") {
    edit.if_missing = IfMissing::kAdd;
    return VocabularyEditOptions{std::move(edit)};
  }
  const bool retires = name == "retire";
  const std::string& given = retires ? typed.reason : typed.to;
  if (given.empty() && !typed.undo) {
    return fail(ErrorCode::kInvalidInput, retires ? "--reason" : "--to",
                "is needed, or --undo to take it back");
  }
  (retires ? edit.retired : edit.alias_of) = given;
  return VocabularyEditOptions{std::move(edit)};
}

}  // namespace

void declare_vocabulary(CLI::App& app, DeclaredVerbs& verbs) {
  const auto typed = std::make_shared<Typed>();
  CLI::App* words = verb(app, "vocabulary", "Look up and change the words that are understood");
  words->require_subcommand(1);
  CLI::App* search = verb(*words, "search", "Find entries by id, name or phrase");
  search->add_option("words", typed->words, "Words, or the beginnings of words");
  search->add_option("--kind", typed->kind, "Only this kind of entry");
  search->add_flag("--all", typed->all, "Every match, retired entries too");
  CLI::App* show = verb(*words, "show", "Show one entry whole");
  add_entry(show, *typed);
  add_json(show, typed->json);
  CLI::App* add = verb(*words, "add", "Add an entry, or change the given fields of one");
  add_entry(add, *typed);
  add_entry_fields(add, typed->edit);
  CLI::App* retire = verb(*words, "retire", "No longer recognise or offer an entry");
  add_entry(retire, *typed);
  CLI::Option* reason = retire->add_option("--reason", typed->reason, "Why, for whoever meets it");
  retire->add_flag("--undo", typed->undo, "Take it back")->excludes(reason);
  CLI::App* alias = verb(*words, "alias", "Count an entry as another of its kind");
  add_entry(alias, *typed);
  CLI::Option* to = alias->add_option("--to", typed->to, "Id of the entry that stands for it");
  alias->add_flag("--undo", typed->undo, "Take it back")->excludes(to);
  for (CLI::App* each : {search, show, add, retire, alias}) {
    verbs.push_back({each, [typed, each] { return read_vocabulary(each->get_name(), *typed); }});
  }
}

}  // namespace shoplore
