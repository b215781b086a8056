#include "indexer/code_reader.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/code_lines.hpp"

namespace shoplore {
namespace {

using Lines = std::vector<std::string>;

struct Row {
  const char* text;
  Lines codes;
};

TEST(CodeReader, StatusWordsBesideACode) {
  const Row table[] = {
      {"P0299", {"P0299"}},
      {"P0299 pending", {"P0299 pending"}},
      {"P0299 (stored)", {"P0299 stored"}},
      {"P0299 - perm", {"P0299 permanent"}},
      {"P0299: active, flat uphill", {"P0299 active"}},
      {"P0299 is current", {"P0299 active"}},
      {"P0299 current draw high", {"P0299"}},
      {"P0299 history", {"P0299 history"}},
      {"P0299 intermittent", {"P0299 history"}},
      {"P0299 intermittent misfire", {"P0299"}},
      {"P0299 not active", {"P0299 history"}},
      {"pending P0299", {"P0299 pending"}},
      {"pending codes: P0299, P0234", {"P0299 pending", "P0234 pending"}},
      {"Stored DTCs: P0299 P0234; pending: P0171",
       {"P0299 stored", "P0234 stored", "P0171 pending"}},
      {"P0299 stored, P0234 pending", {"P0299 stored", "P0234 pending"}},
      {"P0299, pending P0234", {"P0299", "P0234 pending"}},
      {"P0299/P0234 pending", {"P0299 pending", "P0234 pending"}},
      {"P0299, P0234 both pending", {"P0299 pending", "P0234 pending"}},
      {"P0299, P0234 pending", {"P0299", "P0234 pending"}},
      {"P0299, P0234 and P0171 pending", {"P0299 pending", "P0234 pending", "P0171 pending"}},
      {"P0299 P0234 ACTIVE", {"P0299 active", "P0234 active"}},
      {"P0299 and P0234, two are stored", {"P0299 stored", "P0234 stored"}},
      {"P0299 in history", {"P0299 history"}},
      {"P0299 in memory", {"P0299 stored"}},
      {"P0299 and\npending filter job", {"P0299"}}};
  for (const Row& row : table) EXPECT_EQ(code_lines_of(row.text), row.codes) << row.text;
}

TEST(CodeReader, StatusWordsAreReadPast) {
  for (const char* text : {"P0299 pending", "stored codes: P0299", "P0299 came back after clearing",
                           "ECM: P0299 stored", "P0299 (ECM)", "no codes stored", "DTC P0299"}) {
    const auto left = leftover_of(text);
    EXPECT_TRUE(left.empty() || left == Lines{"came"}) << text << ": " << left.front();
  }
}

TEST(CodeReader, ControlUnits) {
  const Row table[] = {
      {"ECM: P0299", {"P0299 stored [ECM]"}},
      {"[ABS] C0035-12", {"C0035-12 stored [ABS]"}},
      {"Engine control unit P0299, P0234",
       {"P0299 stored [Engine control unit]", "P0234 stored [Engine control unit]"}},
      {"ECM: pending P0299; ABS: C0035", {"P0299 pending [ECM]", "C0035 stored [ABS]"}},
      {"P0299 pending in ECM", {"P0299 pending [ECM]"}},
      {"P0299 (TCM)", {"P0299 stored [TCM]"}},
      {"P0AA6 active, module BMS", {"P0AA6 active [BMS]"}},
      {"P0741 stored TCM. shudders", {"P0741 stored [TCM]"}},
      {"C0045 in the abs module", {"C0045 stored [ABS]"}},
      {"C0045 stored abs lamp on", {"C0045 stored"}},
      {"U0100, U0121 and U0155 stored in gateway",
       {"U0100 stored [gateway]", "U0121 stored [gateway]", "U0155 stored [gateway]"}},
      {"U0121 and U0155 in the gateway, both history",
       {"U0121 history [gateway]", "U0155 history [gateway]"}},
      {"P0087 in ECM, pending", {"P0087 pending [ECM]"}},
      {"P0299 active, ECM. flat", {"P0299 active [ECM]"}},
      {"P0299 in engine bay", {"P0299"}},
      {"new ecu, P0299", {"P0299"}}};
  for (const Row& row : table) EXPECT_EQ(code_lines_of(row.text), row.codes) << row.text;
}

TEST(CodeReader, SeenAfterClearingOrAfterTheFix) {
  const Row table[] = {{"P0299 back after clearing", {"P0299 stored after_clearing"}},
                       {"P0299 pending after clearing codes", {"P0299 pending after_clearing"}},
                       {"P0299 cleared, came back", {"P0299 stored after_clearing"}},
                       {"P0299 cleared, did not come back", {"P0299"}},
                       {"cleared codes, P0299 returned", {"P0299 stored after_clearing"}},
                       {"P0299 on arrival, gone after clearing", {"P0299"}},
                       {"cleared P0299, drove fine", {"P0299"}},
                       {"P0299 again after the repair", {"P0299 stored after_fix"}},
                       {"P0299 again after repair elsewhere", {"P0299"}},
                       {"not back after clearing: P0299", {"P0299"}}};
  for (const Row& row : table) EXPECT_EQ(code_lines_of(row.text), row.codes) << row.text;
}

TEST(CodeReader, ADeniedCodeIsNone) {
  const Row table[] = {{"no P0299", {}},
                       {"no code P0299", {}},
                       {"no pending P0299", {}},
                       {"no P0299 or P0234", {}},
                       {"P0299 not stored", {}},
                       {"P0299 is not present", {}},
                       {"P0234 stored, P0299 not.", {"P0234 stored"}},
                       {"P0299 gone", {}},
                       {"P0234 gone, P0299 stored", {"P0299 stored"}},
                       {"P0299, none other", {"P0299"}},
                       {"no start, P0299", {"P0299"}}};
  for (const Row& row : table) EXPECT_EQ(code_lines_of(row.text), row.codes) << row.text;
}

TEST(CodeReader, NoCodesIsAScanThatFoundNone) {
  for (const char* text :
       {"no codes", "No DTCs stored", "no fault codes", "no stored codes found", "0 DTC",
        "codes: none", "fault codes nil", "no trouble codes, flat uphill", "nothing stored",
        "scan: no faults stored", "without codes", "read codes, none stored", "scan: nothing found",
        "fault memory empty", "scan clean", "no ABS codes", "no codes in ECM", "ECM: no codes"}) {
    EXPECT_EQ(code_lines_of(text), Lines{"no_codes"}) << text;
  }
  for (const char* text : {"no fault found", "no faults", "no other codes", "no permanent codes",
                           "codes", "fault: none", "10 codes"}) {
    EXPECT_EQ(code_lines_of(text), Lines{}) << text;
  }
}

TEST(CodeReader, NoCodesMakesARecordScannedAndEmpty) {
  Case record;
  add_recognised(record, built_in_recogniser().recognise("no codes, flat uphill"));
  EXPECT_EQ(record.scanned, YesNo::kYes);
  EXPECT_TRUE(record.codes.empty());
}

TEST(CodeReader, ARecordKeepsTheSurerAndFullerOfTwoMentions) {
  Case record;
  const auto add = [&](const char* text) {
    add_recognised(record, built_in_recogniser().recognise(text));
  };
  add("P0299-16 pending");
  add("P0299");
  ASSERT_EQ(record.codes.size(), 1U);
  EXPECT_EQ(record.codes[0].status, CodeStatus::kPending);
  EXPECT_EQ(record.codes[0].failure_type, "16");
  add("ECM: P0299 active after clearing");
  ASSERT_EQ(record.codes.size(), 1U);
  EXPECT_EQ(record.codes[0].status, CodeStatus::kActive);
  EXPECT_EQ(record.codes[0].seen, CodeSeen::kAfterClearing);
  EXPECT_EQ(record.codes[0].module, "ECM");
  EXPECT_EQ(record.codes[0].failure_type, "16");
  add("P0299 stored");
  EXPECT_EQ(record.codes[0].status, CodeStatus::kActive);
}

}  // namespace
}  // namespace shoplore
