#include "indexer/report_line.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

using enum LineKind;

LineKind kind_of(const char* text) {
  return report_lines(text).at(0).kind;
}

TEST(ReportLine, EveryKindByItsShape) {
  const std::pair<const char*, LineKind> rows[] = {
      {"P0299 Turbocharger underboost", kCode},
      {"  1. P0299 - stored", kCode},
      {"* DTC P0299", kCode},
      {"Fault code 1: P0299-16", kCode},
      {"ECM | P0299 | stored", kCode},
      {"Pending P0299", kCode},
      {"ECM", kHeading},
      {"[ABS]", kHeading},
      {"01 - Engine control unit (2 faults)", kHeading},
      {"Module: BCM", kHeading},
      {"ECM - Engine control module: 3 DTCs", kHeading},
      {"Transmission", kHeading},
      {"SRS - Airbag - 1 code", kHeading},
      {"BCM 3 DTC(s)", kHeading},
      {"ABS - Anything at length - 2 faults", kHeading},
      {"ABS - Anything at length - OK", kNoFaults},
      {"TCM ; none", kNoFaults},
      {"Stored codes: 2", kStatusHeading},
      {"Pending DTCs", kStatusHeading},
      {"No faults", kNoFaults},
      {"0 DTC", kNoFaults},
      {"ABS: no faults stored", kNoFaults},
      {"SRS - OK", kNoFaults},
      {"Freeze frame:", kFreezeHead},
      {"Freeze frame: RPM 2200, Load 64 %", kFreezeHead},
      {"RPM 2200", kFreezeValues},
      {"Status: stored", kDetail},
      {"Failure type: 16", kDetail},
      {"Date: 12 May 2024", kHeader},
      {"VIN: [removed]", kHeader},
      {"", kBlank},
      {"-----", kRule},
      {"Total 3 faults", kRule},
      {"flat uphill", kOther},
      {"ABS - pulses when braking", kOther},
      {"ABS - pulses - when braking", kOther},
      {"engine ok but flat", kOther},
      {"flat uphill P0299", kOther},
      {"P0299, P0234", kOther},
      {"ABS light on", kOther},
      {"engine runs rough", kOther},
      {"Odometer: about 142 thousand", kOther}};
  for (const auto& [text, kind] : rows) {
    EXPECT_EQ(static_cast<int>(kind_of(text)), static_cast<int>(kind)) << text;
  }
}

TEST(ReportLine, HeadingsNameTheirControlUnit) {
  const std::pair<const char*, const char*> rows[] = {
      {"01 - Engine control unit (2 faults)", "Engine control unit"},
      {"ECM - Engine control module: 3 DTCs", "ECM"},
      {"[ABS]", "ABS"},
      {"ABS 2 faults", "ABS"},
      {"ABS: no faults", "ABS"},
      {"ECM | P0299 | stored", "ECM"}};
  for (const auto& [text, module] : rows) {
    EXPECT_EQ(report_lines(text).at(0).module, module) << text;
  }
}

TEST(ReportLine, SpansLeaveOutBlanksAround) {
  const std::string text = "a\r\n\tP0299 x \nb";
  const auto lines = report_lines(text);
  ASSERT_EQ(lines.size(), 3U);
  EXPECT_EQ(lines[0].span, (Span{0, 1}));
  EXPECT_EQ(lines[1].span, (Span{4, 11}));
  EXPECT_EQ(lines[1].code_span, (Span{4, 9}));
  EXPECT_EQ(lines[1].indent, 1U);
  EXPECT_EQ(lines[2].span, (Span{13, 14}));
}

}  // namespace
}  // namespace shoplore
