// The track record for a terminal: tables, and said against right as a plot.
// Pure functions, any thread.
#pragma once

#include <string>

#include "query/track_record.hpp"

namespace shoplore {

[[nodiscard]] std::string print_track_record(const TrackRecord& record);

}  // namespace shoplore
