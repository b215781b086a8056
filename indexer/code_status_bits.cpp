#include "indexer/code_status_bits.hpp"

namespace shoplore {

bool has_bit(std::uint8_t status, StatusBit bit) {
  return (status & static_cast<std::uint8_t>(bit)) != 0;
}

std::vector<StatusBit> bits_of(std::uint8_t status) {
  std::vector<StatusBit> bits;
  for (const auto& [bit, name] : kEnumNames<StatusBit>) {
    if (has_bit(status, bit)) bits.push_back(bit);
  }
  return bits;
}

std::string text_of_status(std::uint8_t status) {
  std::string text;
  for (const StatusBit bit : bits_of(status)) {
    if (!text.empty()) text += ", ";
    text += name_of(bit);
  }
  return text.empty() ? "no bit set" : text;
}

std::optional<CodeStatus> code_status(std::uint8_t status) {
  if (has_bit(status, StatusBit::kTestFailed)) return CodeStatus::kActive;
  if (has_bit(status, StatusBit::kConfirmed)) return CodeStatus::kStored;
  if (has_bit(status, StatusBit::kPending) || has_bit(status, StatusBit::kFailedThisCycle)) {
    return CodeStatus::kPending;
  }
  if (has_bit(status, StatusBit::kFailedSinceClear)) return CodeStatus::kHistory;
  return std::nullopt;
}

}  // namespace shoplore
