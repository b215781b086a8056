#include "indexer/vin.hpp"

#include <fmt/format.h>

#include <array>

namespace shoplore {
namespace {

constexpr std::size_t kLength = 17;
constexpr std::array<int, kLength> kWeights{8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
// A to Z; I, O and Q never occur.
constexpr std::array<int, 26> kLetterValues{1, 2, 3, 4, 5, 6, 7, 8, 0, 1, 2, 3, 4,
                                            5, 0, 7, 0, 9, 2, 3, 4, 5, 6, 7, 8, 9};
// Thirty years in order, from 1980 and again from 2010.
constexpr std::string_view kYearCodes = "ABCDEFGHJKLMNPRSTVWXY123456789";

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_upper(char c) {
  return c >= 'A' && c <= 'Z';
}

// Requires: c is one of A-Z 0-9.
int value_of(char c) {
  return is_digit(c) ? c - '0' : kLetterValues.at(static_cast<std::size_t>(c - 'A'));
}

tl::unexpected<Error> refuse(std::string message) {
  return fail(ErrorCode::kInvalidInput, "", std::move(message));
}

}  // namespace

Result<Vin> Vin::parse(std::string_view text) {
  std::string plain;
  for (char c : text) {
    if (c == ' ' || c == '-') continue;
    const char upper = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    if (!is_digit(upper) && !is_upper(upper)) {
      return refuse("a VIN holds letters A to Z and digits only");
    }
    plain += upper;
  }
  if (plain.size() != kLength) {
    return refuse(fmt::format("a VIN has 17 characters, this has {}", plain.size()));
  }
  if (const auto at = plain.find_first_of("IOQ"); at != std::string::npos) {
    return refuse(fmt::format("a VIN never holds I, O or Q, position {} is {}", at + 1, plain[at]));
  }
  return Vin(std::move(plain));
}

int Vin::weighted_sum() const {
  int sum = 0;
  for (std::size_t i = 0; i < kLength; ++i) sum += kWeights.at(i) * value_of(text_[i]);
  return sum;
}

char Vin::expected_check_character() const {
  const int remainder = weighted_sum() % 11;
  return remainder == 10 ? 'X' : static_cast<char>('0' + remainder);
}

CheckDigit Vin::check_digit() const {
  return text_[8] == expected_check_character() ? CheckDigit::kFits : CheckDigit::kDoesNotFit;
}

std::optional<int> Vin::model_year_hint() const {
  const auto code = kYearCodes.find(text_[9]);
  if (code == std::string_view::npos) return std::nullopt;
  return (is_digit(text_[6]) ? 1980 : 2010) + static_cast<int>(code);
}

MakerVolume Vin::maker_volume() const {
  return text_[2] == '9' ? MakerVolume::kLow : MakerVolume::kOrdinary;
}

std::string Vin::maker_code() const {
  const std::string code = text_.substr(0, 3);
  return maker_volume() == MakerVolume::kLow ? code + text_.substr(11, 3) : code;
}

}  // namespace shoplore
