#include "indexer/speed_conditions.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

constexpr double kKilometresPerMile = 1.609344;
constexpr double kHigherFrom = 85, kWalkingPaceTo = 15;  // km/h

// Tokens of the unit that begins here, and what one of it is in km/h.
struct SpeedUnit {
  std::size_t tokens = 0;
  double in_kmh = 1;
};

std::optional<SpeedUnit> unit_at(const NotePage& page, std::size_t at) {
  const auto word = [&](std::size_t i) {
    return page.same_clause(i, at) ? std::string_view(page.word(i)) : std::string_view();
  };
  if (at >= page.size()) return std::nullopt;
  if (word(at) == "mph") return SpeedUnit{1, kKilometresPerMile};
  if (word(at) == "kmh" || word(at) == "kph") return SpeedUnit{1, 1};
  if (word(at) == "km" && word(at + 1) == "h") return SpeedUnit{2, 1};
  return std::nullopt;
}

std::optional<double> number_of(std::string_view word) {
  if (word.empty() || word.size() > 3) return std::nullopt;
  double number = 0;
  for (const char c : word) {
    if (c < '0' || c > '9') return std::nullopt;
    number = number * 10 + (c - '0');
  }
  return number;
}

// What the words before a speed say of it: "below 110 km/h" is no higher speed, "over 5 mph" no
// walking pace.
enum class Bound { kNone, kAtMost, kAtLeast, kThere };

Bound bound_before(const NotePage& page, std::size_t number) {
  constexpr auto at_most = std::to_array<std::string_view>({"below", "under"});
  constexpr auto at_least =
      std::to_array<std::string_view>({"over", "above", "from", "past", "beyond"});
  constexpr auto there =
      std::to_array<std::string_view>({"at", "around", "about", "by", "near", "steady"});
  if (number == 0 || !page.same_clause(number - 1, number)) return Bound::kNone;
  const std::string& word = page.word(number - 1);
  if (holds(at_most, word)) return Bound::kAtMost;
  if (holds(at_least, word)) return Bound::kAtLeast;
  if (holds(there, word)) return Bound::kThere;
  // "between 60 and 70 mph", "60 to 70 mph"; not "0 to 60 mph", which is pulling away.
  if ((word != "and" && word != "to") || number < 2) return Bound::kNone;
  const auto from =
      page.same_clause(number - 2, number) ? number_of(page.word(number - 2)) : std::nullopt;
  return from.value_or(0) > 0 ? Bound::kThere : Bound::kNone;
}

const char* condition_at(double kmh, Bound bound) {
  if (kmh >= kHigherFrom && bound != Bound::kAtMost) return "motorway";
  if (kmh <= kWalkingPaceTo && bound != Bound::kAtLeast) return "walking_pace";
  return nullptr;
}

}  // namespace

std::vector<PhraseMatch> speed_conditions(const NotePage& page, const Vocabulary& vocabulary) {
  std::vector<PhraseMatch> found;
  for (std::size_t i = 1; i + 1 < page.size(); ++i) {
    const auto number = number_of(page.word(i));
    if (!number || page.is_claimed(i) || !page.same_clause(i, i + 1)) continue;
    const auto unit = unit_at(page, i + 1);
    const Bound bound = unit ? bound_before(page, i) : Bound::kNone;
    if (bound == Bound::kNone) continue;
    const char* id = condition_at(*number * unit->in_kmh, bound);
    if (id == nullptr || vocabulary.find(EntryKind::kCondition, id) == nullptr) continue;
    found.push_back({EntryKind::kCondition, id, i - 1, i + 1 + unit->tokens});
  }
  return found;
}

}  // namespace shoplore
