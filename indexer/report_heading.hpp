// A line of a scan report without a code of its own that says what the lines below are about: a
// control unit, a status, or that there is nothing.
//
// A line is a heading when it holds nothing but names of control units (module_names.hpp), numbers
// and the words reports are built of ("stored", "faults", "total"). What a unit is called at length
// may be any words where a column of status ends the line ("ABS - Anti-lock brakes - OK").
// Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/line_kind.hpp"
#include "indexer/text.hpp"

namespace shoplore {

struct ReportHeading {
  LineKind kind = LineKind::kRule;  // kHeading, kStatusHeading, kNoFaults or kRule
  std::string module;               // may be empty
  bool plain = false;               // the line is a bare word such as "Engine"
  std::optional<CodeStatus> status;
};

// Empty when the line is a sentence. Requires: words = words_of(line), at least one.
[[nodiscard]] std::optional<ReportHeading> read_report_heading(std::string_view line,
                                                               const std::vector<Word>& words);

}  // namespace shoplore
