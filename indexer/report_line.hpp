// One line of a pasted scan report, of no tool in particular: what it is, by itself.
//
// | kind           | looks like                                                               |
// |----------------|--------------------------------------------------------------------------|
// | code           | one code at its front, after a bullet, number, "DTC", status or module;  |
// |                | then failure type, status and description in columns, brackets or words  |
// | heading        | a control unit: "ECM", "01 - Engine control unit (2 faults)", "Module: ABS"|
// | status heading | "Stored codes: 2", "Pending DTCs"                                        |
// | no faults      | "No faults", "0 DTC", "OK"; with a control unit also a heading           |
// | freeze head    | begins with "freeze frame" or "snapshot"                                 |
// | freeze values  | freeze_frame.hpp                                                         |
// | detail         | "Status: stored", "Failure type: 16", "Occurrences: 3"                   |
// | header         | "Tool: ...", "Date: ...", "VIN: ..."                                     |
// | rule           | blank, dashes, "Total 3 faults"                                          |
// Columns are parted by tab, |, ; or two blanks. Status bytes are "0x2F" or "status 2F"; the first
// column of two hex digits is a failure type, a second one a status byte.
// Whether the line stands in a report is scan_report.hpp's to say. Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {

enum class LineKind {
  kCode,
  kHeading,
  kStatusHeading,
  kNoFaults,
  kFreezeHead,
  kFreezeValues,
  kDetail,
  kHeader,
  kBlank,
  kRule,
  kOther
};

struct ReportLine {
  LineKind kind = LineKind::kOther;
  Span span;  // in the text, without blanks around
  std::size_t indent = 0;
  std::string module;                          // kCode, kHeading, kNoFaults; may be empty
  std::string code;                            // kCode
  Span code_span;                              // kCode
  std::string failure_type;                    // kCode, kDetail
  std::optional<CodeStatus> status;            // kCode, kStatusHeading, kDetail
  bool nothing_failed = false;                 // kCode, kDetail: its status byte says so
  CodeSeen seen = CodeSeen::kArrival;          // kCode
  std::vector<FreezeFrameValue> freeze_frame;  // kFreezeHead, kFreezeValues
};

// Every line of the text, blank ones included.
[[nodiscard]] std::vector<ReportLine> report_lines(std::string_view text);

}  // namespace shoplore
