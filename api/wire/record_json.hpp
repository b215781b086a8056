// What recording reports, and a case's history, as JSON.
//
//   recorded: {"ref":"case-7","revision":2412,"warnings":[".."],"record":{case_json.hpp}}
//   history:  [{"revision":12,"at":"2026-03-02T14:05:09Z","role":"technician",
//               "changed":["state","cause"],"record":{..}}]          oldest first
//   findings: {"findings":["records.db is sound"]}
//   health:   {"status":"ok","cases":2400,"revision":2412,"answering_as_of":2412}
// Pure functions, any thread. One line, no trailing newline.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/records.hpp"

namespace shoplore {

[[nodiscard]] std::string recorded_json(const Recorded& recorded);

// Requires: bodies as the store gives them.
[[nodiscard]] std::string history_json(const std::vector<Change>& history);

[[nodiscard]] std::string findings_json(const std::vector<std::string>& lines);

[[nodiscard]] std::string health_json(std::int64_t cases, Revision recorded, Revision snapshot);

// Names of the fields in which two stored bodies differ, in the record's order; all of `after`
// when `before` is empty.
[[nodiscard]] std::vector<std::string> changed_fields(std::string_view before,
                                                      std::string_view after);

// "2026-03-02T14:05:09Z" of seconds since 1970-01-01 UTC.
[[nodiscard]] std::string format_time(std::int64_t at);

}  // namespace shoplore
