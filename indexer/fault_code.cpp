#include "indexer/fault_code.hpp"

#include <fmt/format.h>

#include <array>
#include <cassert>

namespace shoplore {
namespace {

constexpr std::string_view kLetters = "PCBU";  // in the order of bits 15-14

std::optional<unsigned> hex_value(char c) {
  if (c >= '0' && c <= '9') return static_cast<unsigned>(c - '0');
  if (c >= 'A' && c <= 'F') return static_cast<unsigned>(c - 'A' + 10);
  if (c >= 'a' && c <= 'f') return static_cast<unsigned>(c - 'a' + 10);
  return std::nullopt;
}

tl::unexpected<Error> refuse(std::string_view code, std::string_view why) {
  return fail(ErrorCode::kInvalidInput, "", fmt::format("'{}' is not a fault code: {}", code, why));
}

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

bool is_separator(char c) {
  return c == ' ' || c == '-';
}

// The failure type after the five characters: "-16" or ":16".
Result<std::uint8_t> parse_failure_type(std::string_view code, std::string_view rest) {
  const bool marked = rest.front() == '-' || rest.front() == ':';
  const std::string_view digits = marked ? rest.substr(1) : rest;
  const auto high = digits.size() == 2 ? hex_value(digits[0]) : std::nullopt;
  const auto low = digits.size() == 2 ? hex_value(digits[1]) : std::nullopt;
  if (!marked || !high || !low) {
    return refuse(code,
                  "after the five characters expected nothing, or a failure type of two "
                  "hex digits as in P0299-16");
  }
  return static_cast<std::uint8_t>(*high * 16 + *low);
}

}  // namespace

std::string FaultCode::text() const {
  return fmt::format("{}{}{:03X}", kLetters[bytes >> 14], (bytes >> 12) & 3, bytes & 0xFFF);
}

std::string FaultCode::failure_type_text() const {
  return failure_type ? fmt::format("{:02X}", *failure_type) : "";
}

CodeLetter FaultCode::letter() const {
  switch (bytes >> 14) {
    case 0:
      return CodeLetter::kPowertrain;
    case 1:
      return CodeLetter::kChassis;
    case 2:
      return CodeLetter::kBody;
    default:
      return CodeLetter::kNetwork;
  }
}

CodeControl FaultCode::control() const {
  const int first_digit = (bytes >> 12) & 3;
  if (first_digit == 0) return CodeControl::kStandard;
  if (first_digit == 1) return CodeControl::kManufacturer;
  if (letter() != CodeLetter::kPowertrain) {
    return first_digit == 2 ? CodeControl::kManufacturer : CodeControl::kReservedOrUnknown;
  }
  if (first_digit == 2) return CodeControl::kStandard;
  return (bytes & 0xFFF) < 0x400 ? CodeControl::kManufacturer : CodeControl::kStandard;
}

std::optional<CodeArea> FaultCode::area() const {
  if (letter() != CodeLetter::kPowertrain || control() != CodeControl::kStandard) {
    return std::nullopt;
  }
  using enum CodeArea;
  constexpr std::array<CodeArea, 16> kAreas{kFuelAirAndEmissionControls,
                                            kFuelAndAir,
                                            kInjectorCircuits,
                                            kIgnitionOrMisfire,
                                            kEmissionControls,
                                            kSpeedIdleAndInputs,
                                            kControlUnitAndOutputs,
                                            kTransmission,
                                            kTransmission,
                                            kTransmission,
                                            kHybridDrive,
                                            kHybridDrive,
                                            kHybridDrive,
                                            kReservedOrUnknown,
                                            kReservedOrUnknown,
                                            kReservedOrUnknown};
  const bool is_p3 = ((bytes >> 12) & 3) == 3;
  return is_p3 ? kReservedOrUnknown : kAreas[(bytes >> 8) & 0xF];
}

std::optional<std::uint32_t> FaultCode::three_bytes() const {
  if (!failure_type) return std::nullopt;
  return static_cast<std::uint32_t>(bytes) << 8U | *failure_type;
}

Result<FaultCode> parse_fault_code(std::string_view text) {
  const std::string_view code = trimmed(text);
  if (code.empty()) return fail(ErrorCode::kInvalidInput, "", "a fault code is empty");
  const char upper = code[0] >= 'a' ? static_cast<char>(code[0] - 'a' + 'A') : code[0];
  const auto letter = kLetters.find(upper);
  if (letter == kLetters.npos) return refuse(code, "expected P, C, B or U first");

  std::string_view digits = code.substr(1);
  if (!digits.empty() && is_separator(digits.front())) digits.remove_prefix(1);
  if (digits.size() < 4) return refuse(code, "expected four digits after the letter");
  unsigned bytes = static_cast<unsigned>(letter) << 14;
  for (std::size_t i = 0; i < 4; ++i) {
    const auto value = hex_value(digits[i]);
    if (i == 0 && (!value || *value > 3)) {
      return refuse(code, fmt::format("expected 0 to 3 after the letter, found '{}'", digits[i]));
    }
    if (!value) {
      return refuse(code, fmt::format("'{}' is not a hex digit (0-9, A-F)", digits[i]));
    }
    bytes |= *value << (12 - 4 * i);
  }
  FaultCode parsed = fault_code_from_bytes(static_cast<std::uint16_t>(bytes));
  const std::string_view rest = digits.substr(4);
  if (rest.empty()) return parsed;
  const auto failure_type = parse_failure_type(code, rest);
  if (!failure_type) return fail(failure_type.error());
  parsed.failure_type = *failure_type;
  return parsed;
}

FaultCode fault_code_from_bytes(std::uint16_t bytes) {
  return FaultCode{bytes, std::nullopt};
}

FaultCode fault_code_from_three_bytes(std::uint32_t bytes) {
  assert(bytes <= 0xFFFFFF);
  return FaultCode{static_cast<std::uint16_t>(bytes >> 8U),
                   static_cast<std::uint8_t>(bytes & 0xFFU)};
}

}  // namespace shoplore
