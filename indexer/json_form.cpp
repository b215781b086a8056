#include "indexer/json_form.hpp"

#include <fmt/format.h>

#include <set>

namespace shoplore {

std::string pointer_token(std::string_view key) {
  std::string token;
  for (char c : key) {
    if (c == '~')
      token += "~0";
    else if (c == '/')
      token += "~1";
    else
      token += c;
  }
  return token;
}

namespace {

// A parser's error as ours; T is called and gives the Json.
template <class Parse>
Result<Json> parsed(const Parse& parse) {
  try {
    return parse();
  } catch (const Json::parse_error& error) {
    // The library's own text begins with a tag in brackets that helps nobody here.
    std::string why = error.what();
    if (const auto tag = why.find("] "); tag != std::string::npos) why = why.substr(tag + 2);
    return fail(ErrorCode::kInvalidInput, "",
                fmt::format("malformed JSON at byte {}: {}", error.byte, why));
  } catch (const Json::exception&) {
    // The only other one the parser throws: a number that no double holds.
    return fail(ErrorCode::kInvalidInput, "", "malformed JSON: a number is too large");
  }
}

}  // namespace

Result<Json> parse_json(std::string_view text, std::size_t max_bytes) {
  if (text.size() > max_bytes) {
    return fail(ErrorCode::kTooLarge, "",
                fmt::format("{} bytes of JSON, at most {} are taken", text.size(), max_bytes));
  }
  // One set of keys an open object: the library would silently keep the last of two.
  std::vector<std::set<std::string>> open_objects;
  std::string twice;
  const auto watch_keys = [&](int, Json::parse_event_t event, Json& value) {
    using Event = Json::parse_event_t;
    if (event == Event::object_start) open_objects.emplace_back();
    if (event == Event::object_end) open_objects.pop_back();
    if (event == Event::key && !open_objects.back().insert(value.get<std::string>()).second) {
      twice = value.get<std::string>();
    }
    return true;
  };
  auto json = parsed([&] { return Json::parse(text, watch_keys); });
  if (!json || twice.empty()) return json;
  return fail(ErrorCode::kInvalidInput, "", fmt::format("the field '{}' stands twice", twice));
}

Result<Json> parse_shipped_json(std::string_view text) {
  return parsed([&] { return Json::parse(text); });
}

std::string string_fault(std::string_view text, std::size_t max_bytes) {
  if (text.size() > max_bytes) {
    return fmt::format("{} bytes long, at most {} are taken", text.size(), max_bytes);
  }
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool line_or_tab = c == '\n' || c == '\r' || c == '\t';
    if ((byte < 0x20 && !line_or_tab) || byte == 0x7f) {
      return fmt::format("contains the control character 0x{:02x}", byte);
    }
  }
  return "";
}

}  // namespace shoplore
