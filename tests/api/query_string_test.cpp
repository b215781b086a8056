#include "api/http/query_string.hpp"

#include <gtest/gtest.h>

#include "indexer/case_record.hpp"

namespace shoplore {
namespace {

using Texts = std::vector<std::string>;

TEST(QueryString, DecodesAsFormsDo) {
  struct Row {
    std::string raw, value;
  };
  // WHATWG URL, section 5.1: "+" is a space, then percent-decoding.
  for (const auto& [raw, value] : std::vector<Row>{{"q=flat+uphill", "flat uphill"},
                                                   {"q=flat%20uphill", "flat uphill"},
                                                   {"q=a%2Bb%26c%3Dd", "a+b&c=d"},
                                                   {"q=a=b", "a=b"},
                                                   {"%71=x", "x"},
                                                   {"q=caf%c3%A9", "caf\xc3\xa9"},
                                                   {"&&q=x&", "x"}}) {
    const auto query = QueryString::parse(raw, "q");
    ASSERT_TRUE(query) << raw;
    EXPECT_EQ(query->all("q"), Texts{value}) << raw;
  }
}

TEST(QueryString, RefusesByName) {
  struct Row {
    std::string raw, place, reason;
  };
  for (const auto& [raw, place, reason] :
       std::vector<Row>{{"colour=red", "?colour", "not a known parameter"},
                        {"Q=x", "?Q", "not a known parameter"},
                        {"q=a&q=b", "?q", "stands twice"},
                        {"q=", "?q", "is empty"},
                        {"q", "?q", "is empty"},
                        {"q=%20+", "?q", "is empty"},
                        {"q=%", "?q", "hex digits"},
                        {"q=%4", "?q", "hex digits"},
                        {"q=%zz", "?q", "hex digits"},
                        {"q=%-1", "?q", "hex digits"},
                        {"q=%ff", "?q", "UTF-8"},
                        {"q=a%00b", "?q", "0x00"},
                        {"q=" + std::string(20'001, 'x'), "?q", "at most 20000"},
                        {"%ff=x", "?", "malformed"},
                        {"=x", "?", "not a known parameter"}}) {
    const auto query = QueryString::parse(raw, "q state*");
    ASSERT_FALSE(query) << raw;
    EXPECT_EQ(query.error().code, ErrorCode::kInvalidInput) << raw;
    EXPECT_EQ(query.error().place, place) << raw;
    EXPECT_NE(query.error().message.find(reason), std::string::npos) << query.error().message;
  }
}

TEST(QueryString, NamesEveryParameterThatIsWrong) {
  const auto query = QueryString::parse("a=1&q=x&q=y&b=2", "q");
  ASSERT_FALSE(query);
  Texts places;
  for (const Problem& problem : query.error().problems) places.push_back(problem.place);
  EXPECT_EQ(places, (Texts{"?a", "?q", "?b"}));
}

TEST(QueryString, ARepeatableParameterGathersItsValues) {
  const auto query = QueryString::parse("state=open,waiting&state=ended", "state*");
  ASSERT_TRUE(query);
  QueryReader reader(*query);
  EXPECT_EQ(reader.names<CaseState>("state"),
            (std::set<CaseState>{CaseState::kOpen, CaseState::kWaiting, CaseState::kEnded}));
  EXPECT_TRUE(reader.finish());
}

TEST(QueryString, ReadsDaysNumbersAndFlags) {
  const auto query = QueryString::parse("day=2026-03-02&limit=200&full=true", "day limit full x");
  ASSERT_TRUE(query);
  QueryReader reader(*query);
  EXPECT_EQ(reader.day("day"), parse_date("2026-03-02").value());
  EXPECT_EQ(reader.whole("limit", 1, 200), 200);
  EXPECT_TRUE(reader.flag("full"));
  EXPECT_EQ(reader.day("x"), std::nullopt);
  EXPECT_EQ(reader.whole("x", 1, 2), std::nullopt);
  EXPECT_FALSE(reader.flag("x"));
  EXPECT_TRUE(reader.finish());
}

TEST(QueryString, RefusesValuesOfAnotherKind) {
  struct Row {
    std::string raw, place;
  };
  for (const auto& [raw, place] : std::vector<Row>{{"day=2026-02-30", "?day"},
                                                   {"day=yesterday", "?day"},
                                                   {"limit=0", "?limit"},
                                                   {"limit=201", "?limit"},
                                                   {"limit=-1", "?limit"},
                                                   {"limit=1.5", "?limit"},
                                                   {"limit=10x", "?limit"},
                                                   {"limit=99999999999999999999", "?limit"},
                                                   {"full=yes", "?full"},
                                                   {"full=1", "?full"},
                                                   {"state=opened", "?state"},
                                                   {"state=open,Waiting", "?state"}}) {
    const auto query = QueryString::parse(raw, "day limit full state*");
    ASSERT_TRUE(query) << raw;
    QueryReader reader(*query);
    (void)reader.day("day");
    (void)reader.whole("limit", 1, 200);
    (void)reader.flag("full");
    (void)reader.names<CaseState>("state");
    const auto finished = reader.finish();
    ASSERT_FALSE(finished) << raw;
    EXPECT_EQ(finished.error().place, place) << raw;
  }
}

TEST(QueryString, AQuestionIsTheSameInAnyOrderAndOnAnyPage) {
  const auto question = [](const std::string& raw) {
    return QueryString::parse(raw, "make state* limit cursor")->question();
  };
  EXPECT_EQ(question("make=a&state=open&limit=3"), question("state=open&cursor=x&make=a"));
  EXPECT_NE(question("make=a"), question("make=b"));
  EXPECT_NE(question("make=a"), question(""));
}

}  // namespace
}  // namespace shoplore
