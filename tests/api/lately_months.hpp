// Cases of a made-up workshop, month by month, for import: about twenty others a month and one
// failure that rises.
#pragma once

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <string>

namespace shoplore::testing {

inline std::string closed_line(int number, const std::string& month, const char* component,
                               const char* failure, const char* family) {
  return nlohmann::json{
             {"schema", 1},
             {"ref", fmt::format("m{}", number)},
             {"state", "closed"},
             {"opened", month + "-10"},
             {"closed", month + "-11"},
             {"vehicle", {{"make", "Dunmarrow"}, {"engine_family", family}}},
             {"cause", {{"component", component}, {"failure", failure}, {"proof", "seen"}}}}
             .dump() +
         "\n";
}

// September 2022 to February 2026; `usual` a month of the wastegate linkage, from December 2025
// `risen`.
inline std::string months_of_cases(int usual, int risen) {
  std::string lines;
  int number = 0;
  for (int month = 0; month < 42; ++month) {
    const std::string name = fmt::format("{}-{:02}", 2022 + (month + 8) / 12, 1 + (month + 8) % 12);
    for (int i = 0; i < 20; ++i) {
      lines += closed_line(++number, name, "charge_air_hose", "split", "DM15P");
    }
    for (int i = 0; i < (month < 39 ? usual : risen); ++i) {
      lines += closed_line(++number, name, "wastegate_linkage", "seized_open", "BW16D");
    }
  }
  return lines;
}

}  // namespace shoplore::testing
