#include "indexer/scan_bytes_reader.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/code_lines.hpp"

namespace shoplore {
namespace {

using Lines = std::vector<std::string>;

TEST(ScanBytesReader, AReplyGivesCodesWithTheStatusOfItsService) {
  const std::string text = "flat uphill\n43 02 02 99 C0 73\n47 01 01 43\n4A 00";
  EXPECT_EQ(code_lines_of(text), (Lines{"P0299 stored", "U0073 stored", "P0143 pending"}));
  EXPECT_EQ(other_lines_of(text), (Lines{"symptom lack_of_power", "condition uphill"}));
  EXPECT_EQ(leftover_of(text), Lines{});
}

TEST(ScanBytesReader, SaysOnceHowTheBytesWereRead) {
  const auto counted = built_in_recogniser().recognise("43 02 02 99 C0 73").items;
  EXPECT_EQ(counted.at(0).reading_chosen,
            "bytes taken as a reply with stored codes: the second byte counts them");
  EXPECT_EQ(counted.at(1).reading_chosen, "");
  EXPECT_EQ(built_in_recogniser().recognise("47 01 33 00 00 00 00").items.at(0).reading_chosen,
            "bytes taken as a reply with pending codes: three of two bytes each, no count");
}

TEST(ScanBytesReader, OnlyServiceThreeSaysThatThereAreNone) {
  EXPECT_EQ(code_lines_of("43 00"), Lines{"no_codes"});
  EXPECT_EQ(code_lines_of("47 00"), Lines{});
  EXPECT_EQ(code_lines_of("4A 00"), Lines{});
}

TEST(ScanBytesReader, BadBytesAreLeftOver) {
  EXPECT_EQ(code_lines_of("43 02 01 43"), Lines{});
  EXPECT_EQ(leftover_of("43 02 01 43").size(), 4U);
  EXPECT_EQ(code_lines_of("gap 43 mm 10"), Lines{});
}

}  // namespace
}  // namespace shoplore
