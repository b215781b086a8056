#include "query/patterns/set_counts.hpp"

#include <algorithm>
#include <array>

namespace shoplore {
namespace {

// A row, and where the numbers after the set's last begin in it.
struct Place {
  std::uint32_t row = 0, next = 0;
};

// What is counted for every number that may come next; one a depth, reused.
struct Level {
  std::vector<std::uint32_t> rows;        // by number
  std::vector<std::uint32_t> by_outcome;  // number x outcome
  std::vector<std::vector<Place>> places;
  std::vector<std::uint32_t> met;
};

class SetWalk {
 public:
  SetWalk(const NumberRows& numbers, const NumberRows& outcomes, std::uint32_t fewest,
          const std::function<void(const SetCount&)>& visit)
      : numbers_(numbers), outcomes_(outcomes), fewest_(fewest), visit_(visit) {
    for (Level& level : levels_) {
      level.rows.resize(numbers.number_count());
      level.by_outcome.resize(numbers.number_count() * outcomes.number_count());
      level.places.resize(numbers.number_count());
    }
  }

  void extend(const std::vector<Place>& places, std::size_t depth) {
    Level& level = levels_[depth];
    const bool deepest = depth + 1 == kMaxSetSize;
    for (const Place& place : places) count(place, level, deepest);
    std::sort(level.met.begin(), level.met.end());
    const std::size_t kinds = outcomes_.number_count();
    for (const std::uint32_t number : level.met) {
      if (level.rows[number] >= fewest_) {
        set_[depth] = number;
        visit_({{set_.data(), depth + 1},
                level.rows[number],
                {level.by_outcome.data() + number * kinds, kinds}});
        if (!deepest) extend(level.places[number], depth + 1);
      }
      clear(level, number);
    }
    level.met.clear();
  }

 private:
  void count(const Place& place, Level& level, bool deepest) const {
    const auto row = numbers_.row(place.row);
    const auto outcomes = outcomes_.row(place.row);
    for (std::uint32_t at = place.next; at < row.size(); ++at) {
      const std::uint32_t number = row[at];
      if (level.rows[number]++ == 0) level.met.push_back(number);
      for (const std::uint32_t outcome : outcomes) {
        ++level.by_outcome[number * outcomes_.number_count() + outcome];
      }
      if (!deepest) level.places[number].push_back({place.row, at + 1});
    }
  }

  void clear(Level& level, std::uint32_t number) const {
    const std::size_t kinds = outcomes_.number_count();
    level.rows[number] = 0;
    std::fill_n(level.by_outcome.begin() + static_cast<std::ptrdiff_t>(number * kinds), kinds, 0);
    level.places[number].clear();
  }

  const NumberRows& numbers_;
  const NumberRows& outcomes_;
  std::uint32_t fewest_;
  const std::function<void(const SetCount&)>& visit_;
  std::array<Level, kMaxSetSize> levels_;
  std::array<std::uint32_t, kMaxSetSize> set_{};
};

}  // namespace

NumberRows::NumberRows(const std::vector<std::vector<std::uint32_t>>& columns, std::size_t rows)
    : starts_(rows + 1), number_count_(columns.size()) {
  for (const auto& column : columns) {
    for (const std::uint32_t row : column) ++starts_[row + 1];
  }
  for (std::size_t i = 1; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
  numbers_.resize(starts_.back());
  std::vector<std::size_t> at(starts_.begin(), starts_.end() - 1);
  for (std::uint32_t number = 0; number < columns.size(); ++number) {
    for (const std::uint32_t row : columns[number]) numbers_[at[row]++] = number;
  }
}

void for_each_set(const NumberRows& numbers, const NumberRows& outcomes,
                  const std::vector<std::uint32_t>& among, std::uint32_t fewest,
                  const std::function<void(const SetCount&)>& visit) {
  std::vector<Place> places;
  places.reserve(among.size());
  for (const std::uint32_t row : among) places.push_back({row, 0});
  SetWalk(numbers, outcomes, fewest, visit).extend(places, 0);
}

}  // namespace shoplore
