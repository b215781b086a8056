// The failure type byte of a fault code: what is wrong with the thing the code names.
//
// Knows the group that the high nibble gives (ISO 15031-6, SAE J2012), in our words, and not the
// published texts of single values, which are licensed.
// Plain values and pure functions, any thread.
//
// | high nibble | group                                   | source                           |
// |-------------|-----------------------------------------|----------------------------------|
// | 0 to 7      | general to mechanical, in the order of  | openly readable descriptions of  |
// |             | the enumerators                         | ISO 15031-6                      |
// | 8, 9        | bus, component                          | from memory                      |
// | A to F      | reserved or the maker's own             | from memory                      |
#pragma once

#include <cstdint>

#include "indexer/enum_names.hpp"

namespace shoplore {

enum class FailureTypeGroup {
  kGeneral,
  kElectrical,
  kSignal,
  kPulses,
  kInternal,
  kProgramming,
  kAlgorithm,
  kMechanical,
  kBus,
  kComponent,
  kReservedOrUnknown
};
template <>
inline constexpr EnumTable<FailureTypeGroup, 11> kEnumNames<FailureTypeGroup>{
    {{FailureTypeGroup::kGeneral, "general"},
     {FailureTypeGroup::kElectrical, "electrical"},
     {FailureTypeGroup::kSignal, "signal out of shape or range"},
     {FailureTypeGroup::kPulses, "frequency or pulse width"},
     {FailureTypeGroup::kInternal, "inside the control unit"},
     {FailureTypeGroup::kProgramming, "programming or coding"},
     {FailureTypeGroup::kAlgorithm, "calculated from other values"},
     {FailureTypeGroup::kMechanical, "mechanical"},
     {FailureTypeGroup::kBus, "message on a network"},
     {FailureTypeGroup::kComponent, "component itself"},
     {FailureTypeGroup::kReservedOrUnknown, "reserved or unknown"}}};

// 0x16 is electrical, 0x00 general (no further type given).
[[nodiscard]] FailureTypeGroup failure_type_group(std::uint8_t failure_type);

}  // namespace shoplore
