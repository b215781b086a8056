#include "indexer/scan_report.hpp"

#include <gtest/gtest.h>

#include <random>

#include "tests/indexer/code_lines.hpp"

namespace shoplore {
namespace {

using Lines = std::vector<std::string>;

const std::string kIndented = R"(Tool: Handheld 3.2
Date: 12 May 2021 09:14
VIN: [removed]
Odometer: 142000 km

Engine control unit (2 faults)
  P0299-16  Turbocharger underboost  Stored
    RPM 2200
    Coolant 88 C
    Load 64 %
    Distance since fault 12000 km
  P0234  Turbocharger overboost, no signal  Pending
ABS
  No faults
Airbag
  B0028-13 [0x2F] Circuit open, short to ground
)";

TEST(ScanReport, AReportWithHeadingsAndColumns) {
  EXPECT_EQ(code_lines_of(kIndented),
            (Lines{"P0299-16 stored [Engine control unit]", "P0234 pending [Engine control unit]",
                   "B0028-13 active [Airbag]"}));
  EXPECT_EQ(other_lines_of(kIndented), Lines{"mileage 142000"});
  EXPECT_EQ(leftover_of(kIndented), Lines{});
}

TEST(ScanReport, FreezeFrameGoesToTheCodeAboveIt) {
  const auto items = built_in_recogniser().recognise(kIndented).items;
  ASSERT_EQ(items.at(1).id, "P0299");
  const auto& frame = items[1].code->freeze_frame;
  ASSERT_EQ(frame.size(), 4U);
  EXPECT_EQ(frame[0].name, "RPM");
  EXPECT_EQ(frame[0].value, 2200);
  EXPECT_EQ(frame[1].name, "Coolant");
  EXPECT_EQ(frame[1].value, 88);
  EXPECT_EQ(frame[1].unit, "C");
  EXPECT_EQ(frame[3].name, "Distance since fault");
  EXPECT_EQ(frame[3].value, 12000);
  EXPECT_TRUE(items.at(2).code->freeze_frame.empty());
}

TEST(ScanReport, EveryShapeOfTableGivesTheSame) {
  const Lines expected{"P0299 stored [ECM]", "C0035 pending [ABS]"};
  for (const char* text :
       {"ECM\nP0299 Turbocharger underboost - stored\nABS\nC0035 Wheel sensor - pending",
        "| ECM | P0299 | Turbocharger underboost | stored |\n| ABS | C0035 | no signal | pending |",
        "ECM;P0299;Turbocharger underboost;stored\nABS;C0035;no signal;pending",
        "ECM\tP0299\tTurbocharger underboost\tstored\r\nABS\tC0035\tno signal\tpending\r\n",
        "P0299 | ECM | Turbocharger underboost | stored\nC0035 | ABS | no signal | pending",
        "[ECM] P0299 stored Turbocharger underboost\n[ABS] C0035 pending no signal",
        "ECM ; P0299 ; ; 08 ; Underboost\nABS ; C0035 ; ; 04 ; no signal\nTCM ; none",
        "ECM:\n----\nStored codes: 1\n1. P0299\n   Turbocharger underboost\n\nABS:\nPending "
        "codes: 1\n1. C0035\n   Misfire detected",
        "ECM\nP0299\nTurbocharger underboost\nStatus: stored\nABS\nC0035\nno "
        "signal\nStatus: pending",
        "Module: ECM\nDTC: P0299\nDescription: misfire\nStatus: 08\nModule: ABS\nDTC: "
        "C0035\nStatus: 0x04"}) {
    EXPECT_EQ(code_lines_of(text), expected) << text;
    EXPECT_EQ(other_lines_of(text), Lines{}) << text;
    EXPECT_EQ(leftover_of(text), Lines{}) << text;
  }
}

TEST(ScanReport, ANoteAroundTheReportIsReadAsANote) {
  const std::string text =
      "flat uphill\n\nECM\nP0299 misfire detected\nP0234 no signal\n\nno whistle, coil replaced "
      "elsewhere";
  EXPECT_EQ(code_lines_of(text), (Lines{"P0299 stored [ECM]", "P0234 stored [ECM]"}));
  EXPECT_EQ(other_lines_of(text),
            (Lines{"symptom lack_of_power", "condition uphill", "symptom whistle_under_load absent",
                   "earlier_repair replace ignition_coil elsewhere"}));
  // Directly below it, too, unless the codes before had lines of their own.
  EXPECT_EQ(other_lines_of("ECM\nP0299 misfire\nP0234 no signal\nflat uphill"),
            (Lines{"symptom lack_of_power", "condition uphill"}));
}

TEST(ScanReport, WithoutAnyCodeItIsAScanThatFoundNone) {
  EXPECT_EQ(code_lines_of("ECM\nNo faults\nABS: no faults\nSRS - OK"), Lines{"no_codes"});
  EXPECT_EQ(code_lines_of("ECM: 0 DTC\nflat uphill"), Lines{"no_codes"});
  EXPECT_EQ(code_lines_of("ECM\nNo faults\nABS\nC0035"), Lines{"C0035 stored [ABS]"});
}

TEST(ScanReport, ACodeThatHasNotFailedIsReadPast) {
  const std::string text = "ECM\nP0299 [0x50] Turbocharger underboost\nP0234 [0x28] Overboost";
  EXPECT_EQ(code_lines_of(text), Lines{"P0234 stored [ECM]"});
  EXPECT_EQ(leftover_of(text), Lines{});
}

TEST(ScanReport, OneCodeWithDetailsIsAReport) {
  for (const char* text : {"System: Engine\nFault codes found: 1\nP0335 misfire\nStatus: "
                           "pending\nFreeze frame\nEngine speed 850 rpm\nFuel system: closed loop",
                           "[Engine]\nP0335 misfire [0x04]\n  RPM 850"}) {
    EXPECT_EQ(code_lines_of(text), Lines{"P0335 pending [Engine]"}) << text;
    EXPECT_EQ(other_lines_of(text), Lines{}) << text;
    EXPECT_EQ(leftover_of(text), Lines{}) << text;
    const auto frame = built_in_recogniser().recognise(text).items.at(0).code->freeze_frame;
    ASSERT_EQ(frame.size(), 1U) << text;
    EXPECT_EQ(frame[0].value, 850) << text;
  }
}

TEST(ScanReport, ANoteWithACodeIsNoReport) {
  for (const char* text : {"P0299\nmisfire uphill", "P0299 misfire uphill", "misfire uphill\nP0299",
                           "P0299 stored\nmisfire uphill\nP0234 too",
                           "engine\nmisfire uphill, P0299", "Engine\nP0299 misfire uphill"}) {
    EXPECT_EQ(other_lines_of(text), (Lines{"symptom misfire", "condition uphill"})) << text;
  }
}

TEST(ScanReport, AnyTextGivesCodesAtTheirOwnPlaces) {
  constexpr std::uint64_t kSeed = 11;
  std::mt19937_64 random(kSeed);
  const Lines pieces{"P0299",
                     "C0035-12",
                     "\n",
                     "\n  ",
                     "\n\n",
                     "ECM",
                     "ABS: ",
                     "no faults",
                     "OK",
                     " - ",
                     "\t",
                     "|",
                     ";",
                     "[0x2F]",
                     "[0x50]",
                     "stored",
                     "16",
                     "RPM 2200",
                     "Coolant 88 C",
                     "Freeze frame",
                     "Status: ",
                     "pending",
                     "0",
                     "DTC",
                     "misfire",
                     "Engine",
                     "\r\n",
                     "43 01 01 43",
                     "7E8 10 0A",
                     "0:",
                     "00A",
                     "\u00a0",
                     "\u00b0",
                     ")"};
  for (int round = 0; round < 4'000; ++round) {
    std::string text;
    for (std::uint64_t n = random() % 30; n > 0; --n) {
      text += pieces[random() % pieces.size()];
      if (random() % 3 != 0) text += ' ';
    }
    std::size_t end = 0;
    for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
      if (item.kind != ItemKind::kCode) continue;
      ASSERT_LE(end, item.span.begin) << "seed " << kSeed << "\n" << text;
      ASSERT_LE(item.span.end, text.size()) << text;
      end = item.span.end;
      if (item.code) {
        ASSERT_EQ(item.code->code, item.id) << text;
      }
    }
  }
}

}  // namespace
}  // namespace shoplore
