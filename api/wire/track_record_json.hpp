// The track record and a fit as JSON.
// Pure functions, any thread.
#pragma once

#include <string>

#include "query/ranking/kept_knobs.hpp"
#include "query/track_record.hpp"

namespace shoplore {

[[nodiscard]] std::string track_record_json(const TrackRecord& record);
[[nodiscard]] std::string fit_json(const KeptKnobs& kept);

}  // namespace shoplore
