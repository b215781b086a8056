// The command line as inert values: what was asked for, before anything is opened.
//
// Text may come as several words and is joined with single spaces. Touches no file.
// Any thread. Fails with kInvalidInput whose place is the option or "command line".
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "indexer/entry_edit.hpp"
#include "indexer/outcome_report.hpp"
#include "indexer/quantities.hpp"
#include "indexer/vocabulary_search.hpp"
#include "query/case_counter.hpp"
#include "query/checks/check_advice.hpp"
#include "query/lately/lately_view.hpp"
#include "query/patterns/pattern_book.hpp"
#include "query/practice/practice_round.hpp"
#include "query/repair_plan/repair_plan.hpp"

namespace shoplore {

enum class Output { kText, kJson };

struct InitOptions {};

// Exactly one way of saying what: text, a JSON file ("-" is standard input), or a revision.
struct AddOptions {
  std::string text, json_file;
  std::string to;                       // ref of the case to change; empty: a new case
  std::string vin, plate, customer;     // of a new case; never stored
  std::string job_number;               // of a new case
  std::optional<Revision> if_revision;  // with `to`
  std::optional<Revision> restore;      // with `to`
};

struct ShowOptions {
  std::string ref;
  enum class What { kRecord, kHistory } what = What::kRecord;
  Output output = Output::kText;
};

struct FindOptions {
  std::string text, after;
  std::uint32_t page_size = 10;
  Filter filter;
  Output output = Output::kText;
};

struct AskOptions {
  std::string text;
  std::string case_ref;    // an open case whose findings are asked about too
  std::string vin, plate;  // whose past visits to look for; never stored
  enum class What { kAnswer, kWatchOut } what = What::kAnswer;
  std::uint32_t rows = 5, similar_cases = 5;
  Filter filter;
  Output output = Output::kText;
  std::vector<std::string> open, not_possible;  // removals off; checks that cannot be done
  AgreedToTry agreed = AgreedToTry::kNo;
};

// Which repairs nobody was told about yet.
struct OutcomesDueOptions {
  std::size_t limit = 20;
  Output output = Output::kText;
};

// What became of one repair.
struct OutcomeOptions {
  std::string ref;
  OutcomeReport report;
  Output output = Output::kText;
};

struct PlanOptions {
  PlanQuestion question;
  std::string approval_file;  // the customer's approval instead of the plan; "-": standard output
  Output output = Output::kText;
};

struct ImportOptions {
  std::string file = "-";
  Output output = Output::kText;
};

struct ExportOptions {
  std::string file = "-";
};

struct VerifyOptions {
  Output output = Output::kText;
};

struct ReindexOptions {
  Output output = Output::kText;
};

struct TrackRecordVerbOptions {
  std::size_t folds = 0;  // 0: leave one out
  std::uint64_t seed = 1;
  bool checks = false;  // how far each check can be trusted, instead of the ranking
  Output output = Output::kText;
};

struct MileageOptions {
  std::string cause, make, engine_family;
  std::string svg_file;  // empty: no picture
  Output output = Output::kText;
};

struct LatelyOptions {
  LatelyView view;
  std::optional<Date> as_of;  // none: today
  std::string svg_file;       // empty: no picture
  Output output = Output::kText;
};

// One line of input after the other plays a round.
struct PracticeOptions {
  RoundWish wish;
  std::string round;  // id of an open one to go on with; empty: a new one
  Output output = Output::kText;
};

struct PracticeProgressOptions {
  std::string apprentice;
  Output output = Output::kText;
};

struct PracticeExportOptions {
  std::string apprentice;
};

struct PracticeDeleteOptions {
  std::string apprentice;
};

struct PatternsOptions {
  PatternChoice choice;
  std::size_t limit = 10;  // of each kind; 0: all
  bool cases = false;      // name the cases behind each
  std::string sheet;       // file to write a wall sheet to, instead of a list
  Output output = Output::kText;
};

struct FitOptions {
  std::uint64_t seed = 1;
  Output output = Output::kText;
};

struct VocabularySearchOptions {
  VocabularySearch search;
};

struct VocabularyShowOptions {
  EntryKind kind = EntryKind::kSymptom;
  std::string id;
  Output output = Output::kText;
};

// add, retire and alias alike: each is a change of one entry.
struct VocabularyEditOptions {
  EntryEdit edit;
};

struct ServeOptions {
  std::string host = "127.0.0.1";
  int port = 8787;  // 0: any free one
};

// The command line asked for help or the version: print and end well.
struct HelpText {
  std::string text;
};

using Command =
    std::variant<InitOptions, AddOptions, ShowOptions, FindOptions, AskOptions, OutcomesDueOptions,
                 OutcomeOptions, PlanOptions, ImportOptions, ExportOptions, VerifyOptions,
                 ReindexOptions, TrackRecordVerbOptions, MileageOptions, LatelyOptions,
                 PatternsOptions, FitOptions, PracticeOptions, PracticeProgressOptions,
                 PracticeExportOptions, PracticeDeleteOptions, VocabularySearchOptions,
                 VocabularyShowOptions, VocabularyEditOptions, ServeOptions, HelpText>;

struct Invocation {
  std::string verb;  // "ask", "vocabulary add"; empty when there was none
  std::string shop;  // as given; empty: see choose_shop_folder
  Command command = HelpText{};
};

// `arguments` without the program's name. The verb is set even when reading fails, as far as it
// was recognised, so that messages can begin with it.
struct Parsed {
  std::string verb;
  Result<Invocation> invocation;
};
[[nodiscard]] Parsed parse_arguments(const std::vector<std::string>& arguments);

}  // namespace shoplore
