#include "indexer/vin.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

TEST(Vin, CaseSpacesAndHyphensMakeNoDifference) {
  for (const char* text :
       {"1M8GDM9AXKP042788", "1m8gdm9axkp042788", "1M8 GDM9A X KP 042788", "1M8-GDM9AX-KP042788"}) {
    const auto vin = Vin::parse(text);
    ASSERT_TRUE(vin) << text;
    EXPECT_EQ(vin->text(), "1M8GDM9AXKP042788");
  }
}

TEST(Vin, WrongFormIsRefusedSayingWhatIsWrong) {
  const std::pair<const char*, const char*> rows[] = {
      {"", "17 characters, this has 0"},
      {"1M8GDM9AXKP04278", "17 characters, this has 16"},
      {"1M8GDM9AXKP0427889", "17 characters, this has 18"},
      {"1M8GDM9AXKPO42788", "position 12 is O"},
      {"IM8GDM9AXKP042788", "position 1 is I"},
      {"1M8GDM9AXKP04278q", "position 17 is Q"},
      {"1M8GDM9AXKP04278_", "letters A to Z and digits only"},
      {"1M8GDM9AXKP04278\xC3\xA9", "letters A to Z and digits only"}};
  for (const auto& [text, why] : rows) {
    const auto vin = Vin::parse(text);
    ASSERT_FALSE(vin) << text;
    EXPECT_EQ(vin.error().code, ErrorCode::kInvalidInput);
    EXPECT_NE(vin.error().message.find(why), std::string::npos) << vin.error().message;
  }
}

TEST(Vin, RefusalNeverRepeatsTheNumber) {
  const auto vin = Vin::parse("1M8GDM9AXKPO42788");
  ASSERT_FALSE(vin);
  EXPECT_EQ(describe(vin.error()).find("1M8GDM9"), std::string::npos);
}

TEST(Vin, WrongCheckCharacterIsReadAllTheSame) {
  const auto vin = Vin::parse("1M8GDM9A1KP042788");
  ASSERT_TRUE(vin);
  EXPECT_EQ(vin->check_digit(), CheckDigit::kDoesNotFit);
}

TEST(Vin, EveryWrongSingleCharacterOfFullWeightIsNoticed) {
  // A prime modulus: changing one digit by less than 11 changes the remainder.
  const std::string right = "11111111111111111";
  for (std::size_t at = 0; at < right.size(); ++at) {
    if (at == 8) continue;
    for (char digit = '2'; digit <= '9'; ++digit) {
      std::string wrong = right;
      wrong[at] = digit;
      EXPECT_EQ(Vin::parse(wrong)->check_digit(), CheckDigit::kDoesNotFit) << wrong;
    }
  }
}

TEST(Vin, NineInPositionThreeIsALowVolumeMaker) {
  const auto low = Vin::parse("1M9GDM9AXKP042788");
  ASSERT_TRUE(low);
  EXPECT_EQ(low->maker_volume(), MakerVolume::kLow);
  EXPECT_EQ(low->maker_code(), "1M9042");
  const auto ordinary = Vin::parse("1M8GDM9AXKP042788");
  EXPECT_EQ(ordinary->maker_volume(), MakerVolume::kOrdinary);
  EXPECT_EQ(ordinary->maker_code(), "1M8");
}

}  // namespace
}  // namespace shoplore
