#include "query/watch_out/watch_out.hpp"

#include <algorithm>
#include <array>

#include "query/watch_out/cleared_codes.hpp"
#include "query/watch_out/contributing_causes.hpp"
#include "query/watch_out/earlier_repairs.hpp"
#include "query/watch_out/misleading_checks.hpp"
#include "query/watch_out/own_comebacks.hpp"
#include "query/watch_out/part_brands.hpp"
#include "query/watch_out/work_signs.hpp"

namespace shoplore {
namespace {

using Kind = Result<std::vector<Warning>> (*)(const WatchQuestion&);
constexpr std::array<Kind, 6> kOfLikelyCauses{
    warn_of_earlier_repairs,   warn_of_own_comebacks,       warn_of_work_signs,
    warn_of_misleading_checks, warn_of_contributing_causes, warn_of_part_brands};

void put_in_order(std::vector<Warning>& warnings) {
  std::stable_sort(warnings.begin(), warnings.end(), [](const Warning& a, const Warning& b) {
    return a.expected_minutes() > b.expected_minutes();
  });
}

}  // namespace

Result<std::vector<Warning>> counted_warnings(const WatchQuestion& question) {
  auto warnings = warn_of_cleared_codes(question);
  if (!warnings || question.causes.empty()) return warnings;
  for (const Kind kind : kOfLikelyCauses) {
    auto more = kind(question);
    if (!more) return fail(more.error());
    std::move(more->begin(), more->end(), std::back_inserter(*warnings));
  }
  put_in_order(*warnings);
  return warnings;
}

Result<std::vector<Warning>> watch_out(const WatchQuestion& question,
                                       const std::optional<VehicleNow>& vehicle,
                                       const Store& store) {
  auto warnings = counted_warnings(question);
  if (!warnings) return warnings;
  if (vehicle) {
    auto seen = warn_of_visits_before(*vehicle, question, store);
    if (!seen) return fail(seen.error());
    if (*seen) warnings->insert(warnings->begin(), std::move(**seen));
    put_in_order(*warnings);
  }
  std::vector<CaseId> ids;
  for (const Warning& warning : *warnings) {
    ids.insert(ids.end(), warning.cases.begin(), warning.cases.end());
  }
  auto refs = store.refs(ids);
  if (!refs) return fail(refs.error());
  auto next = std::make_move_iterator(refs->begin());
  for (Warning& warning : *warnings) {
    const auto end = next + static_cast<std::ptrdiff_t>(warning.cases.size());
    warning.refs.assign(next, end);
    next = end;
  }
  return warnings;
}

}  // namespace shoplore
