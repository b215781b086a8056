// The columns after the code on a line of a scan report: failure type, status, control unit.
//
// Columns are parted by tab, |, ;, brackets, " - " or two blanks. A word of status also counts as
// the first or last word of a description, unless it is one of other things ("circuit
// intermittent", "high current"). Two bare hex digits count only before the description. The rest
// is description and says nothing here. Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "indexer/case_record.hpp"

namespace shoplore {

struct CellReading {
  std::string failure_type;  // two upper-case hex digits or empty
  std::optional<CodeStatus> status;
  bool nothing_failed = false;  // a status byte without any bit of a failure
  std::string module;
};

enum class FailureType { kAlreadyGiven, kMayFollow };

// Of the text after the code.
[[nodiscard]] CellReading read_cells(std::string_view rest, FailureType failure_type);

// Of "Status: 0x2F", "Failure type: 16"; label is its first word in lower case.
[[nodiscard]] CellReading read_detail(std::string_view label, std::string_view value);

}  // namespace shoplore
