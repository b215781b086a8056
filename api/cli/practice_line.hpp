// One line of somebody practising at a terminal, as an inert value.
//
// | line                                                     | means                            |
// |----------------------------------------------------------|----------------------------------|
// | 60 wastegate linkage seized open, 30 turbo vanes sticking | what is believed, in percent     |
// | check move the linkage by hand                           | asks for that check              |
// | commit wastegate linkage seized open                     | commits to that cause            |
// | 2 (or commit 2)                                          | a choice, or a percentage        |
// | causes turbo, checks boost                               | names that fit; all without words|
// | show, help, next, stop                                   |                                  |
// A new part of a belief begins after a comma or semicolon with a number, so that a cause's own
// comma ends nothing. Knows no causes: names stay as typed.
// Pure function, any thread. kInvalidInput says what was expected.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/practice/practice_desk.hpp"

namespace shoplore {

struct PracticeLine {
  enum class Kind {
    kBelief,
    kNumber,
    kCheck,
    kCommit,
    kCauses,
    kChecks,
    kShow,
    kHelp,
    kNext,
    kStop
  };
  Kind kind = Kind::kHelp;
  std::vector<StatedBelief> beliefs;  // of kBelief
  double number = 0;                  // of kNumber
  std::string words;                  // of kCheck, kCommit, kCauses, kChecks; may be empty
};

[[nodiscard]] Result<PracticeLine> parse_practice_line(std::string_view line);

}  // namespace shoplore
