// The object of lately_json.hpp, for sources that put more into it. Include only from sources of
// api/wire/.
#pragma once

#include "indexer/json_form.hpp"
#include "query/lately/lately.hpp"

namespace shoplore {

[[nodiscard]] Json lately_form(const Lately& lately);

}  // namespace shoplore
