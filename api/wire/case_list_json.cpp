#include "api/wire/case_list_json.hpp"

#include "api/wire/display_names.hpp"
#include "api/wire/record_json.hpp"
#include "indexer/json_form.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {

namespace {

constexpr std::size_t kComplaintBytes = 120;
constexpr std::string_view kEllipsis = "\u2026";

// Whole characters, and whole words where there are any near the end.
std::string beginning_of(const std::string& text) {
  if (text.size() <= kComplaintBytes) return text;
  std::size_t end = kComplaintBytes - kEllipsis.size();
  while ((static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  const auto space = text.find_last_of(" \n", end);
  if (space != text.npos && space > kComplaintBytes / 2) end = space;
  return text.substr(0, end).append(kEllipsis);
}

Json row(const StoredCase& stored, const Vocabulary& vocabulary) {
  const Case& record = stored.record;
  Json json = {{"ref", record.ref},
               {"revision", stored.revision.value},
               {"state", name_of(record.state)},
               {"opened", format_date(record.opened)}};
  if (record.closed) json["closed"] = format_date(*record.closed);
  json["vehicle"] = vehicle_text(record.vehicle);
  json["complaint"] = beginning_of(record.complaint);
  if (!record.cause) return json;
  const Cause& cause = *record.cause;
  json["cause"] = {{"component", cause.component},
                   {"failure", cause.failure},
                   {"name", display_cause(cause.component, cause.failure, vocabulary)}};
  return json;
}

std::string text_of(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// A body that does not parse is the store's damage; it is shown as it is.
Json body_of(std::string_view text) {
  if (text.empty()) return Json::object();
  auto json = parse_json(text, 4 * kMaxCaseBytes);
  return json ? std::move(*json) : Json(text);
}

void compare(const Json& before, const Json& after, const std::string& place, Json& changed) {
  if (before == after) return;
  if (!before.is_object() || !after.is_object()) {
    changed.push_back({{"place", place}, {"before", before}, {"after", after}});
    return;
  }
  for (const auto& [key, value] : after.items()) {
    const std::string here = place + "/" + pointer_token(key);
    if (before.contains(key)) {
      compare(before[key], value, here, changed);
    } else {
      changed.push_back({{"place", here}, {"after", value}});
    }
  }
  for (const auto& [key, value] : before.items()) {
    if (after.contains(key)) continue;
    changed.push_back({{"place", place + "/" + pointer_token(key)}, {"before", value}});
  }
}

}  // namespace

std::string case_list_json(const std::vector<StoredCase>& cases, std::string_view next_cursor,
                           const Vocabulary& vocabulary) {
  Json list = Json::array();
  for (const StoredCase& stored : cases) list.push_back(row(stored, vocabulary));
  return text_of({{"cases", std::move(list)}, {"next_cursor", next_cursor}});
}

std::string case_history_json(std::string_view ref, std::string_view before,
                              const std::vector<Change>& changes, ShowRecord show,
                              std::string_view next_cursor) {
  Json list = Json::array();
  Json old = body_of(before);
  for (const Change& change : changes) {
    Json body = body_of(change.body);
    Json changed = Json::array();
    compare(old, body, "", changed);
    Json json = {{"revision", change.revision.value},
                 {"at", format_time(change.at)},
                 {"role", name_of(change.role)},
                 {"changed", std::move(changed)}};
    if (show == ShowRecord::kYes) json["record"] = body;
    list.push_back(std::move(json));
    old = std::move(body);
  }
  return text_of({{"ref", ref}, {"changes", std::move(list)}, {"next_cursor", next_cursor}});
}

}  // namespace shoplore
