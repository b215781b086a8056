// How different hands write the same sentence: shorthand, slips, capitals or none.
//
// Changes letters and words only, never what is said. Pure but for the Random. Threads: one per
// Random.
#pragma once

#include <string>

#include "corpus-demo/random.hpp"

namespace shoplore {

// The sentence as one of many hands would write it.
[[nodiscard]] std::string in_some_hand(std::string text, Random& random);

// Two neighbouring letters of one longer word change places; short texts stay as they are.
void swap_letters(std::string& text, Random& random);

// One word written twice, as happens in a hurry; texts of one word stay as they are.
void double_a_word(std::string& text, Random& random);

// Small letters to capitals or back, ASCII only.
enum class Letters { kCapitals, kSmall };
void change_case(std::string& text, Letters to);

}  // namespace shoplore
