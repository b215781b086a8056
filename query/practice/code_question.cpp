#include "query/practice/code_question.hpp"

#include <algorithm>
#include <array>

#include "query/practice/drawing.hpp"

namespace shoplore {
namespace {

// Letter, control, area.
using Parts = std::array<std::string, 3>;

constexpr std::string_view kSeparator = "; ";
constexpr const char* kMakersOwn = "the third character is the maker's own";
constexpr const char* kNoArea = "the third character names no area";

std::string area_of(const FaultCode& code) {
  if (const auto area = code.area()) return std::string(name_of(*area));
  return code.control() == CodeControl::kManufacturer ? kMakersOwn : kNoArea;
}

Parts parts_of(const FaultCode& code) {
  return {std::string(name_of(code.letter())), std::string(name_of(code.control())), area_of(code)};
}

std::string text_of(const Parts& parts) {
  return parts[0] + std::string(kSeparator) + parts[1] + std::string(kSeparator) + parts[2];
}

// Another name of the same table.
template <class Enum>
std::string other_name(const std::string& name, std::mt19937_64& random) {
  std::vector<std::string> others;
  for (const auto& [value, each] : kEnumNames<Enum>) {
    if (each != name) others.emplace_back(each);
  }
  return others[drawn_below(others.size(), random)];
}

}  // namespace

std::string classification_of(const FaultCode& code) {
  return text_of(parts_of(code));
}

std::vector<std::string> classifications_offered(const FaultCode& code, std::mt19937_64& random) {
  const Parts right = parts_of(code);
  Parts wrong_control = right, wrong_area = right, wrong_letter = right;
  wrong_control[1] = other_name<CodeControl>(right[1], random);
  wrong_area[2] = other_name<CodeArea>(right[2], random);
  wrong_letter[0] = other_name<CodeLetter>(right[0], random);
  wrong_letter[1] = other_name<CodeControl>(right[1], random);
  std::vector<std::string> choices{text_of(right), text_of(wrong_control), text_of(wrong_area),
                                   text_of(wrong_letter)};
  shuffle_drawn(choices, random);
  return choices;
}

double points_of_classification(std::string_view chosen, const FaultCode& code) {
  int right = 0;
  for (const std::string& part : parts_of(code)) {
    const auto end = std::min(chosen.find(kSeparator), chosen.size());
    right += chosen.substr(0, end) == part ? 1 : 0;
    chosen.remove_prefix(std::min(end + kSeparator.size(), chosen.size()));
  }
  return 100.0 * right / 3;
}

}  // namespace shoplore
