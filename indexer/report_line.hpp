// One line of a pasted scan report, of no tool in particular: what it is (line_kind.hpp), by
// itself.
//
// Columns are parted by tab, |, ; or two blanks. Status bytes are "0x2F" or "status 2F"; the first
// column of two hex digits is a failure type, a second one a status byte.
// Whether the line stands in a report is scan_report.hpp's to say. Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/line_kind.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {

struct ReportLine {
  LineKind kind = LineKind::kOther;
  Span span;  // in the text, without blanks around
  std::size_t indent = 0;
  std::string module;                          // kCode, kHeading, kNoFaults; may be empty
  bool plain_module = false;                   // kHeading: a bare word such as "Engine"
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
