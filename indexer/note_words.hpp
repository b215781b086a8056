// Words of workshop notes that say how to read the words around them: negations, verdicts, times,
// units, and ordinary words that are never a misspelling.
//
// Findings themselves are the vocabulary's (vocabulary.hpp); stop words are text.hpp's.
// Requires of every function: the word is as words_of gives it, lower case.
// Pure functions, any thread.
#pragma once

#include <optional>
#include <string_view>

namespace shoplore {

// "no", "without", "doesn't": turns the next finding round.
[[nodiscard]] bool is_negation(std::string_view word);

// Ends what a negation reaches: "and", "but"; "cure", "fix" ("did not cure the misfire").
[[nodiscard]] bool ends_negation(std::string_view word);

// What may follow "not" after a finding that is absent: "found", "heard", "on".
[[nodiscard]] bool is_noticed(std::string_view word);

// "gone", "absent": right after a finding it says that the finding is not there.
[[nodiscard]] bool says_absent(std::string_view word);

// "loss", "complaint": after a phrase that begins with a negation it turns the phrase round: "no
// power" is a finding, "no power loss" its absence.
[[nodiscard]] bool turns_denial_round(std::string_view word);

// "steering", "tyre": after "no power" or "flat" the talk is of that thing, not of the engine.
[[nodiscard]] bool names_another_thing(std::string_view word);

// "not always" says how often, not that something is absent.
[[nodiscard]] bool says_how_often(std::string_view word);

// "ok", "dry", and "bad", "stiff", after or before the name of a check.
[[nodiscard]] bool says_pass(std::string_view word);
[[nodiscard]] bool says_fail(std::string_view word);

// Weaker words, which tell how a check went when none of the plain ones is near it: "should",
// "all"; "only", "hangs"; "maybe", "couldn't".
[[nodiscard]] bool hints_pass(std::string_view word);
[[nodiscard]] bool hints_fail(std::string_view word);
[[nodiscard]] bool hints_unclear(std::string_view word);

// "inconclusive": the check told nothing.
[[nodiscard]] bool says_unclear(std::string_view word);

// "front", "left", "both": says which one, between a word of work and its part.
[[nodiscard]] bool says_position(std::string_view word);

// "leak", "play": its lack is good news after a check; "spark", "feed": its lack is bad.
[[nodiscard]] bool is_good_to_lack(std::string_view word);
[[nodiscard]] bool is_bad_to_lack(std::string_view word);

// "wheel", "runs", "stuck": "hot" after it tells how a thing is, not when something happens.
[[nodiscard]] bool takes_warmth(std::string_view word);

// "below", "difference": a value beside is the difference of two.
[[nodiscard]] bool says_difference(std::string_view word);

// "looked", "inspected": somebody looked at the part beside.
[[nodiscard]] bool says_look(std::string_view word);

// "new", "another": a repair done when directly at a component.
[[nodiscard]] bool is_replaced_adjective(std::string_view word);

// "needs", "should": before a repair they say that it is not done yet.
[[nodiscard]] bool says_not_yet(std::string_view word);

// Who repaired, and when: "elsewhere", "owner", "months", "ago".
[[nodiscard]] bool says_elsewhere(std::string_view word);
[[nodiscard]] bool says_owner(std::string_view word);
[[nodiscard]] bool says_here(std::string_view word);
[[nodiscard]] bool is_repair_context(std::string_view word);

// "5 V supply", "12 volt battery": a number and unit before it name a thing.
[[nodiscard]] bool is_named_by_voltage(std::string_view word);

// "km", "months": makes a number before it a distance or time since a repair.
[[nodiscard]] bool is_since_unit(std::string_view word);

// "rpm", "ohm": makes a number before it a reading, neither a mileage nor a year.
[[nodiscard]] bool is_reading_unit(std::string_view word);

// "at", "since": a number after it is no model year.
[[nodiscard]] bool comes_before_readings(std::string_view word);

// "window", "pump": after "electric" or "petrol" the word does not tell the vehicle's fuel.
[[nodiscard]] bool takes_fuel_word(std::string_view word);

// 3 of "3" and "three", 1 of "a", "an" and "one", up to 99; nothing of other words.
[[nodiscard]] std::optional<int> small_number(std::string_view word);

// "the", "this", "electric": a model's name after it is one even in small letters.
[[nodiscard]] bool introduces_vehicle(std::string_view word);

// "suspects", "maybe", "says": what follows is somebody's guess.
[[nodiscard]] bool says_guess(std::string_view word);

// "at", "on", "when": begins words of place or time.
[[nodiscard]] bool is_preposition(std::string_view word);

// "out", "off": belongs to the verb before it.
[[nodiscard]] bool is_particle(std::string_view word);

// "works [on] one speed [only]": what follows takes the praise back.
[[nodiscard]] bool limits_wellness(std::string_view word);

// "completely", "gets", "front": may stand between the words of a finding and changes nothing.
[[nodiscard]] bool is_filler(std::string_view word);

// Ordinary English that is one letter away from a word of the trade: "times" is not "tyres".
[[nodiscard]] bool is_ordinary(std::string_view word);

}  // namespace shoplore
