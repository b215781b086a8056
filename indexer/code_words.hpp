// Words around a fault code: its status, when it was seen, and what stands for "fault code" itself.
//
// | words                                                       | status    |
// |-------------------------------------------------------------|-----------|
// | stored, confirmed, memorised, logged                        | stored    |
// | pending, pend                                               | pending   |
// | permanent, perm, pdtc                                       | permanent |
// | active, current, present                                    | active    |
// | history, historic, hist, passive, inactive, and             | history   |
// | intermittent, sporadic: was there and does not fail now     |           |
// Requires of every function: a lower-case word. Pure functions, any thread.
#pragma once

#include <optional>
#include <string_view>

#include "indexer/case_record.hpp"

namespace shoplore {

[[nodiscard]] std::optional<CodeStatus> status_of_word(std::string_view word);

// "current", "intermittent": also words of other things ("current draw", "intermittent misfire"),
// so after a code they are its status only where nothing follows that they could belong to.
[[nodiscard]] bool is_word_of_other_things(std::string_view word);

// "code", "dtc", "fault": stands for a fault code.
[[nodiscard]] bool says_code(std::string_view word);
// "codes", "dtcs": of those, the ones that never mean anything else.
[[nodiscard]] bool says_only_code(std::string_view word);

// "clearing", "erased", "reset".
[[nodiscard]] bool says_cleared(std::string_view word);
// "back", "returned", "reappeared".
[[nodiscard]] bool says_returned(std::string_view word);
// "repair", "fix": after "after".
[[nodiscard]] bool says_repair(std::string_view word);

// "stored", "present", "there": after "not" they say that a code is not there.
[[nodiscard]] bool says_there(std::string_view word);

// How sure a status is that the fault is there: pending, history, stored, permanent, active.
[[nodiscard]] int sureness(CodeStatus status);

}  // namespace shoplore
