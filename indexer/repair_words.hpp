// Words of a note that tell earlier repairs: what was done, by whom, and that it was only wanted.
//
// Beside note_words.hpp, whose words any reader asks for; these are of repairs alone.
// Requires of every function: the word is as words_of gives it, lower case.
// Pure functions, any thread.
#pragma once

#include <optional>
#include <string_view>

namespace shoplore {

// "relearn", "bleed": an action that follows another on the same part.
[[nodiscard]] bool is_follow_up(std::string_view action);

// "replaced", "rebuilt": the form in which a word of work says that it is done.
[[nodiscard]] bool is_past(std::string_view word);

// "change", "fit": the plain form, done only when somebody stands before it ("other garage change
// thermostat").
[[nodiscard]] bool is_plain_verb(std::string_view word);

// "swapped": done only when the note says by whom or when; else parts changed places for a test.
[[nodiscard]] bool is_swap(std::string_view word);

// "round", "with": after "swapped coil" they say that two parts changed places.
[[nodiscard]] bool says_places_changed(std::string_view word);

// "of", "to", "on": between a word of work and a part they say that the work was on another part
// ("seal for the turbo").
[[nodiscard]] bool ties_to_another(std::string_view word);

// "when", "since": what stands behind it is another sentence's.
[[nodiscard]] bool begins_sentence(std::string_view word);

// "order", "try", "known": before a repair they say that it is planned or a test part.
[[nodiscard]] bool says_planned(std::string_view word);

// "needed", "quoted": after a part the work is only wanted ("new pads needed").
[[nodiscard]] bool says_wanted(std::string_view word);

// "garage", "friend", "someone": somebody else did it.
[[nodiscard]] bool names_others(std::string_view word);

// "dealer", "place", "specialist": of these a firm that a part may name ("tyre place").
[[nodiscard]] bool names_firm(std::string_view word);

// "customer", "he": the owner, when right before the work or after "by".
// Somebody of the owner's home or street, never of a workshop.
[[nodiscard]] bool is_family(std::string_view word);
[[nodiscard]] bool names_owner(std::string_view word);

// "himself", "diy": the owner wherever it stands.
[[nodiscard]] bool says_own_work(std::string_view word);

// "we", "i": here, when right before the work.
[[nodiscard]] bool names_us(std::string_view word);

// "already", "has", "previously": may stand between who did it and the work.
[[nodiscard]] bool is_between_who_and_work(std::string_view word);

// Whole months of so many days, weeks, months or years, rounded down; nothing of other units.
[[nodiscard]] std::optional<int> months_of(int count, std::string_view unit);

}  // namespace shoplore
