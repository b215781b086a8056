// A share as JSON, the same in every answer. Include only from sources of api/wire/.
//
//   {"count":14,"out_of":19,"interval":{"low":0.55,"high":0.87,"confidence":0.9}}
#pragma once

#include "indexer/json_form.hpp"
#include "query/share.hpp"

namespace shoplore {

[[nodiscard]] inline Json share_form(const Share& share) {
  return {{"count", share.count},
          {"out_of", share.out_of},
          {"interval",
           {{"low", share.interval.low},
            {"high", share.interval.high},
            {"confidence", kShownConfidence}}}};
}

}  // namespace shoplore
