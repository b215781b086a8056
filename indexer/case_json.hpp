// A case as JSON text, one object, and back: strict, exact, one schema version.
//
// Reading refuses unknown fields, wrong types, unknown enum names, impossible dates, oversized
// texts and lists, and malformed or non-UTF-8 input, naming every place by JSON Pointer.
// Whether the values make sense together is case_rules.hpp's question.
// Writing leaves out empty and absent fields; keys come in the record's order. For every case c
// that reading accepts, reading what was written gives c again, and writing that gives the same
// bytes.
// Pure functions, any thread.
#pragma once

#include <string>
#include <string_view>

#include "indexer/case_record.hpp"
#include "indexer/json_limits.hpp"
#include "indexer/result.hpp"

namespace shoplore {

inline constexpr int kCaseSchema = 1;

// What a person at the counter knows and the disk must not: used for the token and to remove
// mentions from texts, then dropped (identity_removal.hpp).
struct Identity {
  std::string vin, plate, customer;
};

// A case as it arrives: the record's fields plus an optional "identity":{"vin","plate","customer"}.
struct Intake {
  Case record;
  Identity identity;
};

// One line, no trailing newline.
[[nodiscard]] std::string case_to_json(const Case& record);

// Reads a stored body; "identity" is an unknown field here.
[[nodiscard]] Result<Case> case_from_json(std::string_view text);

// Reads what a person or program hands in. A missing schema means kCaseSchema.
[[nodiscard]] Result<Intake> intake_from_json(std::string_view text);

// RFC 7396 merge patch of a stored body: null removes a field, lists are replaced whole.
[[nodiscard]] Result<Intake> patch_case(const Case& record, std::string_view patch);

}  // namespace shoplore
