// The two-byte form of fault codes and who controls them, against quotations of the standards.
//
// SAE J2012, ISO 15031-5, ISO 15031-6 and ISO 14229-1 are not openly published: the values are
// those that openly readable pages quote from them.
#include <gtest/gtest.h>

#include "indexer/code_status_bits.hpp"
#include "indexer/failure_type.hpp"
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

TEST(FaultCodeOutside, ThreeByteFormHoldsTheFailureTypeLast) {
  // Examples of ISO 15031-6 as openly readable pages quote them.
  const std::pair<const char*, std::uint32_t> rows[] = {{"P0127-00", 0x012700},
                                                        {"B0039-10", 0x803910},
                                                        {"C0031-23", 0x403123},
                                                        {"U0073-04", 0xC07304},
                                                        {"B1000-16", 0x900016}};
  for (const auto& [text, bytes] : rows) {
    const auto code = parse_fault_code(text);
    ASSERT_TRUE(code) << text;
    EXPECT_EQ(code->three_bytes(), bytes) << text;
    EXPECT_EQ(fault_code_from_three_bytes(bytes), *code) << text;
  }
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

TEST(FaultCodeOutside, ThirdCharacterNamesTheArea) {
  // 0 to 8: openly readable descriptions of SAE J2012. 9 and A to F: from memory.
  using enum CodeArea;
  const std::pair<const char*, CodeArea> rows[] = {{"P0001", kFuelAirAndEmissionControls},
                                                   {"P0171", kFuelAndAir},
                                                   {"P0299", kInjectorCircuits},
                                                   {"P0301", kIgnitionOrMisfire},
                                                   {"P0420", kEmissionControls},
                                                   {"P0500", kSpeedIdleAndInputs},
                                                   {"P0606", kControlUnitAndOutputs},
                                                   {"P0700", kTransmission},
                                                   {"P0841", kTransmission},
                                                   {"P0900", kTransmission},
                                                   {"P0A0F", kHybridDrive},
                                                   {"P0B00", kHybridDrive},
                                                   {"P0C00", kHybridDrive},
                                                   {"P0D00", kReservedOrUnknown},
                                                   {"P0E00", kReservedOrUnknown},
                                                   {"P0F00", kReservedOrUnknown},
                                                   {"P2263", kInjectorCircuits},
                                                   {"P2004", kFuelAirAndEmissionControls}};
  for (const auto& [text, area] : rows) EXPECT_EQ(parse_fault_code(text)->area(), area) << text;
}

TEST(FaultCodeOutside, FailureTypesGroupByTheirHighNibble) {
  // 0 to 7: openly readable descriptions of ISO 15031-6. 8 to F: from memory.
  using enum FailureTypeGroup;
  const std::pair<int, FailureTypeGroup> rows[] = {{0x00, kGeneral},
                                                   {0x0F, kGeneral},
                                                   {0x11, kElectrical},
                                                   {0x16, kElectrical},
                                                   {0x23, kSignal},
                                                   {0x31, kPulses},
                                                   {0x42, kInternal},
                                                   {0x51, kProgramming},
                                                   {0x62, kAlgorithm},
                                                   {0x71, kMechanical},
                                                   {0x87, kBus},
                                                   {0x92, kComponent},
                                                   {0xA0, kReservedOrUnknown},
                                                   {0xF0, kReservedOrUnknown},
                                                   {0xFF, kReservedOrUnknown}};
  for (const auto& [byte, group] : rows) {
    EXPECT_EQ(failure_type_group(static_cast<std::uint8_t>(byte)), group) << byte;
  }
}

TEST(FaultCodeOutside, StatusBitsAreThoseOfTheStandard) {
  // ISO 14229-1, statusOfDTC, as openly readable source code documents it.
  const std::pair<int, const char*> rows[] = {{0x01, "failing now"},
                                              {0x02, "failed this cycle"},
                                              {0x04, "pending"},
                                              {0x08, "confirmed"},
                                              {0x10, "not tested since cleared"},
                                              {0x20, "failed since cleared"},
                                              {0x40, "not tested this cycle"},
                                              {0x80, "warning light requested"}};
  for (const auto& [byte, text] : rows) {
    EXPECT_EQ(text_of_status(static_cast<std::uint8_t>(byte)), text) << byte;
  }
}

}  // namespace
}  // namespace shoplore
