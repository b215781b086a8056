// Diagnostic trouble codes in the form of SAE J2012 / ISO 15031-6: one letter, one digit 0 to 3,
// three hex digits, and at times a failure type of two hex digits.
//
// Knows the form and who controls a code, not what codes mean: the published descriptions are
// licensed, and a workshop's own notes on a code live in the vocabulary.
// Plain values and pure functions, any thread.
//
// What a failure type says is failure_type.hpp's, what a control unit says about a code's state is
// code_status_bits.hpp's.
//
// Two bytes: bits 15-14 the letter (00 P, 01 C, 10 B, 11 U), bits 13-12 the first digit, then
// three hex digits (ISO 15031-5). P0143 is 0x0143, U0073 is 0xC073. Three bytes: the same and the
// failure type (ISO 15031-6). B0039-10 is 0x803910.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "indexer/enum_names.hpp"
#include "indexer/result.hpp"

namespace shoplore {

enum class CodeLetter { kPowertrain, kChassis, kBody, kNetwork };
template <>
inline constexpr EnumTable<CodeLetter, 4> kEnumNames<CodeLetter>{
    {{CodeLetter::kPowertrain, "powertrain"},
     {CodeLetter::kChassis, "chassis"},
     {CodeLetter::kBody, "body"},
     {CodeLetter::kNetwork, "network"}}};

// Who gives a code its meaning: the standard, so that it says the same on every make, or the
// vehicle's maker. Sources disagree on C3, B3 and U3, which stay "reserved or unknown".
enum class CodeControl { kStandard, kManufacturer, kReservedOrUnknown };
template <>
inline constexpr EnumTable<CodeControl, 3> kEnumNames<CodeControl>{
    {{CodeControl::kStandard, "standard"},
     {CodeControl::kManufacturer, "manufacturer"},
     {CodeControl::kReservedOrUnknown, "reserved or unknown"}}};

// What a powertrain code is about, from its third character, in our words. Sources agree on 0 to 8;
// 9 and A to C are common knowledge; D to F are "reserved or unknown".
enum class CodeArea {
  kFuelAirAndEmissionControls,
  kFuelAndAir,
  kInjectorCircuits,
  kIgnitionOrMisfire,
  kEmissionControls,
  kSpeedIdleAndInputs,
  kControlUnitAndOutputs,
  kTransmission,
  kHybridDrive,
  kReservedOrUnknown
};
template <>
inline constexpr EnumTable<CodeArea, 10> kEnumNames<CodeArea>{
    {{CodeArea::kFuelAirAndEmissionControls, "fuel, air and added emission controls"},
     {CodeArea::kFuelAndAir, "fuel and air"},
     {CodeArea::kInjectorCircuits, "fuel and air, injector circuits"},
     {CodeArea::kIgnitionOrMisfire, "ignition or misfire"},
     {CodeArea::kEmissionControls, "added emission controls"},
     {CodeArea::kSpeedIdleAndInputs, "road speed, idle speed and added inputs"},
     {CodeArea::kControlUnitAndOutputs, "control unit and its outputs"},
     {CodeArea::kTransmission, "transmission"},
     {CodeArea::kHybridDrive, "hybrid or electric drive"},
     {CodeArea::kReservedOrUnknown, "reserved or unknown"}}};

struct FaultCode {
  std::uint16_t bytes = 0;                   // the two-byte form
  std::optional<std::uint8_t> failure_type;  // third byte, when it was given

  // "P0299": upper case, without the failure type.
  [[nodiscard]] std::string text() const;
  // "16", two upper-case hex digits; empty without one.
  [[nodiscard]] std::string failure_type_text() const;
  [[nodiscard]] CodeLetter letter() const;
  // P0, P2, P34 to P3F, C0, B0, U0 standard; P1, P30 to P33, C1, C2, B1, B2, U1, U2 manufacturer.
  [[nodiscard]] CodeControl control() const;
  // Of P0 and P2; of the standard's P3, "reserved or unknown". Empty for C, B and U, and for a
  // maker's codes, whose third character is the maker's own.
  [[nodiscard]] std::optional<CodeArea> area() const;
  // 0x803910 of B0039-10; empty without a failure type.
  [[nodiscard]] std::optional<std::uint32_t> three_bytes() const;

  friend bool operator==(const FaultCode&, const FaultCode&) = default;
};

// Reads "P0299", "p0299", "P 0299", "P-0299", "P0299-16" and "P0299:16". kInvalidInput says which
// character is wrong and what was expected there.
[[nodiscard]] Result<FaultCode> parse_fault_code(std::string_view text);

// The code of a two-byte form; every value is one.
[[nodiscard]] FaultCode fault_code_from_bytes(std::uint16_t bytes);

// The code of a three-byte form, the failure type in the lowest byte. Requires: below 0x1000000.
[[nodiscard]] FaultCode fault_code_from_three_bytes(std::uint32_t bytes);

}  // namespace shoplore
