#include "api/cli/practice_line.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <optional>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

using Kind = PracticeLine::Kind;

constexpr std::string_view kSpaces = " \t\r";

std::string_view trimmed(std::string_view text) {
  const auto begin = text.find_first_not_of(kSpaces);
  if (begin == text.npos) return {};
  return text.substr(begin, text.find_last_not_of(kSpaces) - begin + 1);
}

bool begins_number(std::string_view text) {
  text = trimmed(text);
  if (!text.empty() && text.front() == '-') text.remove_prefix(1);
  if (!text.empty() && text.front() == '.') text.remove_prefix(1);
  return !text.empty() && text.front() >= '0' && text.front() <= '9';
}

// "60", "60 %" or "60%" off the front; nothing when it is no number, as in "1.2.3" or "1e9 x".
std::optional<double> take_number(std::string_view& text) {
  text = trimmed(text);
  double number = 0;
  const auto [end, error] =
      std::from_chars(text.data(), text.data() + text.size(), number, std::chars_format::fixed);
  if (error != std::errc()) return std::nullopt;
  std::string_view rest = text.substr(static_cast<std::size_t>(end - text.data()));
  const bool ends = rest.empty() || rest.front() == '%' || kSpaces.find(rest.front()) != rest.npos;
  if (!ends) return std::nullopt;
  rest = trimmed(rest);
  if (!rest.empty() && rest.front() == '%') rest = trimmed(rest.substr(1));
  text = rest;
  return number;
}

std::vector<std::string_view> parts_of(std::string_view line) {
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool separates = line[i] == ',' || line[i] == ';';
    if (!separates || !begins_number(line.substr(i + 1))) continue;
    parts.push_back(line.substr(begin, i - begin));
    begin = i + 1;
  }
  parts.push_back(line.substr(begin));
  return parts;
}

Result<PracticeLine> belief_line(std::string_view line) {
  PracticeLine out;
  out.kind = Kind::kBelief;
  const auto parts = parts_of(line);
  for (std::string_view part : parts) {
    const std::string_view typed = trimmed(part);
    const auto number = take_number(part);
    if (!number) {
      return fail(ErrorCode::kInvalidInput, "line",
                  fmt::format("\"{}\" does not begin with a number; expected as in: 60 wastegate "
                              "linkage seized open, 30 turbo vanes sticking",
                              typed));
    }
    if (part.empty() && parts.size() == 1) {
      out.kind = Kind::kNumber;
      out.number = *number;
      return out;
    }
    if (part.empty()) {
      return fail(ErrorCode::kInvalidInput, "line",
                  fmt::format("expected a cause after \"{}\"", typed));
    }
    out.beliefs.push_back({std::string(part), *number});
  }
  return out;
}

}  // namespace

Result<PracticeLine> parse_practice_line(std::string_view line) {
  line = trimmed(line);
  if (begins_number(line)) return belief_line(line);
  constexpr std::array<std::pair<std::string_view, Kind>, 8> kWords{{{"check", Kind::kCheck},
                                                                     {"commit", Kind::kCommit},
                                                                     {"causes", Kind::kCauses},
                                                                     {"checks", Kind::kChecks},
                                                                     {"show", Kind::kShow},
                                                                     {"help", Kind::kHelp},
                                                                     {"next", Kind::kNext},
                                                                     {"stop", Kind::kStop}}};
  const std::string first = lower_case(line.substr(0, line.find_first_of(kSpaces)));
  for (const auto& [word, kind] : kWords) {
    if (first != word) continue;
    PracticeLine out;
    out.kind = kind;
    out.words = trimmed(line.substr(first.size()));
    if (kind == Kind::kCommit && begins_number(out.words)) return belief_line(out.words);
    return out;
  }
  return fail(
      ErrorCode::kInvalidInput, "line",
      fmt::format("\"{}\" was not understood; begin with a percentage (60 wastegate linkage "
                  "seized open), or with check, commit, causes, checks, show, help or stop",
                  line));
}

}  // namespace shoplore
