#include "indexer/report_cells.hpp"

#include <gtest/gtest.h>

#include <string>

namespace shoplore {
namespace {

// "16 stored [ECM]", what was not given left out.
std::string line_of(const CellReading& cells) {
  std::string line = cells.failure_type;
  if (cells.status) line += " " + std::string(name_of(*cells.status));
  if (cells.nothing_failed) line += " nothing";
  if (!cells.module.empty()) line += " [" + cells.module + "]";
  return line;
}

TEST(ReportCells, ColumnsAfterACode) {
  const std::pair<const char*, const char*> rows[] = {
      {"", ""},
      {" Turbocharger underboost", ""},
      {" 16 Turbocharger underboost", "16"},
      {"  16  2F", "16 active"},
      {"\t1c\tSensor low\tStored", "1C stored"},
      {" | 16 | Sensor low | pending |", "16 pending"},
      {"; Sensor low; confirmed", " stored"},
      {" Sensor low (pending)", " pending"},
      {" Sensor low [0x2F]", " active"},
      {" Sensor low [0x50]", " nothing"},
      {" [0x08]", " stored"},
      {" status 08", " stored"},
      {" - Sensor low - Status: 04", " pending"},
      {" stored Sensor low", " stored"},
      {" Sensor low permanent", " permanent"},
      {" Sensor circuit intermittent", ""},
      {" Sensor circuit high current", ""},
      {" Sensor circuit  intermittent", " history"},
      {" Sensor low  confirmed, pending", " stored"},
      {" Sensor low  not active", " history"},
      {" | Sensor low | 12 | stored", " stored"},
      {" ;; 08; Sensor low", " stored"},
      {"\t\t08\tSensor low", " stored"},
      {" 12 V supply low", ""},
      {" | ECM | stored", " stored [ECM]"}};
  for (const auto& [rest, line] : rows) {
    EXPECT_EQ(line_of(read_cells(rest, FailureType::kMayFollow)), line) << rest;
  }
  EXPECT_EQ(line_of(read_cells(" 2F Sensor", FailureType::kAlreadyGiven)), "");
  EXPECT_EQ(line_of(read_cells("  2F", FailureType::kAlreadyGiven)), " active");
}

TEST(ReportCells, LabelledDetails) {
  EXPECT_EQ(line_of(read_detail("status", " stored")), " stored");
  EXPECT_EQ(line_of(read_detail("status", " 0x2F")), " active");
  EXPECT_EQ(line_of(read_detail("status", " 28")), " stored");
  EXPECT_EQ(line_of(read_detail("failure", " 16")), "16");
  EXPECT_EQ(line_of(read_detail("occurrences", " 12")), "");
}

}  // namespace
}  // namespace shoplore
