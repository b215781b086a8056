#include "query/lately/lately_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

const WindowRate* window_of(const LatelyRow& row, std::size_t months) {
  const auto found =
      std::find_if(row.windows.begin(), row.windows.end(),
                   [&](const WindowRate& window) { return window.months == months; });
  return found == row.windows.end() ? nullptr : &*found;
}

Change change_seen(const LatelyRow& row, const std::optional<std::size_t>& months) {
  if (!months) return row.change;
  const WindowRate* window = window_of(row, *months);
  if (window == nullptr || !stands_out(*window)) return Change::kNone;
  const Change change = window->rate.ratio > 1 ? Change::kRisen : Change::kFallen;
  // A rise that did not stand against the same months of the year before is none here either.
  return change == Change::kRisen && row.change == Change::kNone ? Change::kNone : change;
}

bool wanted(Change change, LatelyRows rows) {
  switch (rows) {
    case LatelyRows::kRisen:
      return change == Change::kRisen;
    case LatelyRows::kFallen:
      return change == Change::kFallen;
    case LatelyRows::kChanged:
      return change != Change::kNone;
    case LatelyRows::kAll:
      break;
  }
  return true;
}

}  // namespace

Result<Lately> seen_by(const LatelyView& view, Lately lately) {
  const std::string family = lower_case(view.engine_family);
  const auto& known = lately.engine_families;
  if (!family.empty() && std::find(known.begin(), known.end(), family) == known.end()) {
    return fail(ErrorCode::kInvalidInput, "engine family",
                fmt::format("\"{}\" is on no counted case", view.engine_family));
  }
  if (view.months && !lately.rows.empty() &&
      window_of(lately.rows.front(), *view.months) == nullptr) {
    return fail(ErrorCode::kInvalidInput, "months",
                fmt::format("{} are too many: there must be {} months before them", *view.months,
                            kFewestMonthsBefore));
  }
  const auto of_family = [&](const auto& row) {
    return family.empty() || row.engine_family == family;
  };
  std::erase_if(lately.rows, [&](const LatelyRow& row) {
    return !of_family(row) || !wanted(change_seen(row, view.months), view.rows);
  });
  if (view.months) {
    std::stable_sort(lately.rows.begin(), lately.rows.end(), [&](const auto& a, const auto& b) {
      return above_expected(*window_of(a, *view.months)) >
             above_expected(*window_of(b, *view.months));
    });
  }
  std::erase_if(lately.pairings, [&](const NewPairing& pairing) {
    return !of_family(pairing) || view.rows == LatelyRows::kFallen;
  });
  return lately;
}

}  // namespace shoplore
