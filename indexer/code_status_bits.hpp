// The status byte that a control unit gives with a fault code (ISO 14229-1, statusOfDTC).
//
// Says which bits are set and which of our statuses they come to; knows nothing of when a bit is
// set. Plain values and pure functions, any thread.
//
// A record keeps one status a code (case_record.hpp), so the bits are asked in this order:
// | bits                                        | status  | because                            |
// |---------------------------------------------|---------|------------------------------------|
// | test failed                                 | active  | it is failing at this moment       |
// | confirmed                                   | stored  | that is what a tool lists as stored|
// | pending, or failed in this operation cycle  | pending | seen, not yet often enough         |
// | failed since last clear                     | history | it was there once                  |
// | none of these                               | none    | nothing has failed                 |
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "indexer/case_record.hpp"

namespace shoplore {

enum class StatusBit : std::uint8_t {
  kTestFailed = 0x01,
  kFailedThisCycle = 0x02,
  kPending = 0x04,
  kConfirmed = 0x08,
  kNotTestedSinceClear = 0x10,
  kFailedSinceClear = 0x20,
  kNotTestedThisCycle = 0x40,
  kWarningLightRequested = 0x80
};
template <>
inline constexpr EnumTable<StatusBit, 8> kEnumNames<StatusBit>{
    {{StatusBit::kTestFailed, "failing now"},
     {StatusBit::kFailedThisCycle, "failed this cycle"},
     {StatusBit::kPending, "pending"},
     {StatusBit::kConfirmed, "confirmed"},
     {StatusBit::kNotTestedSinceClear, "not tested since cleared"},
     {StatusBit::kFailedSinceClear, "failed since cleared"},
     {StatusBit::kNotTestedThisCycle, "not tested this cycle"},
     {StatusBit::kWarningLightRequested, "warning light requested"}}};

[[nodiscard]] bool has_bit(std::uint8_t status, StatusBit bit);

// Lowest bit first.
[[nodiscard]] std::vector<StatusBit> bits_of(std::uint8_t status);

// "pending, confirmed"; "no bit set" of 0.
[[nodiscard]] std::string text_of_status(std::uint8_t status);

// As the table above; empty when the byte says that nothing has failed.
[[nodiscard]] std::optional<CodeStatus> code_status(std::uint8_t status);

}  // namespace shoplore
