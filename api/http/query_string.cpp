#include "api/http/query_string.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "indexer/json_form.hpp"
#include "indexer/text.hpp"

namespace shoplore {

namespace {

struct Allowed {
  std::string_view name;
  bool repeatable = false;
};

std::vector<std::string_view> pieces(std::string_view text, char separator) {
  std::vector<std::string_view> all;
  while (!text.empty()) {
    const auto end = std::min(text.find(separator), text.size());
    if (end > 0) all.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return all;
}

std::vector<Allowed> allowed_names(std::string_view names) {
  std::vector<Allowed> allowed;
  for (std::string_view name : pieces(names, ' ')) {
    const bool repeatable = name.back() == '*';
    if (repeatable) name.remove_suffix(1);
    allowed.push_back({name, repeatable});
  }
  return allowed;
}

// Nothing for a % without two hex digits.
std::optional<std::string> decoded(std::string_view raw) {
  std::string text;
  for (std::size_t i = 0; i < raw.size(); ++i) {
    if (raw[i] != '%') {
      text += raw[i] == '+' ? ' ' : raw[i];
      continue;
    }
    unsigned byte = 0;
    const char* const first = raw.data() + i + 1;
    if (i + 2 >= raw.size()) return std::nullopt;
    const auto [end, error] = std::from_chars(first, first + 2, byte, 16);
    if (error != std::errc{} || end != first + 2) return std::nullopt;
    text += static_cast<char>(byte);
    i += 2;
  }
  return text;
}

// What is wrong with a value, or empty.
std::string fault_of(const std::string& value) {
  if (!is_utf8(value)) return "is not valid UTF-8";
  if (value.find_first_not_of(" \t\r\n") == value.npos) return "is empty";
  return string_fault(value, kMaxTextBytes);
}

Error refused(std::vector<Problem> problems) {
  Error error{ErrorCode::kInvalidInput, problems.front().place, problems.front().expected, {}};
  error.problems = std::move(problems);
  return error;
}

std::string place_of(std::string_view name) {
  return "?" + std::string(name);
}

}  // namespace

Result<QueryString> QueryString::parse(std::string_view raw, std::string_view allowed) {
  const std::vector<Allowed> names = allowed_names(allowed);
  QueryString query;
  std::vector<Problem> problems;
  for (const std::string_view pair : pieces(raw, '&')) {
    const auto equals = std::min(pair.find('='), pair.size());
    const auto name = decoded(pair.substr(0, equals));
    auto value = decoded(pair.substr(std::min(equals + 1, pair.size())));
    const bool is_text = name && is_utf8(*name) && string_fault(*name, kMaxNameBytes).empty();
    if (!is_text) {
      problems.push_back({"?", "a parameter's name is malformed"});
      continue;
    }
    const auto known = std::find_if(names.begin(), names.end(),
                                    [&](const Allowed& each) { return each.name == *name; });
    if (known == names.end()) {
      problems.push_back({place_of(*name), "is not a known parameter here"});
    } else if (!value) {
      problems.push_back({place_of(*name), "has a % without two hex digits after it"});
    } else if (std::string fault = fault_of(*value); !fault.empty()) {
      problems.push_back({place_of(*name), std::move(fault)});
    } else if (!known->repeatable && !query.all(*name).empty()) {
      problems.push_back({place_of(*name), "stands twice"});
    } else {
      query.values_.emplace_back(*name, std::move(*value));
    }
  }
  if (!problems.empty()) return fail(refused(std::move(problems)));
  return query;
}

std::vector<std::string> QueryString::all(std::string_view name) const {
  std::vector<std::string> found;
  for (const auto& [each, value] : values_) {
    if (each == name) found.push_back(value);
  }
  return found;
}

std::string QueryString::question() const {
  auto sorted = values_;
  std::sort(sorted.begin(), sorted.end());
  std::string text;
  for (const auto& [name, value] : sorted) {
    if (name != "cursor" && name != "limit") text += name + "=" + value + "\n";
  }
  return text;
}

std::string QueryReader::text(std::string_view name) {
  const auto values = query_.all(name);
  return values.empty() ? "" : values.front();
}

std::optional<Date> QueryReader::day(std::string_view name) {
  const std::string value = text(name);
  if (value.empty()) return std::nullopt;
  const auto date = parse_date(value);
  if (date) return *date;
  wrong(name, date.error().message);
  return std::nullopt;
}

std::optional<std::int64_t> QueryReader::whole(std::string_view name, std::int64_t low,
                                               std::int64_t high) {
  const std::string value = text(name);
  if (value.empty()) return std::nullopt;
  std::int64_t number = 0;
  const char* const last = value.data() + value.size();
  const auto [end, error] = std::from_chars(value.data(), last, number);
  if (error == std::errc{} && end == last && number >= low && number <= high) return number;
  wrong(name, fmt::format("\"{}\" given, expected a whole number from {} to {}", value, low, high));
  return std::nullopt;
}

bool QueryReader::flag(std::string_view name) {
  const std::string value = text(name);
  if (!value.empty() && value != "true" && value != "false") {
    wrong(name, fmt::format("\"{}\" given, expected true or false", value));
  }
  return value == "true";
}

Result<void> QueryReader::finish() const {
  if (problems_.empty()) return {};
  return fail(refused(problems_));
}

std::vector<std::string> QueryReader::listed(std::string_view name) const {
  std::vector<std::string> names;
  for (const std::string& value : query_.all(name)) {
    for (const std::string_view piece : pieces(value, ',')) names.emplace_back(piece);
  }
  return names;
}

void QueryReader::wrong(std::string_view name, std::string expected) {
  problems_.push_back({place_of(name), std::move(expected)});
}

}  // namespace shoplore
