// Which rows of `lately` somebody wants to see.
//
// Pure function, any thread. Errors: kInvalidInput at "engine family" when no counted case has it,
// at "months" when there are too few months before such a window.
#pragma once

#include "query/lately/lately.hpp"

namespace shoplore {

enum class LatelyRows { kRisen, kFallen, kChanged, kAll };

struct LatelyView {
  std::optional<std::size_t> months;  // judged by this window alone; one of kLatelyMonths
  std::string engine_family;          // only rows and pairings of it; empty: all
  LatelyRows rows = LatelyRows::kRisen;
};

// With the rows and pairings of the view; pairings only with those that rose, or with all.
[[nodiscard]] Result<Lately> seen_by(const LatelyView& view, Lately lately);

}  // namespace shoplore
