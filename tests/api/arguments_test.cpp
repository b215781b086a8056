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

}  // namespace
}  // namespace shoplore
