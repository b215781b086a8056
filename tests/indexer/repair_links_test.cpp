#include "indexer/repair_links.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

struct Linked {
  NotePage page;
  std::vector<PhraseMatch> parts;
  std::vector<char> is_deed;
  std::vector<Deed> deeds;
};

Linked linked(std::string_view text) {
  NotePage page = page_of(text);
  auto parts = page.matches({EntryKind::kComponent});
  auto is_deed = work_on(page);
  auto deeds = deeds_on(page);
  return {std::move(page), std::move(parts), std::move(is_deed), std::move(deeds)};
}

struct Row {
  const char *text, *part;  // of the first deed; empty: none
};

std::string part_named(const Linked& note, std::optional<std::size_t> part) {
  return part ? note.parts[*part].id : "";
}

TEST(RepairLinks, ADeedTakesTheNearestPartThatFits) {
  for (const Row& row :
       {Row{"coil replaced", "ignition_coil"}, Row{"replaced the coil", "ignition_coil"},
        Row{"new coil turbo", "ignition_coil"}, Row{"coil new turbo", "turbocharger"},
        Row{"did the coil", "ignition_coil"}, Row{"coil did", ""}, Row{"new seal for turbo", ""},
        Row{"replaced, coil", ""}, Row{"put a coil in", "ignition_coil"},
        Row{"put the battery on charge", ""}}) {
    const Linked note = linked(row.text);
    ASSERT_FALSE(note.deeds.empty()) << row.text;
    const RepairLinks links(note.page, note.parts, note.is_deed);
    EXPECT_EQ(part_named(note, links.part_of(note.deeds[0])), row.part) << row.text;
  }
}

TEST(RepairLinks, ItMeansTheLastPartOfTheClauseBefore) {
  for (const Row& row : {Row{"throttle body sticky, we cleaned it", "throttle_body"},
                         Row{"throttle body sticky, cleaned here", "throttle_body"},
                         Row{"throttle body sticky. we cleaned it", ""},
                         Row{"throttle body sticky, and cleaned", ""}}) {
    const Linked note = linked(row.text);
    ASSERT_FALSE(note.deeds.empty()) << row.text;
    const RepairLinks links(note.page, note.parts, note.is_deed);
    const std::vector<char> used(note.parts.size(), 0);
    EXPECT_EQ(part_named(note, links.part_before(note.deeds[0], used)), row.part) << row.text;
    const std::vector<char> all_used(note.parts.size(), 1);
    EXPECT_EQ(links.part_before(note.deeds[0], all_used), std::nullopt) << row.text;
  }
}

TEST(RepairLinks, PartsJoinedByAWordOrAListShareADeed) {
  struct Pair {
    const char* text;
    bool joined;
  };
  for (const Pair& row :
       {Pair{"coil and plugs replaced", true}, Pair{"coil & plugs replaced", true},
        Pair{"replaced coil, plugs", true}, Pair{"coil, plugs replaced", true},
        Pair{"replaced coil. plugs", false}, Pair{"replaced coil turbo", false},
        Pair{"replaced coil and dirty plugs", false}, Pair{"replaced coil, plugs dirty", false}}) {
    const Linked note = linked(row.text);
    ASSERT_EQ(note.parts.size(), 2U) << row.text;
    ASSERT_FALSE(note.deeds.empty()) << row.text;
    const RepairLinks links(note.page, note.parts, note.is_deed);
    EXPECT_EQ(links.joined(note.parts[0], note.parts[1], note.deeds[0]), row.joined) << row.text;
  }
}

TEST(RepairLinks, KnowsPartsAndWordsThatPass) {
  const Linked note = linked("replaced the coil misfire");
  const RepairLinks links(note.page, note.parts, note.is_deed);
  EXPECT_TRUE(links.is_part(2));
  EXPECT_FALSE(links.is_part(1));
  EXPECT_TRUE(links.passes(0));
  EXPECT_TRUE(links.passes(1));
  EXPECT_FALSE(links.passes(3));
  EXPECT_TRUE(joins_parts("plus"));
  EXPECT_FALSE(joins_parts("but"));
}

}  // namespace
}  // namespace shoplore
