// The query of a request's address, read strictly: every parameter by name, at most once unless
// it may be repeated, and well-formed.
//
// Decodes as forms do (WHATWG URL, application/x-www-form-urlencoded): "+" is a space, %XX a byte.
// Places in errors are the parameter's name after a question mark: "?limit".
// Plain values; any thread.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "indexer/enum_names.hpp"
#include "indexer/quantities.hpp"
#include "indexer/result.hpp"

namespace shoplore {

class QueryString {
 public:
  // What follows the "?", undecoded. `allowed`: names with spaces between; "state*" may stand
  // several times. kInvalidInput names every parameter that is unknown, doubled, empty, not UTF-8,
  // or that holds control characters or a broken %.
  [[nodiscard]] static Result<QueryString> parse(std::string_view raw, std::string_view allowed);

  // Values of a parameter in their order; empty when it is not there.
  [[nodiscard]] std::vector<std::string> all(std::string_view name) const;

  // Everything but cursor and limit, in a form of its own: what a cursor belongs to.
  [[nodiscard]] std::string question() const;

 private:
  std::vector<std::pair<std::string, std::string>> values_;
};

// Reads values and collects what is wrong with them.
class QueryReader {
 public:
  explicit QueryReader(const QueryString& query) : query_(query) {}

  // "" when it is not there.
  [[nodiscard]] std::string text(std::string_view name);
  [[nodiscard]] std::optional<Date> day(std::string_view name);
  [[nodiscard]] std::optional<std::int64_t> whole(std::string_view name, std::int64_t low,
                                                  std::int64_t high);
  // "true" or "false"; false when it is not there.
  [[nodiscard]] bool flag(std::string_view name);
  // Names with commas between, the parameter once or several times.
  template <class Enum>
  [[nodiscard]] std::set<Enum> names(std::string_view name) {
    std::set<Enum> found;
    for (const std::string& each : listed(name)) {
      if (const auto value = enum_from_name<Enum>(each))
        found.insert(*value);
      else
        wrong(name, "\"" + each + "\" given, expected " + expected_names<Enum>());
    }
    return found;
  }

  // The problems found, if any.
  [[nodiscard]] Result<void> finish() const;

 private:
  [[nodiscard]] std::vector<std::string> listed(std::string_view name) const;
  void wrong(std::string_view name, std::string expected);
  const QueryString& query_;
  std::vector<Problem> problems_;
};

}  // namespace shoplore
