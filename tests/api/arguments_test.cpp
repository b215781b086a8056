#include "api/cli/arguments.hpp"

#include <gtest/gtest.h>

#include "api/cli/option_values.hpp"

namespace shoplore {
namespace {

using Words = std::vector<std::string>;

template <class Options>
Options read(const Words& words) {
  const Parsed parsed = parse_arguments(words);
  if (!parsed.invocation) {
    ADD_FAILURE() << describe(parsed.invocation.error());
    return {};
  }
  if (!std::holds_alternative<Options>(parsed.invocation->command)) {
    ADD_FAILURE() << "another verb: " << parsed.verb;
    return {};
  }
  return std::get<Options>(parsed.invocation->command);
}

TEST(Arguments, UnquotedWordsAreJoined) {
  EXPECT_EQ(read<AskOptions>({"ask", "flat", "uphill,", "no", "whistle"}).text,
            "flat uphill, no whistle");
}

TEST(Arguments, AWordThatIsAVerbStaysAWord) {
  EXPECT_EQ(read<AskOptions>({"ask", "cannot", "find", "leak", "add", "oil"}).text,
            "cannot find leak add oil");
}

TEST(Arguments, TheShopMayStandBeforeOrAfterTheVerb) {
  EXPECT_EQ(parse_arguments({"--shop", "/s", "ask", "flat"}).invocation->shop, "/s");
  EXPECT_EQ(parse_arguments({"ask", "flat", "--shop", "/s"}).invocation->shop, "/s");
}

TEST(Arguments, ReadsEveryFilter) {
  const auto ask = read<AskOptions>({"ask", "flat", "--make", "Brackwater", "--engine-family",
                                     "BW16D", "--mileage", "100000..150000", "--year", "2014..2016",
                                     "--closed-since", "2024-01-01", "--proof", "seen,measured",
                                     "--rows", "7", "--similar-cases", "0", "--json"});
  EXPECT_EQ(ask.filter.make, "Brackwater");
  EXPECT_EQ(ask.filter.engine_family, "BW16D");
  EXPECT_EQ(ask.filter.mileage.low, Kilometres{100'000});
  EXPECT_EQ(ask.filter.mileage.high, Kilometres{150'000});
  EXPECT_EQ(ask.filter.model_year.low, 2014);
  EXPECT_EQ(ask.filter.model_year.high, 2017);  // half-open inside, inclusive when typed
  EXPECT_EQ(ask.filter.closed_since, *parse_date("2024-01-01"));
  EXPECT_EQ(ask.filter.proofs, (std::set<Proof>{Proof::kSeen, Proof::kMeasured}));
  EXPECT_EQ(ask.rows, 7u);
  EXPECT_EQ(ask.similar_cases, 0u);
  EXPECT_EQ(ask.output, Output::kJson);
}

TEST(Arguments, PracticeAndItsOwnVerbsAreToldApart) {
  const auto practice =
      read<PracticeOptions>({"practice", "--apprentice", "a1", "--kind", "vain_repair",
                             "--difficulty", "hard", "--seed", "7", "--json"});
  EXPECT_EQ(practice.wish.apprentice, "a1");
  EXPECT_EQ(practice.wish.kind, PracticeKind::kVainRepair);
  EXPECT_EQ(practice.wish.difficulty, Difficulty::kHard);
  EXPECT_EQ(practice.wish.seed, 7U);
  EXPECT_EQ(practice.output, Output::kJson);
  EXPECT_EQ(read<PracticeOptions>({"practice", "--round", "a1-0f3c9a5d"}).round, "a1-0f3c9a5d");
  EXPECT_EQ(
      read<PracticeProgressOptions>({"practice", "progress", "--apprentice", "b2"}).apprentice,
      "b2");
  EXPECT_EQ(read<PracticeExportOptions>({"practice", "export", "--apprentice", "b2"}).apprentice,
            "b2");
  EXPECT_EQ(read<PracticeDeleteOptions>({"practice", "delete", "--apprentice", "b2"}).apprentice,
            "b2");
  for (const Words& wrong :
       {Words{"practice"}, Words{"practice", "progress"},
        Words{"practice", "--apprentice", "a1", "--kind", "riddle"},
        Words{"practice", "--apprentice", "a1", "--difficulty", "odd"},
        Words{"practice", "--apprentice", "a1", "--seed", "many"}, Words{"practice", "list"}}) {
    const Parsed parsed = parse_arguments(wrong);
    ASSERT_FALSE(parsed.invocation) << wrong.back();
    EXPECT_EQ(parsed.invocation.error().code, ErrorCode::kInvalidInput);
  }
}

TEST(Arguments, AskTakesWhatIsOffWhatCannotBeDoneAndWhatWasAgreed) {
  const auto ask = read<AskOptions>({"ask", "--open", "plug_cover", "flat", "--open", "undertray",
                                     "--not-possible", "coil_swap", "uphill", "--agreed"});
  EXPECT_EQ(ask.text, "flat uphill");
  EXPECT_EQ(ask.open, (std::vector<std::string>{"plug_cover", "undertray"}));
  EXPECT_EQ(ask.not_possible, std::vector<std::string>{"coil_swap"});
  EXPECT_EQ(ask.agreed, AgreedToTry::kYes);
  EXPECT_EQ(read<AskOptions>({"ask", "flat"}).agreed, AgreedToTry::kNo);
}

TEST(Arguments, AskMayNameTheVehicleAndWantOnlyTheWarnings) {
  const auto ask =
      read<AskOptions>({"ask", "flat", "--plate", "AB 12", "--vin", "X", "--watch-out"});
  EXPECT_EQ(ask.text, "flat");
  EXPECT_EQ(ask.plate, "AB 12");
  EXPECT_EQ(ask.vin, "X");
  EXPECT_EQ(ask.what, AskOptions::What::kWatchOut);
  EXPECT_EQ(read<AskOptions>({"ask", "flat"}).what, AskOptions::What::kAnswer);
}

TEST(Arguments, AnEndOfABandMayBeLeftOut) {
  EXPECT_EQ(parse_mileage_band("..150000")->low, std::nullopt);
  EXPECT_EQ(parse_mileage_band("100000..")->high, std::nullopt);
  EXPECT_EQ(parse_year_band("2016")->low, 2016);
  EXPECT_EQ(parse_year_band("2016")->high, 2017);
}

TEST(Arguments, ReadsTheWaysToChangeACase) {
  const auto patch =
      read<AddOptions>({"add", "--to", "case-7", "--json", "-", "--if-revision", "3"});
  EXPECT_EQ(patch.to, "case-7");
  EXPECT_EQ(patch.json_file, "-");
  EXPECT_EQ(patch.if_revision, Revision{3});
  EXPECT_EQ(read<AddOptions>({"add", "--to", "case-7", "--restore", "3"}).restore, Revision{3});
  EXPECT_EQ(read<AddOptions>({"add", "--to", "case-7", "no", "whistle"}).text, "no whistle");
}

TEST(Arguments, ReadsWhatBecameOfARepair) {
  EXPECT_EQ(read<OutcomesDueOptions>({"outcomes"}).limit, 20U);
  EXPECT_EQ(read<OutcomesDueOptions>({"outcomes", "--limit", "3"}).limit, 3U);
  const auto outcome = read<OutcomeOptions>(
      {"outcomes", "case-7", "came_back", "--on", "2026-03-02", "--mileage", "146100", "--reason",
       "wrong_cause", "--of", "case-9", "--cause", "turbocharger:worn", "--json"});
  EXPECT_EQ(outcome.ref, "case-7");
  EXPECT_EQ(outcome.report.status, OutcomeStatus::kCameBack);
  EXPECT_EQ(outcome.report.as_of, parse_date("2026-03-02").value());
  EXPECT_EQ(outcome.report.mileage_km, Kilometres{146'100});
  EXPECT_EQ(outcome.report.reason, ComebackReason::kWrongCause);
  EXPECT_EQ(outcome.report.comeback, "case-9");
  EXPECT_EQ(outcome.report.right_cause->component, "turbocharger");
  EXPECT_EQ(outcome.report.right_cause->failure, "worn");
  EXPECT_EQ(outcome.output, Output::kJson);
}

TEST(Arguments, ReadsAPlan) {
  const auto plan =
      read<PlanOptions>({"plan", "wastegate", "linkage", "--make", "Brackwater", "--engine-family",
                         "BW16D", "--vehicle", "2016 Tidal", "--case", "case-7", "--open",
                         "heat_shield", "--open", "plug_cover", "--approval", "a.html"});
  EXPECT_EQ(plan.question.cause, "wastegate linkage");
  EXPECT_EQ(plan.question.vehicle.make, "Brackwater");
  EXPECT_EQ(plan.question.vehicle.engine_family, "BW16D");
  EXPECT_EQ(plan.question.vehicle.words, "2016 Tidal");
  EXPECT_EQ(plan.question.case_ref, "case-7");
  EXPECT_EQ(plan.question.open, (std::set<std::string>{"heat_shield", "plug_cover"}));
  EXPECT_EQ(plan.approval_file, "a.html");
  EXPECT_EQ(plan.output, Output::kText);
}

TEST(Arguments, ReadsAChangeOfAnEntry) {
  const auto add = read<VocabularyEditOptions>(
      {"vocabulary", "add", "check", "sweep", "--name", "vane sweep", "--phrase", "swept the vanes",
       "--phrase", "sweep", "--low", "-700", "--high=-500.5", "--engine-family", "BW16D", "--drop",
       "x"});
  EXPECT_EQ(add.edit.kind, EntryKind::kCheck);
  EXPECT_EQ(add.edit.id, "sweep");
  EXPECT_EQ(add.edit.if_missing, IfMissing::kAdd);
  EXPECT_EQ(add.edit.name, "vane sweep");
  EXPECT_EQ(add.edit.phrases, (Words{"swept the vanes", "sweep"}));
  EXPECT_EQ(add.edit.low, -700);
  EXPECT_EQ(add.edit.high, -500.5);
  EXPECT_EQ(add.edit.minutes, std::nullopt);
  EXPECT_EQ(add.edit.engine_families, Words{"BW16D"});
  EXPECT_EQ(add.edit.dropped, Words{"x"});
  const auto retire =
      read<VocabularyEditOptions>({"vocabulary", "retire", "symptom", "flat", "--reason", "vague"});
  EXPECT_EQ(retire.edit.retired, "vague");
  EXPECT_EQ(retire.edit.if_missing, IfMissing::kRefuse);
  EXPECT_EQ(retire.edit.alias_of, std::nullopt);
  const auto undone =
      read<VocabularyEditOptions>({"vocabulary", "alias", "symptom", "flat", "--undo"});
  EXPECT_EQ(undone.edit.alias_of, "");
  EXPECT_EQ(undone.edit.retired, std::nullopt);
}

TEST(Arguments, ReadsWhichTrackRecordIsWanted) {
  EXPECT_FALSE(read<TrackRecordVerbOptions>({"track-record", "--folds", "5"}).checks);
  EXPECT_TRUE(read<TrackRecordVerbOptions>({"track-record", "--checks"}).checks);
  EXPECT_FALSE(parse_arguments({"track-record", "--checks", "--seed", "2"}).invocation);
}

TEST(Arguments, ReadsWhoseMileageIsWanted) {
  const auto options = read<MileageOptions>(
      {"mileage", "wastegate", "linkage", "--engine-family", "BW16D", "--svg", "x.svg", "--json"});
  EXPECT_EQ(options.cause, "wastegate linkage");
  EXPECT_EQ(options.engine_family, "BW16D");
  EXPECT_EQ(options.make, "");
  EXPECT_EQ(options.svg_file, "x.svg");
  EXPECT_EQ(options.output, Output::kJson);
  EXPECT_FALSE(parse_arguments({"mileage"}).invocation);
}

TEST(Arguments, ReadsWhatIsSeenMoreLately) {
  const auto plain = read<LatelyOptions>({"lately"});
  EXPECT_EQ(plain.view.months, std::nullopt);
  EXPECT_EQ(plain.view.rows, LatelyRows::kRisen);
  EXPECT_EQ(plain.as_of, std::nullopt);
  const auto options =
      read<LatelyOptions>({"lately", "--months", "6", "--engine-family", "BW16D", "--falling",
                           "--svg", "x.svg", "--as-of", "2026-03-31", "--json"});
  EXPECT_EQ(options.view.months, 6U);
  EXPECT_EQ(options.view.engine_family, "BW16D");
  EXPECT_EQ(options.view.rows, LatelyRows::kFallen);
  EXPECT_EQ(options.svg_file, "x.svg");
  EXPECT_EQ(format_date(*options.as_of), "2026-03-31");
  EXPECT_EQ(options.output, Output::kJson);
  EXPECT_EQ(read<LatelyOptions>({"lately", "--all"}).view.rows, LatelyRows::kAll);
}

TEST(Arguments, ReadsWhichPatternsAreWanted) {
  const auto some = read<PatternsOptions>({"patterns", "--engine-family", "BW16D", "--make",
                                           "Brackwater", "--cause", "a:b", "--limit", "3",
                                           "--cases"});
  EXPECT_EQ(some.choice.engine_family, "BW16D");
  EXPECT_EQ(some.choice.make, "Brackwater");
  EXPECT_EQ(some.choice.cause, "a:b");
  EXPECT_EQ(some.limit, 3U);
  EXPECT_TRUE(some.cases);
  EXPECT_EQ(read<PatternsOptions>({"patterns"}).limit, 10U);
  EXPECT_EQ(read<PatternsOptions>({"patterns", "--all"}).limit, 0U);
  EXPECT_EQ(read<PatternsOptions>({"patterns", "--sheet", "x.html"}).sheet, "x.html");
  EXPECT_FALSE(parse_arguments({"patterns", "--limit", "0"}).invocation);
  EXPECT_FALSE(parse_arguments({"patterns", "--sheet", "x.html", "--all"}).invocation);
}

TEST(Arguments, ReadsASearchOfTheVocabulary) {
  const auto some = read<VocabularySearchOptions>({"vocabulary", "search", "add", "oil"});
  EXPECT_EQ(some.search.words, "add oil");
  EXPECT_EQ(some.search.kind, std::nullopt);
  EXPECT_EQ(some.search.retired, RetiredEntries::kLeftOut);
  EXPECT_EQ(some.search.limit, 20U);
  const auto all =
      read<VocabularySearchOptions>({"vocabulary", "search", "--all", "--kind", "work_sign"});
  EXPECT_EQ(all.search.kind, EntryKind::kWorkSign);
  EXPECT_EQ(all.search.retired, RetiredEntries::kIncluded);
  EXPECT_GT(all.search.limit, 100'000U);
}

TEST(Arguments, HelpIsNoError) {
  EXPECT_NE(read<HelpText>({"ask", "--help"}).text.find("--engine-family"), std::string::npos);
  EXPECT_NE(read<HelpText>({"--version"}).text.find("shoplore "), std::string::npos);
}

struct RefusedRow {
  Words words;
  const char* verb;
  const char* place;
};

const RefusedRow kRefused[] = {
    {{}, "", "command line"},
    {{"fetch"}, "", "command line"},
    {{"ask", "flat", "--colour"}, "ask", "command line"},
    {{"show"}, "show", "command line"},
    {{"ask", "flat", "--rows", "0"}, "ask", "command line"},
    {{"ask", "flat", "--rows", "many"}, "ask", "command line"},
    {{"lately", "--months", "5"}, "lately", "--months"},
    {{"lately", "--months=-3"}, "lately", "--months"},
    {{"lately", "--as-of", "June"}, "lately", "--as-of"},
    {{"ask", "flat", "--mileage", "100000"}, "ask", "--mileage"},
    {{"ask", "flat", "--mileage", ".."}, "ask", "--mileage"},
    {{"ask", "flat", "--mileage=-5..10"}, "ask", "--mileage"},
    {{"ask", "flat", "--mileage", "20..10"}, "ask", "--mileage"},
    {{"ask", "flat", "--mileage", "10..10"}, "ask", "--mileage"},
    {{"ask", "flat", "--mileage", "10..20km"}, "ask", "--mileage"},
    {{"ask", "flat", "--year", "1949.."}, "ask", "--year"},
    {{"ask", "flat", "--year", "2016..2014"}, "ask", "--year"},
    {{"ask", "flat", "--closed-since", "2026-02-30"}, "ask", "--closed-since"},
    {{"ask", "flat", "--proof", "seen,guessed"}, "ask", "--proof"},
    {{"ask", "flat", "--proof", "seen,"}, "ask", "--proof"},
    {{"find", "flat", "--page-size", "101"}, "find", "command line"},
    {{"serve", "--port", "65536"}, "serve", "command line"},
    {{"vocabulary"}, "vocabulary", "command line"},
    {{"vocabulary", "search"}, "vocabulary search", "command line"},
    {{"vocabulary", "search", "x", "--kind", "smell"}, "vocabulary search", "--kind"},
    {{"vocabulary", "show", "smell", "x"}, "vocabulary show", "kind"},
    {{"vocabulary", "show", "symptom"}, "vocabulary show", "command line"},
    {{"vocabulary", "add", "check", "x", "--minutes", "m"}, "vocabulary add", "command line"},
    {{"vocabulary", "retire", "symptom", "x"}, "vocabulary retire", "--reason"},
    {{"vocabulary", "alias", "symptom", "x"}, "vocabulary alias", "--to"},
    {{"add"}, "add", "command line"},
    {{"add", "flat", "--json", "-"}, "add", "command line"},
    {{"add", "flat", "--if-revision", "3"}, "add", "--if-revision"},
    {{"add", "--restore", "3"}, "add", "--restore"},
    {{"add", "--json", "-", "--plate", "x"}, "add", "--json"},
    {{"add", "--to", "case-7", "--json", "-", "--vin", "x"}, "add", "--to"},
    {{"add", "--to", "case-7", "flat", "--job-number", "9"}, "add", "--job-number"},
};

TEST(Arguments, RefusesNamingVerbAndOption) {
  for (const RefusedRow& row : kRefused) {
    std::string trace = row.place;
    for (const std::string& word : row.words) trace += " " + word;
    SCOPED_TRACE(trace);
    const Parsed parsed = parse_arguments(row.words);
    EXPECT_EQ(parsed.verb, row.verb);
    ASSERT_FALSE(parsed.invocation);
    EXPECT_EQ(parsed.invocation.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(parsed.invocation.error().place, row.place);
  }
}

TEST(Arguments, AnOptionWithAnEmptyValueIsRefusedByName) {
  const std::vector<std::vector<std::string>> lines{
      {"outcomes", "case-1", "stayed_fixed", "--on", ""},
      {"add", "--plate", "", "no power"},
      {"plan", "spark plug worn", "--case", ""},
      {"mileage", "spark plug worn", "--svg", ""}};
  for (const auto& line : lines) {
    const auto parsed = parse_arguments(line);
    ASSERT_FALSE(parsed.invocation) << line[0];
    EXPECT_NE(parsed.invocation.error().place.find("--"), std::string::npos) << line[0];
    EXPECT_EQ(parsed.invocation.error().message, "is empty") << line[0];
  }
  EXPECT_TRUE(parse_arguments({"vocabulary", "add", "check", "x", "--unit", ""}).invocation);
}

}  // namespace
}  // namespace shoplore
