// The two-byte form of fault codes and who controls them, against quotations of the standards.
//
// SAE J2012, ISO 15031-5, ISO 15031-6 and ISO 14229-1 are not openly published: the values are
// those that openly readable pages quote from them.
#include <gtest/gtest.h>

#include "indexer/fault_code.hpp"

namespace shoplore {
namespace {

struct BytesRow {
  const char* text;
  std::uint16_t bytes;
  const char* source;
};

constexpr BytesRow kBytes[] = {{"P0143", 0x0143, "ISO 15031-5 Figure 19, as quoted"},
                               {"P0127", 0x0127, "ISO 15031-6 example 0x012700, as quoted"},
                               {"B0039", 0x8039, "ISO 15031-6 example 0x803910, as quoted"},
                               {"C0031", 0x4031, "ISO 15031-6 example 0x403123, as quoted"},
                               {"U0073", 0xC073, "example 0xC07304, as quoted"},
                               {"B1000", 0x9000, "example 0x900016, as quoted"},
                               {"P0135", 0x0135, "openly published example"},
                               {"P0133", 0x0133, "derived from the layout"},
                               {"U0158", 0xC158, "derived from the layout"},
                               {"B1234", 0x9234, "derived from the layout"},
                               {"C0240", 0x4240, "derived from the layout"},
                               {"P3000", 0x3000, "derived from the layout"},
                               {"P33FF", 0x33FF, "derived from the layout"},
                               {"P3400", 0x3400, "derived from the layout"},
                               {"P3FFF", 0x3FFF, "derived from the layout"},
                               {"U3FFF", 0xFFFF, "derived from the layout"},
                               {"P0000", 0x0000, "derived from the layout"},
                               {"P0A0F", 0x0A0F, "derived from the layout"}};

TEST(FaultCodeOutside, TwoByteFormIsTheStandards) {
  for (const BytesRow& row : kBytes) {
    const auto code = parse_fault_code(row.text);
    ASSERT_TRUE(code) << row.text;
    EXPECT_EQ(code->bytes, row.bytes) << row.text << ", " << row.source;
    EXPECT_EQ(fault_code_from_bytes(row.bytes).text(), row.text) << row.source;
  }
}

TEST(FaultCodeOutside, ThirdByteIsTheFailureType) {
  // Examples of ISO 15031-6 as quoted: 803910, 403123, 012700 and 900016.
  EXPECT_EQ(parse_fault_code("B0039-10")->failure_type, 0x10);
  EXPECT_EQ(parse_fault_code("C0031-23")->failure_type, 0x23);
  EXPECT_EQ(parse_fault_code("P0127-00")->failure_type, 0x00);
  EXPECT_EQ(parse_fault_code("B1000-16")->failure_type, 0x16);
}

TEST(FaultCodeOutside, WhoControlsACodeFollowsItsFirstDigits) {
  // Openly readable descriptions of the category bits of ISO 15031-6. They differ on C3, B3 and
  // U3, which are therefore neither.
  const std::pair<const char*, CodeControl> rows[] = {
      {"P0299", CodeControl::kStandard},          {"P1299", CodeControl::kManufacturer},
      {"P2002", CodeControl::kStandard},          {"P3000", CodeControl::kManufacturer},
      {"P33FF", CodeControl::kManufacturer},      {"P3400", CodeControl::kStandard},
      {"P3FFF", CodeControl::kStandard},          {"C0031", CodeControl::kStandard},
      {"B0039", CodeControl::kStandard},          {"U0073", CodeControl::kStandard},
      {"C1000", CodeControl::kManufacturer},      {"B1000", CodeControl::kManufacturer},
      {"U1000", CodeControl::kManufacturer},      {"C2000", CodeControl::kManufacturer},
      {"B2000", CodeControl::kManufacturer},      {"U2000", CodeControl::kManufacturer},
      {"C3000", CodeControl::kReservedOrUnknown}, {"B3000", CodeControl::kReservedOrUnknown},
      {"U3000", CodeControl::kReservedOrUnknown}};
  for (const auto& [text, control] : rows) {
    EXPECT_EQ(parse_fault_code(text)->control(), control) << text;
  }
}

}  // namespace
}  // namespace shoplore
