// How anything in Shoplore fails: a value, never an exception.
//
// An expected failure (bad input, a missing folder, a lost race) is an Error inside a Result.
// A library's exception is caught once, in the source file that owns the library, and becomes
// an Error there. A bug asserts, and input cannot reach it.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace shoplore {

// One meaning a code. The command line maps them to exit codes, HTTP to statuses, in one place
// each.
enum class ErrorCode {
  kInvalidInput,  // the caller's data is malformed or breaks a rule
  kTooLarge,      // the caller's data exceeds a stated size
  kNotFound,      // no such case, folder or entry
  kConflict,      // the thing changed meanwhile, or exists already with other content
  kNoPermission,  // the file system refused
  kDamagedStore,  // records.db is not readable as our database
  kDamagedIndex,  // the index is not readable; it can be rebuilt from the records
  kBusy,          // another process holds what is needed; try again
  kInternal,      // a library failed in a way we do not expect
};

// One finding about one place in the input.
struct Problem {
  std::string place;     // JSON Pointer (RFC 6901), "line 12", a path, or an option's name
  std::string expected;  // what was wrong and what was expected, one sentence, no full stop

  friend bool operator==(const Problem&, const Problem&) = default;
};

struct Error {
  ErrorCode code = ErrorCode::kInternal;
  std::string place;                   // what it is about: as Problem::place; may be empty
  std::string message;                 // one sentence without a full stop
  std::vector<Problem> problems = {};  // every finding, when there is more than one place to name
};

template <class T>
using Result = tl::expected<T, Error>;

// The failing half of a Result: `return fail(ErrorCode::kNotFound, "case-7", "no such case");`
[[nodiscard]] inline tl::unexpected<Error> fail(ErrorCode code, std::string place,
                                                std::string message) {
  return tl::make_unexpected(Error{code, std::move(place), std::move(message), {}});
}

// Hands an error on unchanged from one Result to another.
[[nodiscard]] inline tl::unexpected<Error> fail(Error error) {
  return tl::make_unexpected(std::move(error));
}

// "place: message", then one indented line a problem: what a person reads.
[[nodiscard]] std::string describe(const Error& error);

}  // namespace shoplore
