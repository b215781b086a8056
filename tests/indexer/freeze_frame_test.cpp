#include "indexer/freeze_frame.hpp"

#include <gtest/gtest.h>

#include <string>

#include <fmt/format.h>

namespace shoplore {
namespace {

std::vector<std::string> values_of(std::string_view line) {
  std::vector<std::string> lines;
  for (const FreezeFrameValue& each : read_freeze_frame(line)) {
    lines.push_back(
        fmt::format("{}={}{}{}", each.name, each.value, each.unit.empty() ? "" : " ", each.unit));
  }
  return lines;
}

using Lines = std::vector<std::string>;

TEST(FreezeFrame, NamesAndValuesByTurns) {
  const std::pair<const char*, Lines> rows[] = {
      {"RPM 2200", {"RPM=2200"}},
      {"Engine speed: 2200 rpm", {"Engine speed=2200 rpm"}},
      {"Coolant 88 C", {"Coolant=88 C"}},
      {"Load 64 %", {"Load=64 %"}},
      {"load=64.5%", {"load=64.5 %"}},
      {"RPM 2200, Coolant 88 C, Load 64 %", {"RPM=2200", "Coolant=88 C", "Load=64 %"}},
      {"RPM 2200 Coolant 88C Load 64%", {"RPM=2200", "Coolant=88 C", "Load=64 %"}},
      {"RPM | 2200 | rpm", {"RPM=2200 rpm"}},
      {"Distance since fault 120 km", {"Distance since fault=120 km"}},
      {"Odometer 142,000 km", {"Odometer=142000 km"}},
      {"Intake air temp -5 °C", {"Intake air temp=-5 °C"}},
      {"Boost pressure 1,25 bar", {"Boost pressure=1.25 bar"}}};
  for (const auto& [line, values] : rows) EXPECT_EQ(values_of(line), values) << line;
}

TEST(FreezeFrame, OrdinaryLinesAreNone) {
  for (const char* line : {"", "flat uphill", "RPM", "2200 rpm", "boost 0.4 bar measured", "coil 3",
                           "RPM 2200 flat", "P0299", "Coolant 88 ?", "load 64 percentish",
                           "the customer says it did this at speed 5", "temp 88X", "speed 1.2.3"}) {
    EXPECT_EQ(values_of(line), Lines{}) << line;
  }
}

}  // namespace
}  // namespace shoplore
