// Vehicle identification number: form, check character and what its characters hint at.
//
// Rules of 49 CFR 565.15 (US) on the form of ISO 3779: 17 of A-Z 0-9 without I, O and Q. Only
// that form is required here. The check character is mandatory in North America alone, so one
// that does not fit is something to mention, never a reason to refuse. Does not know makers.
// Plain immutable values, any thread. Positions are counted from 1, as in the regulation.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "indexer/result.hpp"

namespace shoplore {

enum class CheckDigit { kFits, kDoesNotFit };
enum class MakerVolume { kOrdinary, kLow };

class Vin {
 public:
  // Takes any letter case, and spaces and hyphens between characters. kInvalidInput, without
  // repeating the number, says what is wrong.
  [[nodiscard]] static Result<Vin> parse(std::string_view text);

  // 17 upper-case characters.
  [[nodiscard]] const std::string& text() const { return text_; }

  // Sum of transliterated characters times position weights; 49 CFR 565.15(c), Tables III and IV.
  [[nodiscard]] int weighted_sum() const;

  // What position 9 should hold: weighted sum modulo 11, with X for 10.
  [[nodiscard]] char expected_check_character() const;
  [[nodiscard]] CheckDigit check_digit() const;

  // Model year from position 10 (49 CFR 565.15, Table VII): 1980 to 2009 when position 7 is a
  // digit, 2010 to 2039 when it is a letter. A hint only: it holds for passenger cars and light
  // vehicles built for the US market. Empty when position 10 is no year code (U, Z, 0).
  [[nodiscard]] std::optional<int> model_year_hint() const;

  // kLow when position 3 is 9: a maker of few vehicles (49 CFR 565.15(a)).
  [[nodiscard]] MakerVolume maker_volume() const;

  // Positions 1 to 3; of a low-volume maker followed by positions 12 to 14.
  [[nodiscard]] std::string maker_code() const;

 private:
  explicit Vin(std::string text) : text_(std::move(text)) {}
  std::string text_;
};

}  // namespace shoplore
