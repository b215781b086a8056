// A ratio as JSON, the same in every answer; null where there is none. Include only from sources of
// api/wire/.
//
//   {"value":10.9,"low":5.4,"high":22,"confidence":0.9,"half_added":false}
#pragma once

#include <optional>

#include "indexer/json_form.hpp"
#include "query/checks/diagnostic_table.hpp"

namespace shoplore {

[[nodiscard]] inline Json ratio_form(const std::optional<Ratio>& ratio) {
  if (!ratio) return nullptr;
  return {{"value", ratio->value},
          {"low", ratio->low},
          {"high", ratio->high},
          {"confidence", kShownConfidence},
          {"half_added", ratio->half_added}};
}

}  // namespace shoplore
