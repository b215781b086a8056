// Verbs that put records in and take them out: init, add, import, export.
#include "api/cli/declared_verbs.hpp"

namespace shoplore {
namespace {

constexpr std::int64_t kMostRevision = 1'000'000'000'000;

struct AddTyped {
  AddOptions add;
  std::vector<std::string> words;
  std::int64_t if_revision = -1, restore = -1;
};

Result<Command> read_add(const AddTyped& typed) {
  AddOptions add = typed.add;
  add.text = joined_words(typed.words);
  if (typed.if_revision >= 0) add.if_revision = Revision{typed.if_revision};
  if (typed.restore >= 0) add.restore = Revision{typed.restore};
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

void declare_add(CLI::App& app, DeclaredVerbs& verbs) {
  const auto typed = std::make_shared<AddTyped>();
  CLI::App* add = verb(app, "add", "Record a case, or change one");
  add->add_option("text", typed->words, "Complaint or findings as you would type them");
  add->add_option("--json", typed->add.json_file,
                  "FILE or - with a case, or with --to a merge patch (RFC 7396)");
  add->add_option("--to", typed->add.to, "Change this case instead of making one");
  add->add_option("--vin", typed->add.vin, "Gives the vehicle its pseudonym; not stored");
  add->add_option("--plate", typed->add.plate, "Likewise");
  add->add_option("--customer", typed->add.customer, "Name to remove from the texts; not stored");
  add->add_option("--job-number", typed->add.job_number, "The workshop's own number");
  add->add_option("--if-revision", typed->if_revision,
                  "With --to: only if it is still that revision")
      ->check(CLI::Range(std::int64_t{0}, kMostRevision));
  add->add_option("--restore", typed->restore, "With --to: put it back as it was at that revision")
      ->check(CLI::Range(std::int64_t{1}, kMostRevision));
  verbs.push_back({add, [typed] { return read_add(*typed); }});
}

void declare_import(CLI::App& app, DeclaredVerbs& verbs) {
  struct Typed {
    std::string file = "-";
    bool json = false;
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* import = verb(app, "import", "Record cases from JSON Lines");
  import->add_option("file", typed->file, "FILE or - for standard input");
  add_json(import, typed->json);
  verbs.push_back({import, [typed]() -> Result<Command> {
                     return ImportOptions{typed->file, output_of(typed->json)};
                   }});
}

void declare_export(CLI::App& app, DeclaredVerbs& verbs) {
  const auto file = std::make_shared<std::string>("-");
  CLI::App* sub = verb(app, "export", "Write every case as JSON Lines");
  sub->add_option("file", *file, "FILE or - for standard output");
  verbs.push_back({sub, [file]() -> Result<Command> { return ExportOptions{*file}; }});
}

}  // namespace

void declare_recording(CLI::App& app, DeclaredVerbs& verbs) {
  CLI::App* init = verb(app, "init", "Make a new shop folder");
  verbs.push_back({init, []() -> Result<Command> { return InitOptions{}; }});
  declare_add(app, verbs);
  declare_import(app, verbs);
  declare_export(app, verbs);
}

}  // namespace shoplore
