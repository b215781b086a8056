// The one spelling of every enumerator, shared by JSON, the command line and messages.
//
// An enum takes part by specialising kEnumNames beside its definition; name_of and
// enum_from_name then work for it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace shoplore {

template <class Enum, std::size_t N>
using EnumTable = std::array<std::pair<Enum, std::string_view>, N>;

// Specialise as an EnumTable listing every enumerator once.
template <class Enum>
inline constexpr EnumTable<Enum, 0> kEnumNames{};

template <class Enum>
[[nodiscard]] constexpr std::string_view name_of(Enum value) {
  for (const auto& [candidate, name] : kEnumNames<Enum>) {
    if (candidate == value) return name;
  }
  return "";  // unreachable for a complete table
}

template <class Enum>
[[nodiscard]] constexpr std::optional<Enum> enum_from_name(std::string_view text) {
  for (const auto& [candidate, name] : kEnumNames<Enum>) {
    if (name == text) return candidate;
  }
  return std::nullopt;
}

// "one of a, b, c": what a message says was expected.
template <class Enum>
[[nodiscard]] std::string expected_names() {
  std::string text = "one of ";
  for (const auto& [value, name] : kEnumNames<Enum>) {
    if (text.size() > 7) text += ", ";
    text += name;
  }
  return text;
}

}  // namespace shoplore
