#include "api/wire/record_json.hpp"

#include <fmt/format.h>

#include "indexer/json_form.hpp"

namespace shoplore {

namespace {

// A body that does not parse is the store's damage; it still must be shown, not thrown over.
Json body_of(std::string_view text) {
  auto json = parse_json(text, 4 * kMaxCaseBytes);
  return json ? std::move(*json) : Json(text);
}

}  // namespace

std::string recorded_json(const Recorded& recorded) {
  const Json json = {{"ref", recorded.stored.record.ref},
                     {"revision", recorded.stored.revision.value},
                     {"warnings", recorded.warnings},
                     {"record", body_of(case_to_json(recorded.stored.record))}};
  return json.dump();
}

std::string history_json(const std::vector<Change>& history) {
  Json list = Json::array();
  std::string_view before;
  for (const Change& change : history) {
    list.push_back({{"revision", change.revision.value},
                    {"at", format_time(change.at)},
                    {"role", name_of(change.role)},
                    {"changed", changed_fields(before, change.body)},
                    {"record", body_of(change.body)}});
    before = change.body;
  }
  return list.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string findings_json(const std::vector<std::string>& lines) {
  return Json({{"findings", lines}}).dump();
}

std::string health_json(std::int64_t cases, Revision recorded, Revision snapshot) {
  return Json({{"status", "ok"},
               {"cases", cases},
               {"revision", recorded.value},
               {"answering_as_of", snapshot.value}})
      .dump();
}

std::vector<std::string> changed_fields(std::string_view before, std::string_view after) {
  const Json old = before.empty() ? Json::object() : body_of(before);
  const Json now = body_of(after);
  std::vector<std::string> changed;
  if (!old.is_object() || !now.is_object()) return {"the whole"};
  for (const auto& [key, value] : now.items()) {
    if (!old.contains(key) || old[key] != value) changed.push_back(key);
  }
  for (const auto& [key, unused] : old.items()) {
    if (!now.contains(key)) changed.push_back(key);
  }
  return changed;
}

std::string format_time(std::int64_t at) {
  const std::chrono::sys_seconds time{std::chrono::seconds(at)};
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::hh_mm_ss clock(time - day);
  return fmt::format("{}T{:02}:{:02}:{:02}Z", format_date(Date{day}), clock.hours().count(),
                     clock.minutes().count(), clock.seconds().count());
}

}  // namespace shoplore
