#include "indexer/code_status_bits.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

TEST(CodeStatusBits, TheSurestBitGivesTheStatus) {
  const std::pair<int, std::optional<CodeStatus>> rows[] = {
      {0x00, std::nullopt},          // nothing set
      {0x50, std::nullopt},          // not tested at all
      {0x80, std::nullopt},          // a lamp alone is no failure
      {0x01, CodeStatus::kActive},   // failing now
      {0x2F, CodeStatus::kActive},   // failing now, confirmed, pending
      {0x08, CodeStatus::kStored},   // confirmed
      {0x2C, CodeStatus::kStored},   // confirmed and pending, passing now
      {0x28, CodeStatus::kStored},   // confirmed, failed since cleared
      {0x04, CodeStatus::kPending},  // pending
      {0x26, CodeStatus::kPending},  // failed this cycle, pending
      {0x02, CodeStatus::kPending},  // failed this cycle
      {0x20, CodeStatus::kHistory},  // failed once since cleared
      {0x60, CodeStatus::kHistory}};
  for (const auto& [byte, status] : rows) {
    EXPECT_EQ(code_status(static_cast<std::uint8_t>(byte)), status) << byte;
  }
}

TEST(CodeStatusBits, TextNamesEveryBitSet) {
  EXPECT_EQ(text_of_status(0x00), "no bit set");
  EXPECT_EQ(text_of_status(0x0C), "pending, confirmed");
  EXPECT_EQ(bits_of(0xFF).size(), 8U);
  EXPECT_EQ(bits_of(0x81),
            (std::vector<StatusBit>{StatusBit::kTestFailed, StatusBit::kWarningLightRequested}));
}

}  // namespace
}  // namespace shoplore
