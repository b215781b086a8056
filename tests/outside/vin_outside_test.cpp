// Vehicle identification numbers against the regulation, 49 CFR 565.15 (US).
#include <gtest/gtest.h>

#include "indexer/vin.hpp"

namespace shoplore {
namespace {

struct CheckRow {
  const char* vin;
  int weighted_sum;
  char check_character;
  CheckDigit verdict;
  const char* source;
};

constexpr CheckRow kCheckRows[] = {
    {"1G4AH59H45G118341", 411, '4', CheckDigit::kFits, "49 CFR 565.15(c), Table VI sample"},
    {"1M8GDM9AXKP042788", 351, 'X', CheckDigit::kFits, "widely published example of X"},
    {"11111111111111111", 89, '1', CheckDigit::kFits, "all ones: the weights add to 89"},
    {"1G4AH59H45G118331", 408, '1', CheckDigit::kDoesNotFit, "the sample, one digit changed"}};

TEST(VinOutside, SumsAndCheckCharactersAreTheRegulations) {
  for (const CheckRow& row : kCheckRows) {
    const auto vin = Vin::parse(row.vin);
    ASSERT_TRUE(vin) << row.source;
    EXPECT_EQ(vin->weighted_sum(), row.weighted_sum) << row.source;
    EXPECT_EQ(vin->expected_check_character(), row.check_character) << row.source;
    EXPECT_EQ(vin->check_digit(), row.verdict) << row.source;
  }
}

// 49 CFR 565.15, Table VII (2010 and after) and the table before it.
constexpr std::pair<char, int> kYears[] = {
    {'A', 1980}, {'B', 1981}, {'C', 1982}, {'D', 1983}, {'E', 1984}, {'F', 1985},
    {'G', 1986}, {'H', 1987}, {'J', 1988}, {'K', 1989}, {'L', 1990}, {'M', 1991},
    {'N', 1992}, {'P', 1993}, {'R', 1994}, {'S', 1995}, {'T', 1996}, {'V', 1997},
    {'W', 1998}, {'X', 1999}, {'Y', 2000}, {'1', 2001}, {'2', 2002}, {'3', 2003},
    {'4', 2004}, {'5', 2005}, {'6', 2006}, {'7', 2007}, {'8', 2008}, {'9', 2009}};

Vin with(char position_7, char position_10) {
  std::string text = "11111111111111111";
  text[6] = position_7;
  text[9] = position_10;
  return *Vin::parse(text);
}

TEST(VinOutside, DigitInPositionSevenMeansTheCycleFrom1980) {
  for (const auto& [code, year] : kYears) EXPECT_EQ(with('5', code).model_year_hint(), year);
}

TEST(VinOutside, LetterInPositionSevenMeansTheCycleFrom2010) {
  for (const auto& [code, year] : kYears) EXPECT_EQ(with('H', code).model_year_hint(), year + 30);
}

TEST(VinOutside, UZAndZeroAreNoYears) {
  for (char code : {'U', 'Z', '0'}) EXPECT_EQ(with('H', code).model_year_hint(), std::nullopt);
}

TEST(VinOutside, TheRegulationsSampleIsOfModelYear2005) {
  // Position 7 is 9 and position 10 is 5 (derived from the tables).
  EXPECT_EQ(Vin::parse("1G4AH59H45G118341")->model_year_hint(), 2005);
}

}  // namespace
}  // namespace shoplore
