#include "api/wire/kept_lately.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>

#include "api/wire/lately_form.hpp"
#include "indexer/file_lock.hpp"
#include "query/lately/lately_view.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kMaxBytes = 16 * 1024 * 1024;

std::uint32_t rows_of(const Json& kept, Change change) {
  std::uint32_t count = 0;
  for (const Json& row : kept.at("rows")) {
    if (row.at("change") == name_of(change)) ++count;
  }
  return count;
}

// Throws the library's exceptions when a member is missing or of another type.
KeptLately kept_of(const Json& json) {
  KeptLately kept;
  kept.json = json.dump();
  kept.made = parse_date(json.at("made").get<std::string>()).value();
  kept.revision.value = json.at("revision").get<std::int64_t>();
  kept.risen = rows_of(json, Change::kRisen);
  kept.fallen = rows_of(json, Change::kFallen);
  kept.pairings = static_cast<std::uint32_t>(json.at("pairings").size());
  return kept;
}

}  // namespace

Result<std::optional<KeptLately>> read_lately(const ShopFolder& folder) {
  std::error_code ignored;
  if (!std::filesystem::exists(folder.lately(), ignored)) return std::optional<KeptLately>();
  std::ifstream file(folder.lately());
  std::stringstream text;
  text << file.rdbuf();
  const auto json = parse_json(text.str(), kMaxBytes);
  try {
    if (json) return std::optional(kept_of(*json));
  } catch (const std::exception&) {
    // Not a file of ours: said below.
  }
  return fail(ErrorCode::kDamagedIndex, folder.lately().string(), "is not as written");
}

Result<KeptLately> make_lately(const ShopFolder& folder, const CaseCounter& counter,
                               Revision revision, Date day) {
  const auto counts = monthly_counts(counter, day);
  // Cases closed in a month still running are no reason to fail: nothing can be said yet.
  if (!counts && counts.error().code != ErrorCode::kInvalidInput) return fail(counts.error());
  auto changed =
      seen_by({{}, "", LatelyRows::kChanged}, lately(counts ? *counts : MonthlyCounts{}));
  if (!changed) return fail(changed.error());
  Json json = lately_form(*changed);
  json["revision"] = revision.value;
  json["made"] = format_date(day);
  KeptLately kept = kept_of(json);
  if (auto written = replace_file(folder.lately(), kept.json + "\n"); !written) {
    return fail(written.error());
  }
  return kept;
}

}  // namespace shoplore
