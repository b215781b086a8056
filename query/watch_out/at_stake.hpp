// What it costs when a warning is ignored and comes true, in minutes of work.
//
// Minutes of a repair: the shop's median of clocked minutes for the cause, plus its parts at what
// an hour costs here, parts / hour_costs x 60 (checks/work_figures.hpp). Of a component: the mean
// over its causes, weighed by their cases. Where nobody wrote hours down, kUsualRepairMinutes.
//
//   what ignoring a warning costs = minutes at stake x how often
//
// | kind               | minutes at stake                       | how often                    |
// |--------------------|----------------------------------------|------------------------------|
// | seen_before        | repair of the cause found last time;   | 1 when it may be a comeback, |
// |                    | odometer stood higher: of the dearest  | or the odometer stood        |
// |                    | likely cause                           | higher; else kStoryOnly      |
// | earlier_repair     | repair of the component it is about    | share of those like this one |
// | fix_came_back      | repair of the cause, done once more    | share x probability of cause |
// | work_sign          | repair of the cause, gone the wrong    | share (x probability of the  |
// |                    | way                                    | cause when not seen yet)     |
// | pass_, fail_misled | the check and the repair of the cause  | share x probability of cause |
// | contributing_cause | repair of the contributing cause       | share x probability of cause |
// | codes_cleared      | kUsualMinutes of reading codes again   | share; 1 where none is known |
// | part_brand         | repair of the component, done once     | share less the others' share |
// |                    | more                                   |                              |
//
// Pure functions, any thread.
#pragma once

#include <string_view>

#include "query/checks/work_figures.hpp"

namespace shoplore {

// Of a repair nobody timed.
inline constexpr double kUsualRepairMinutes = 60;
// A vehicle's story is worth a look even where nothing came back.
inline constexpr double kStoryOnly = 0.1;

[[nodiscard]] double minutes_of_cause(std::string_view cause_key, const WorkFigures& figures);
[[nodiscard]] double minutes_of_component(std::string_view component, const WorkFigures& figures);

}  // namespace shoplore
