#include "api/cli/practice_line.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::HasSubstr;
using Kind = PracticeLine::Kind;
using Said = std::vector<std::pair<std::string, double>>;

Said said(const PracticeLine& line) {
  Said out;
  for (const StatedBelief& each : line.beliefs) out.emplace_back(each.cause, each.percent);
  return out;
}

TEST(PracticeLine, BeliefsAreNumbersWithCauses) {
  const std::vector<std::pair<const char*, Said>> rows{
      {"60 wastegate linkage seized open, 30 turbo vanes sticking",
       {{"wastegate linkage seized open", 60}, {"turbo vanes sticking", 30}}},
      {"60 wastegate linkage, seized open, 30 turbo vanes, sticking",
       {{"wastegate linkage, seized open", 60}, {"turbo vanes, sticking", 30}}},
      {" 12.5% hose split; 7 % hose off ", {{"hose split", 12.5}, {"hose off", 7}}},
      {"-5 hose", {{"hose", -5}}},
      {"120 hose", {{"hose", 120}}},
      {".5 hose,0 vanes", {{"hose", .5}, {"vanes", 0}}}};
  for (const auto& [text, expected] : rows) {
    const auto line = parse_practice_line(text);
    ASSERT_TRUE(line) << text;
    EXPECT_EQ(line->kind, Kind::kBelief) << text;
    EXPECT_EQ(said(*line), expected) << text;
  }
}

TEST(PracticeLine, ABareNumberIsAnAnswer) {
  for (const char* text : {"2", " 2 ", "commit 2", "2 %", "2%"}) {
    const auto line = parse_practice_line(text);
    ASSERT_TRUE(line) << text;
    EXPECT_EQ(line->kind, Kind::kNumber) << text;
    EXPECT_EQ(line->number, 2) << text;
  }
}

TEST(PracticeLine, WordsBeginTheOtherLines) {
  const std::vector<std::tuple<const char*, Kind, const char*>> rows{
      {"check move the linkage by hand", Kind::kCheck, "move the linkage by hand"},
      {"Check  x", Kind::kCheck, "x"},
      {"check", Kind::kCheck, ""},
      {"commit wastegate linkage, seized open", Kind::kCommit, "wastegate linkage, seized open"},
      {"causes", Kind::kCauses, ""},
      {"checks boost", Kind::kChecks, "boost"},
      {"show", Kind::kShow, ""},
      {"help\r", Kind::kHelp, ""},
      {"next", Kind::kNext, ""},
      {"stop", Kind::kStop, ""}};
  for (const auto& [text, kind, words] : rows) {
    const auto line = parse_practice_line(text);
    ASSERT_TRUE(line) << text;
    EXPECT_EQ(line->kind, kind) << text;
    EXPECT_EQ(line->words, words) << text;
  }
}

TEST(PracticeLine, WhatIsNoLineIsAnsweredWithWhatIs) {
  const std::vector<std::pair<const char*, const char*>> rows{
      {"", "not understood"},
      {"nan hose", "\"nan hose\" was not understood"},
      {"sixty hose", "begin with a percentage"},
      {"60 hose, 30", "expected a cause after \"30\""},
      {"1.2.3 hose", "does not begin with a number"},
      {"60x hose", "does not begin with a number"}};
  for (const auto& [text, says] : rows) {
    const auto line = parse_practice_line(text);
    ASSERT_FALSE(line) << text;
    EXPECT_EQ(line.error().code, ErrorCode::kInvalidInput);
    EXPECT_THAT(line.error().message, HasSubstr(says)) << text;
  }
}

}  // namespace
}  // namespace shoplore
