// Which cause is meant by a key or by plain words, and when nothing is guessed.
#include "query/cause_words.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/plain_cases.hpp"

namespace shoplore {
namespace {

using ::testing::HasSubstr;

const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

testing::PlainCounter shop() {
  std::vector<testing::PlainCase> cases;
  testing::add(cases, 5, {"wastegate_linkage:seized_open", {}});
  testing::add(cases, 3, {"ignition_coil:internal_fault", {}});
  testing::add(cases, 2, {"coil_spring:broken", {}});
  testing::add(cases, 4, {"turbocharger:worn", {}});
  testing::add(cases, 2, {"turbocharger:leaking", {}});
  testing::add(cases, 1, {"wheel_bearing:worn", {}});
  return testing::PlainCounter(std::move(cases));
}

Result<NamedCause> read(std::string_view text) {
  static const testing::PlainCounter counter = shop();
  return cause_from_words(text, "CAUSE", words(), counter);
}

struct Row {
  const char* name;
  const char* text;
  const char* key;
  std::uint32_t cases;
};

class CauseWords : public ::testing::TestWithParam<Row> {};

TEST_P(CauseWords, MeanTheOneCause) {
  const auto cause = read(GetParam().text);
  ASSERT_TRUE(cause) << describe(cause.error());
  EXPECT_EQ(cause->key, GetParam().key);
  EXPECT_EQ(cause->key, cause->component + ":" + cause->failure);
  EXPECT_EQ(cause->cases, GetParam().cases);
}

INSTANTIATE_TEST_SUITE_P(
    Table, CauseWords,
    ::testing::Values(
        Row{"Key", "wastegate_linkage:seized_open", "wastegate_linkage:seized_open", 5},
        Row{"KeyNeverSeen", "alternator:seized", "alternator:seized", 0},
        Row{"Names", "wastegate linkage seized open", "wastegate_linkage:seized_open", 5},
        Row{"TheOtherWayRound", "seized open wastegate linkage", "wastegate_linkage:seized_open",
            5},
        Row{"AsShown", "wastegate linkage, seized open", "wastegate_linkage:seized_open", 5},
        Row{"ASentence", "the turbo is worn out", "turbocharger:worn", 4},
        Row{"ComponentAlone", "wastegate linkage", "wastegate_linkage:seized_open", 5},
        Row{"SeenFailureOfAShorterName", "linkage seized", "wastegate_linkage:seized_open", 5},
        Row{"TheSpringNotTheCoil", "coil spring snapped", "coil_spring:broken", 2},
        Row{"OneLetterWrong", "wastegate linkige seized open", "wastegate_linkage:seized_open", 5},
        Row{"ComponentOfTwoWords", "wheel bearing", "wheel_bearing:worn", 1},
        Row{"NamesNeverSeen", "alternator seized", "alternator:seized", 0}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(CauseWordsAmbiguous, NamesEveryCandidateMostCasesFirst) {
  const auto cause = read("turbocharger");
  ASSERT_FALSE(cause);
  EXPECT_EQ(cause.error().code, ErrorCode::kInvalidInput);
  EXPECT_EQ(cause.error().place, "CAUSE");
  EXPECT_THAT(cause.error().message, HasSubstr("may be one of 2 causes"));
  ASSERT_EQ(cause.error().problems.size(), 2U);
  EXPECT_EQ(cause.error().problems[0].place, "turbocharger:worn");
  EXPECT_EQ(cause.error().problems[0].expected, "turbocharger, worn (4 cases)");
  EXPECT_EQ(cause.error().problems[1].place, "turbocharger:leaking");
}

TEST(CauseWordsAmbiguous, AFailureAloneMeansEveryCauseOfIt) {
  const auto cause = read("worn");
  ASSERT_FALSE(cause);
  ASSERT_EQ(cause.error().problems.size(), 2U);
  EXPECT_EQ(cause.error().problems[1].expected, "wheel bearing, worn (1 case)");
}

struct Refused {
  const char* name;
  const char* text;
  const char* said;
};

class CauseWordsRefused : public ::testing::TestWithParam<Refused> {};

TEST_P(CauseWordsRefused, NamesWhatAndWhere) {
  const auto cause = read(GetParam().text);
  ASSERT_FALSE(cause);
  EXPECT_EQ(cause.error().code, ErrorCode::kInvalidInput);
  EXPECT_THAT(describe(cause.error()), HasSubstr("CAUSE: "));
  EXPECT_THAT(describe(cause.error()), HasSubstr(GetParam().said));
}

INSTANTIATE_TEST_SUITE_P(
    NearMisses, CauseWordsRefused,
    ::testing::Values(
        Refused{"UnknownComponent", "wastegate_linkag:worn",
                "\"wastegate_linkag\" is not a known component; near it: wastegate_linkage"},
        Refused{"UnknownFailure", "turbocharger:zzzz", "\"zzzz\" is not a known failure"},
        Refused{"NoFailure", "turbocharger:", "\"\" is not a known failure"},
        Refused{"Nothing", "", "expected a cause"},
        Refused{"JoiningWordsOnly", "it is the", "expected a cause"},
        Refused{"Gibberish", "flurble wibble", "\"flurble wibble\" names no known cause; write"},
        Refused{"OneWordKnown", "turbo flurble", "turbocharger:worn"},
        Refused{"HalfNamesNeverSeen", "alternator sei", "\"alternator sei\" names no known cause"},
        Refused{"ShortAndMisspelt", "turbo wron", "\"turbo wron\" names no known cause"},
        Refused{"ShortMisspeltAlone", "worm", "\"worm\" names no known cause"},
        Refused{"ComponentNeverSeen", "alternator", "\"alternator\" names no known cause"},
        Refused{"TooLong", "a b c d e f g h i j k l m n o p", "at most 12 words"}),
    [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace shoplore
