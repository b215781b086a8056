// Replies of SAE J1979 services 03, 07 and 0A as others printed them.
//
// SAE J1979 and ISO 15031-5 are not openly published: values are those that openly readable pages
// quote, or from memory where that is said.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "indexer/scan_bytes.hpp"

namespace shoplore {
namespace {

struct Row {
  const char* bytes;
  CodeStatus status;
  std::vector<std::string> codes;
  const char* source;
};

TEST(ScanBytesOutside, RepliesAreTheCodesOthersReadInThem) {
  const Row table[] = {
      {"43 01 01 43", CodeStatus::kStored, {"P0143"}, "ISO 15031-5 Figure 19, as quoted: on CAN"},
      {"43 01 33 00 00 00 00",
       CodeStatus::kStored,
       {"P0133"},
       "from memory: the usual example of adapter manuals, older protocols"},
      {"00E\n0: 43 06 01 43 01 35\n1: 01 27 80 39 40 31 C0\n2: 73 00 00 00 00 00 00",
       CodeStatus::kStored,
       {"P0143", "P0135", "P0127", "B0039", "C0031", "U0073"},
       "codes: examples of ISO 15031-5/-6, as quoted; framing of ISO 15765-2 from memory"},
      {"48 6B 10 43 01 33 00 00 00 00 3A",
       CodeStatus::kStored,
       {"P0133"},
       "header and sum of ISO 9141-2, from memory"},
      {"48 6B 10 43 01 33 00 00 00 00 67",
       CodeStatus::kStored,
       {"P0133"},
       "header of SAE J1850, from memory; CRC-8/SAE-J1850, whose check value of 123456789 is 4B"},
      {"47 01 01 43", CodeStatus::kPending, {"P0143"}, "reply of service 07 = 0x40 + 0x07"},
      {"4A 01 01 43", CodeStatus::kPermanent, {"P0143"}, "reply of service 0A = 0x40 + 0x0A"}};
  for (const Row& row : table) {
    const auto replies = find_code_replies(row.bytes);
    ASSERT_EQ(replies.size(), 1U) << row.bytes;
    EXPECT_EQ(replies[0].status, row.status) << row.bytes << ", " << row.source;
    std::vector<std::string> codes;
    for (const ReplyCode& each : replies[0].codes) codes.push_back(each.code.text());
    EXPECT_EQ(codes, row.codes) << row.bytes << ", " << row.source;
  }
}

}  // namespace
}  // namespace shoplore
