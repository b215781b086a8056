#include "indexer/spelled_numbers.hpp"

#include <gtest/gtest.h>

#include <string>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

struct Row {
  const char* text;
  double value;
  const char* words;
};

TEST(SpelledNumbers, AreReadAsFarAsTheyGo) {
  const Row table[] = {
      {"seven", 7, "seven"},
      {"ninety two thousand kilometres", 92'000, "ninety two thousand"},
      {"ninety-two thousand", 92'000, "ninety-two thousand"},
      {"a hundred", 100, "a hundred"},
      {"a hundred and ten thousand km", 110'000, "a hundred and ten thousand"},
      {"a bolt", 0, ""},
      {"one hundred and forty two thousand miles", 142'000, "one hundred and forty two thousand"},
      {"one hundred forty thousand five hundred", 140'500,
       "one hundred forty thousand five hundred"},
      {"two thousand and seventeen", 2'017, "two thousand and seventeen"},
      {"three hundred and it stalls", 300, "three hundred"},
      {"twelve point four volts", 12.4, "twelve point four"},
      {"zero point one two", 0.12, "zero point one two"},
      {"two three", 2, "two"},
      {"twenty fifteen", 20, "twenty"},
      {"Twelve", 12, "Twelve"},
      {"onerous", 0, ""},
      {"hundred", 0, ""}};
  for (const Row& row : table) {
    const auto number = spelled_number_at(row.text, 0);
    EXPECT_EQ(number.has_value(), *row.words != '\0') << row.text;
    if (!number) continue;
    EXPECT_NEAR(number->value, row.value, 1e-9) << row.text;
    EXPECT_EQ(words_at(row.text, {0, number->end}), row.words);
  }
}

TEST(SpelledNumbers, Years) {
  const Row table[] = {{"two thousand and seventeen petrol", 2'017, "two thousand and seventeen"},
                       {"twenty seventeen", 2'017, "twenty seventeen"},
                       {"twenty twenty one", 2'021, "twenty twenty one"},
                       {"nineteen ninety eight", 1'998, "nineteen ninety eight"},
                       {"twenty oh nine", 2'009, "twenty oh nine"},
                       {"twenty two", 0, ""},
                       {"twenty", 0, ""},
                       {"nineteen", 0, ""},
                       {"ninety two thousand", 0, ""},
                       {"two", 0, ""}};
  for (const Row& row : table) {
    const auto year = spelled_year_at(row.text, 0);
    EXPECT_EQ(year.has_value(), *row.words != '\0') << row.text;
    if (!year) continue;
    EXPECT_EQ(year->value, row.value) << row.text;
    EXPECT_EQ(words_at(row.text, {0, year->end}), row.words);
  }
}

TEST(SpelledNumbers, TellMileageYearAndReadings) {
  const NoteRow table[] = {{"about ninety two thousand kilometres on it", {"mileage 92000"}},
                           {"one hundred and ten thousand miles", {"mileage 177028"}},
                           {"two thousand kilometres ago", {}},
                           {"a twenty fourteen one", {"model_year 2014"}},
                           {"from two thousand and nine", {"model_year 2009"}},
                           {"fitted in twenty twenty one", {}},
                           {"at two thousand rpm", {}},
                           {"one point four bar", {"reading 1.4 bar"}},
                           {"eight hundred and eighty ohms", {"reading 880 ohm"}},
                           {"twelve volt battery", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(SpelledNumbers, AWordIsANumberUpToNinety) {
  EXPECT_EQ(number_word("zero"), 0);
  EXPECT_EQ(number_word("nineteen"), 19);
  EXPECT_EQ(number_word("ninety"), 90);
  for (const char* word : {"", "a", "hundred", "tens", "Two"})
    EXPECT_FALSE(number_word(word)) << word;
}

}  // namespace
}  // namespace shoplore
