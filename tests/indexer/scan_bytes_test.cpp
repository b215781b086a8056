#include "indexer/scan_bytes.hpp"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

namespace shoplore {
namespace {

// "P0143", "P0135 pending"; replies without codes are "none".
std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  for (const CodeReply& reply : find_code_replies(text)) {
    const std::string status =
        reply.status == CodeStatus::kStored ? "" : " " + std::string(name_of(reply.status));
    if (reply.codes.empty()) lines.push_back("none" + status);
    for (const ReplyCode& each : reply.codes) lines.push_back(each.code.text() + status);
  }
  return lines;
}

using Lines = std::vector<std::string>;

TEST(ScanBytes, RepliesAsAdaptersPrintThem) {
  const std::pair<const char*, Lines> rows[] = {
      {"43 01 01 43", {"P0143"}},
      {"43 02 01 43 01 35", {"P0143", "P0135"}},
      {"43 02 01 43 C0 73", {"P0143", "U0073"}},
      {"43 00", {"none"}},
      {"47 00", {"none pending"}},
      {"43 01 33 02 99 00 00", {"P0133", "P0299"}},
      {"43 00 00 00 00 00 00", {"none"}},
      {"43 01 33 02 99 03 01\n43 03 02 00 00 00 00", {"P0133", "P0299", "P0301", "P0302"}},
      {"43010143\r\n", {}},
      {"mode 03: 43010143", {"P0143"}},
      {"43 01 01 43\r\n47 01 01 35\r\n4A 00", {"P0143", "P0135 pending", "none permanent"}},
      {"43020143C073", {"P0143", "U0073"}},
      {"43013302990000", {"P0133", "P0299"}},
      {"03 43 01 01 43", {"P0143"}},
      {"03 -> 43 00", {"none"}},
      {"> 03\n43 01 01 43", {"P0143"}},
      {"raw 43 01 01 43, flat uphill", {"P0143"}},
      {"flat uphill; 43 01 01 43", {"P0143"}},
      {"7E8 06 43 02 01 43 01 35", {"P0143", "P0135"}},
      {"7E8 06 43 02 01 43 01 35 AA", {"P0143", "P0135"}},
      {"7E8 04 43 01 01 43 55 55 55", {"P0143"}},
      {"7E8 43 01 01 43", {"P0143"}},
      {"04 43 01 01 43 00 00 00", {"P0143"}},
      {"7E8064302014301350000", {}},
      {"7E80643020143013500", {"P0143", "P0135"}},
      {"7E8 02 43 00\n7E9 04 43 01 01 35", {"none", "P0135"}},
      {"18 DA F1 10 04 43 01 01 43", {"P0143"}},
      {"18DAF110 04 43 01 01 43", {"P0143"}},
      {"87 F1 10 43 01 33 00 00 00 00 FF", {"P0133"}},
      {"7E8 10 0A 43 04 01 43 01 35\n7E8 21 02 99 03 01 00 00 00",
       {"P0143", "P0135", "P0299", "P0301"}},
      {"7E8 10 0A 43 04 01 43 01 35\n7E9 02 43 00\n7E8 21 02 99 03 01 00 00 00",
       {"none", "P0143", "P0135", "P0299", "P0301"}},
      {"00A\n0:430401430135\n1:02990301000000", {"P0143", "P0135", "P0299", "P0301"}}};
  for (const auto& [text, lines] : rows) EXPECT_EQ(lines_of(text), lines) << text;
}

TEST(ScanBytes, WhatIsNoReply) {
  for (const char* text : {"43 mm 10",
                           "43",
                           "43 10",
                           "43 mm",
                           "43 02 01 43",
                           "43 01 01 43 01",
                           "43 01 01",
                           "41 0C 1A F8",
                           "flat, 43 00, uphill",
                           "43010143",
                           "48 6B 10 43 01 33 00 00 00 00 3B",
                           "43 01 AA AA",
                           "43 01 33 AA AA AA AA",
                           "7E8 06 43 02 01 43",
                           "7E8 06 43 03 01 43 01 35",
                           "0: 43 06 01 43 01 35\n1: 01 71",
                           "00E\n0: 43 06 01 43 01 35",
                           "00A\n1: 43 04 01 43 01 35\n0: 02 99 03 01 00 00 00",
                           "00A\n0: 43 04 01 43 01 35\n2: 02 99 03 01 00 00 00",
                           "cylinders 43 01 01 43 kPa",
                           "47 11 08 15 16",
                           "",
                           ":",
                           "7E8",
                           "7E8 00",
                           "7E8 10"}) {
    EXPECT_EQ(lines_of(text), Lines{}) << text;
  }
}

TEST(ScanBytes, EveryListOfCodesReadsBack) {
  constexpr std::uint64_t kSeed = 7;
  std::mt19937_64 random(kSeed);
  for (int round = 0; round < 300; ++round) {
    std::vector<std::string> codes;
    std::string bytes;
    const auto add = [&](unsigned value) {
      constexpr std::string_view kDigits = "0123456789ABCDEF";
      for (const unsigned each : {value >> 4U, value & 15U}) bytes += kDigits[each];
      bytes += ' ';
    };
    const std::size_t n = random() % 30;
    add(0x43);
    add(static_cast<unsigned>(n));
    for (std::size_t i = 0; i < n; ++i) {
      const auto value = static_cast<std::uint16_t>(1 + random() % 0x5554);  // no filling
      codes.push_back(fault_code_from_bytes(value).text());
      add(value >> 8U);
      add(value & 0xFFU);
    }
    if (n == 0) codes = {"none"};
    ASSERT_EQ(lines_of(bytes), codes) << "seed " << kSeed << ", " << bytes;
  }
}

TEST(ScanBytes, CodesPointAtTheirBytes) {
  const std::string text = "raw: 43 02 01 43 C0 73";
  const auto replies = find_code_replies(text);
  ASSERT_EQ(replies.size(), 1U);
  const ByteRange at = replies[0].codes.at(1).at;
  EXPECT_EQ(text.substr(at.begin, at.end - at.begin), "C0 73");
  EXPECT_EQ(replies[0].form, ReplyForm::kCounted);
}

}  // namespace
}  // namespace shoplore
