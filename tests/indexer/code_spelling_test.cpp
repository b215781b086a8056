#include "indexer/code_spelling.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace shoplore {
namespace {

std::string full(const FaultCode& code) {
  return code.text() + (code.failure_type ? "-" + code.failure_type_text() : "");
}

std::vector<std::string> codes_in(std::string_view text) {
  std::vector<std::string> codes;
  for (const SpelledCode& each : find_codes(text)) codes.push_back(full(each.code));
  return codes;
}

using Codes = std::vector<std::string>;

TEST(CodeSpelling, OneCodeInEverySpelling) {
  struct Row {
    const char *text, *code, *words;
  };
  const Row table[] = {{"P0299", "P0299", "P0299"},
                       {"p0299", "P0299", "p0299"},
                       {"P 0299 flat", "P0299", "P 0299"},
                       {"P 0299 a whistle", "P0299", "P 0299"},
                       {"(P-0299)", "P0299", "P-0299"},
                       {"P0299-00", "P0299-00", "P0299-00"},
                       {"U0073:04.", "U0073-04", "U0073:04"},
                       {"P0299 FTB 16", "P0299-16", "P0299 FTB 16"},
                       {"P0299 16", "P0299", "P0299"},
                       {"P0299 - 16", "P0299", "P0299"},
                       {"DTC P0299", "P0299", "P0299"},
                       {"P2015", "P2015", "P2015"},
                       {"P 2015", "P2015", "P 2015"},
                       {"c0035", "C0035", "c0035"},
                       {"PO299", "P0299", "PO299"},
                       {"po2o1", "P0201", "po2o1"},
                       {"P00AF", "P00AF", "P00AF"}};
  for (const Row& row : table) {
    const auto found = find_codes(row.text);
    ASSERT_EQ(found.size(), 1U) << row.text;
    EXPECT_EQ(full(found[0].code), row.code) << row.text;
    const Span span = found[0].span;
    EXPECT_EQ(std::string(row.text).substr(span.begin, span.end - span.begin), row.words);
  }
}

TEST(CodeSpelling, WhatIsNoCode) {
  for (const char* text :
       {"P02G9",      "XP0299",    "P02991",    "P4299", "P029",  "P  0299",
        "C 2016",     "PO 1234",   "P O299",    "COCOA", "CODED", "BOOED",
        "PO2G9",      "0299",      "",          "P",     "P 0",   "coolant 80 C 1200 rpm",
        "C 1200 rpm", "b 1500 mm", "B 1000 km", "CO2",   "UO1"}) {
    EXPECT_EQ(codes_in(text), Codes{}) << text;
  }
}

TEST(CodeSpelling, ListsWithoutTheLetter) {
  const std::pair<const char*, Codes> rows[] = {
      {"P0299/P0234,P0301 P0299", {"P0299", "P0234", "P0301", "P0299"}},
      {"P0299/0234", {"P0299", "P0234"}},
      {"P0299,0234, 0401", {"P0299", "P0234", "P0401"}},
      {"P0299 & 0234", {"P0299", "P0234"}},
      {"U0073/0100", {"U0073", "U0100"}},
      {"P0171/174", {"P0171", "P0174"}},
      {"P0301 / 302 / 303", {"P0301", "P0302", "P0303"}},
      {"P0301/2/3", {"P0301", "P0302", "P0303"}},
      {"P0171/4 lean", {"P0171", "P0174"}}};
  for (const auto& [text, codes] : rows) EXPECT_EQ(codes_in(text), codes) << text;
}

TEST(CodeSpelling, WhatFollowsACodeAndIsNone) {
  for (const char* text :
       {"P0299, 2016 Tidal", "P0299 0234", "P0299, 1500 rpm", "P0299/1", "P0299-16/4", "P0171/4 V",
        "P0171/4.5", "P0299, 02345", "P0299,0.4 ohm", "P0299/16d", "P0301 / 2", "P0299 and 0234"}) {
    EXPECT_EQ(codes_in(text).size(), 1U) << text;
  }
}

TEST(CodeSpelling, SaysHowItReadWhatIsNotSpeltInFull) {
  EXPECT_EQ(find_codes("PO299").at(0).reading_chosen, "'PO299' taken as P0299 (letter O for zero)");
  EXPECT_EQ(find_codes("P0299/0234").at(1).reading_chosen, "'0234' after P0299 taken as P0234");
  EXPECT_EQ(find_codes("P0171/174").at(1).reading_chosen, "'174' after P0171 taken as P0174");
  EXPECT_EQ(find_codes("P0299-16").at(0).reading_chosen, "");
}

TEST(CodeSpelling, OnlyJoiningSignsMakeAList) {
  EXPECT_TRUE(are_listed("P0299, P0234", {0, 5}, {7, 12}));
  EXPECT_TRUE(are_listed("P0299 and P0234", {0, 5}, {10, 15}));
  EXPECT_FALSE(are_listed("P0299; P0234", {0, 5}, {7, 12}));
  EXPECT_FALSE(are_listed("P0299 but P0234", {0, 5}, {10, 15}));
  EXPECT_FALSE(are_listed("P0299\nP0234", {0, 5}, {6, 11}));
}

}  // namespace
}  // namespace shoplore
