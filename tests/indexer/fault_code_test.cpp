#include "indexer/fault_code.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

struct Row {
  const char* typed;
  const char* text;
  const char* failure_type;
};

TEST(FaultCode, FormsPeopleTypeAreTheSameCode) {
  for (const Row& row :
       {Row{"P0299", "P0299", ""}, Row{"p0299", "P0299", ""}, Row{"P 0299", "P0299", ""},
        Row{"p-0299", "P0299", ""}, Row{" P0299\t", "P0299", ""}, Row{"P0299-00", "P0299", "00"},
        Row{"P0299:16", "P0299", "16"}, Row{"p0a0f-fa", "P0A0F", "FA"},
        Row{"c0031-23", "C0031", "23"}, Row{"b1000", "B1000", ""}, Row{"U3FFF", "U3FFF", ""}}) {
    const auto code = parse_fault_code(row.typed);
    ASSERT_TRUE(code) << row.typed;
    EXPECT_EQ(code->text(), row.text);
    EXPECT_EQ(code->failure_type_text(), row.failure_type);
  }
}

TEST(FaultCode, NearMissesAreRefusedSayingWhatIsWrong) {
  const std::pair<const char*, const char*> rows[] = {
      {"P02G9", "'G' is not a hex digit"},
      {"", "a fault code is empty"},
      {"   ", "a fault code is empty"},
      {"0299", "expected P, C, B or U first"},
      {"D0299", "expected P, C, B or U first"},
      {"P", "expected four digits after the letter"},
      {"P029", "expected four digits after the letter"},
      {"P4299", "expected 0 to 3 after the letter, found '4'"},
      {"PA299", "expected 0 to 3 after the letter, found 'A'"},
      {"P02999", "expected nothing, or a failure type"},
      {"P0299-1", "expected nothing, or a failure type"},
      {"P0299-1G", "expected nothing, or a failure type"},
      {"P0299-160", "expected nothing, or a failure type"},
      {"P0299 16", "expected nothing, or a failure type"},
      {"P0299-", "expected nothing, or a failure type"},
      {"P  0299", "expected 0 to 3 after the letter, found ' '"},
      {"P02 99", "' ' is not a hex digit"},
      {"\xC3\xA9P0299", "expected P, C, B or U first"}};
  for (const auto& [text, why] : rows) {
    const auto code = parse_fault_code(text);
    ASSERT_FALSE(code) << text;
    EXPECT_EQ(code.error().code, ErrorCode::kInvalidInput);
    EXPECT_NE(code.error().message.find(why), std::string::npos)
        << text << ": " << code.error().message;
  }
}

TEST(FaultCode, EveryTwoByteValueIsACodeThatReadsBack) {
  for (unsigned value = 0; value <= 0xFFFF; ++value) {
    const FaultCode code = fault_code_from_bytes(static_cast<std::uint16_t>(value));
    ASSERT_EQ(parse_fault_code(code.text()), code) << code.text();
  }
}

TEST(FaultCode, LettersNameTheirSystem) {
  EXPECT_EQ(parse_fault_code("P0001")->letter(), CodeLetter::kPowertrain);
  EXPECT_EQ(parse_fault_code("C0001")->letter(), CodeLetter::kChassis);
  EXPECT_EQ(parse_fault_code("B0001")->letter(), CodeLetter::kBody);
  EXPECT_EQ(parse_fault_code("U0001")->letter(), CodeLetter::kNetwork);
}

TEST(FaultCode, EveryThreeByteValueReadsBack) {
  for (std::uint32_t value = 0; value <= 0xFFFFFF; value += 251) {  // a prime: all low bytes occur
    const FaultCode code = fault_code_from_three_bytes(value);
    ASSERT_EQ(code.three_bytes(), value);
    ASSERT_EQ(code.text() + "-" + code.failure_type_text(),
              parse_fault_code(code.text() + "-" + code.failure_type_text())->text() + "-" +
                  code.failure_type_text());
  }
  EXPECT_EQ(parse_fault_code("P0299")->three_bytes(), std::nullopt);
}

TEST(FaultCode, NoAreaWhereTheThirdCharacterIsNotTheStandards) {
  for (const char* text : {"P1299", "P3000", "P33FF", "C0035", "B0039", "U0073", "U3000"}) {
    EXPECT_EQ(parse_fault_code(text)->area(), std::nullopt) << text;
  }
  // P34 to P3F are the standard's, but the sources name no areas for them.
  EXPECT_EQ(parse_fault_code("P3400")->area(), CodeArea::kReservedOrUnknown);
}

}  // namespace
}  // namespace shoplore
