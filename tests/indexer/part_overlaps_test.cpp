#include "indexer/part_overlaps.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

PhraseMatch match_of(EntryKind kind, const char* id, std::size_t first, std::size_t last,
                     Presence state = Presence::kPresent) {
  return {kind, id, first, last, state};
}

TEST(PartOverlaps, APieceOfALongerNameIsCut) {
  const auto cut = [](std::size_t first, std::size_t last, Presence state) {
    return cuts_a_part(match_of(EntryKind::kSymptom, "engine_knock", first, last, state),
                       {match_of(EntryKind::kComponent, "knock_sensor", 2, 4)},
                       built_in_vocabulary());
  };
  EXPECT_TRUE(cut(2, 3, Presence::kPresent));
  EXPECT_FALSE(cut(3, 5, Presence::kPresent));
  EXPECT_TRUE(cut(3, 5, Presence::kAbsent));
  EXPECT_FALSE(cut(0, 2, Presence::kPresent));
}

TEST(PartOverlaps, TheLastWordMayBeginAPart) {
  const auto ends = [](std::size_t first, std::size_t last) {
    return ends_in_a_part(match_of(EntryKind::kSymptom, "steering_play", first, last),
                          {match_of(EntryKind::kComponent, "wheel_bearing", 3, 5)});
  };
  EXPECT_TRUE(ends(0, 4));
  EXPECT_FALSE(ends(0, 5));
  EXPECT_FALSE(ends(0, 3));
  EXPECT_FALSE(ends(3, 4));
}

}  // namespace
}  // namespace shoplore
