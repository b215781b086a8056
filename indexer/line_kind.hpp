// Kinds of lines of a pasted scan report.
//
// A plain enumeration; who tells them apart is report_line.hpp.
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
#pragma once

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

}  // namespace shoplore
