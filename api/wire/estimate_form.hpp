// A fitted value with its interval as JSON, the same in every answer. Include only from sources of
// api/wire/.
//
//   {"value":13600,"low":10700,"high":17200,"confidence":0.9}
#pragma once

#include "indexer/json_form.hpp"
#include "query/lives/lives.hpp"

namespace shoplore {

[[nodiscard]] inline Json estimate_form(const Estimate& estimate) {
  return {{"value", estimate.value},
          {"low", estimate.low},
          {"high", estimate.high},
          {"confidence", kShownConfidence}};
}

}  // namespace shoplore
