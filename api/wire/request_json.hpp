// What a program sends: questions and the closing of a case, read strictly.
//
// Unknown fields are refused by name, every place is a JSON Pointer. The case itself is read by
// indexer/case_json.hpp. Pure functions, any thread; kInvalidInput or kTooLarge.
//
//   question: {"text":"P0299 flat uphill","record":{case},"filter":{..},"rows":5,
//              "similar_cases":5,"open":["plug_cover"],"not_possible":["coil_swap"],
//              "agreed":"yes","identity":{"vin":"..","plate":".."}}
//                                                      text or record; the rest may be left out
//   closing:  {"closed":"2026-03-04","cause":{..},"correction":{..},"outcome":{..},
//              "contributing":[..],"also_found":[..],"checks":[..],"verification":[..],
//              "declined":[..],"notes":".."}          closed defaults to today
//   text:     {"text":"no whistle, P0299"}            at most 20,000 bytes
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "indexer/case_json.hpp"
#include "query/ask.hpp"

namespace shoplore {

// Bytes of any request; longer ones are refused before they are read.
inline constexpr std::size_t kMaxRequestBytes = 1024 * 1024;

// Makes a vehicle's pseudonym of its identity (records.hpp).
using TokenOf = std::function<Result<std::string>(const Identity&)>;

// The vehicle's identity is turned into its pseudonym here and goes no further.
[[nodiscard]] Result<Question> question_from_json(std::string_view text, const TokenOf& token_of);

// The merge patch that closes a case. What the fields hold is checked when it is applied.
[[nodiscard]] Result<std::string> closing_patch_from_json(std::string_view text, Date today);

[[nodiscard]] Result<std::string> text_from_json(std::string_view json);

}  // namespace shoplore
