#include "indexer/repair_deeds.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

const char* name_of_form(DeedForm form) {
  switch (form) {
    case DeedForm::kVerb:
      return "verb";
    case DeedForm::kAdjective:
      return "adjective";
    case DeedForm::kBeside:
      return "beside";
    case DeedForm::kLeadsPart:
      return "leads part";
    case DeedForm::kFollowsPart:
      return "follows part";
    case DeedForm::kPut:
      return "put";
  }
  return "";
}

std::vector<std::string> deeds_in(const std::string& text) {
  std::vector<std::string> lines;
  const NotePage page = page_of(text);
  for (const Deed& deed : deeds_on(page)) {
    lines.push_back(deed.action + " " + name_of_form(deed.form) + ": " +
                    words_at(text, page.span_of(deed.at)));
  }
  return lines;
}

TEST(RepairDeeds, EveryWordOfWorkLooksForItsPartInItsOwnWay) {
  const std::vector<NoteRow> table{{"coil replaced", {"replace verb: replaced"}},
                                   {"throttle body cleaned", {"clean verb: cleaned"}},
                                   {"customer change battery", {"replace verb: change"}},
                                   {"new coil", {"replace adjective: new"}},
                                   {"second turbo", {"replace adjective: second"}},
                                   {"battery 3 months old", {"replace beside: 3 months old"}},
                                   {"did the plugs", {"replace leads part: did"}},
                                   {"pads done", {"replace follows part: done"}},
                                   {"plugs by the last owner", {"replace follows part: by"}},
                                   {"put a coil in", {"replace put: put"}}};
  for (const NoteRow& row : table) EXPECT_EQ(deeds_in(row.text), row.items) << row.text;
}

TEST(RepairDeeds, WhatIsWantedDeniedOldOrTriedIsNone) {
  for (const char* text : {"replace coil", "change battery", "battery 3 years old", "coil",
                           "charges on another charger", "swap with another", "by the road"}) {
    EXPECT_EQ(deeds_in(text), std::vector<std::string>{}) << text;
  }
}

TEST(RepairDeeds, AShopWithoutTheActionReplacesNothing) {
  const auto vocabulary = Vocabulary::parse({});
  ASSERT_TRUE(vocabulary);
  const PhraseMatcher matcher(*vocabulary);
  const CarriedPhrases carried(*vocabulary, matcher);
  const NotePage page(matcher, carried, "new coil put in", {});
  EXPECT_TRUE(deeds_of(page, *vocabulary, {}).empty());
}

TEST(RepairDeeds, AFluidThatWasReplacedWasDrained) {
  EXPECT_EQ(action_on(built_in_vocabulary(), "coolant", "replace"), "change_fluid");
  EXPECT_EQ(action_on(built_in_vocabulary(), "gearbox_fluid", "replace"), "change_fluid");
  EXPECT_EQ(action_on(built_in_vocabulary(), "coolant", "clean"), "clean");
  EXPECT_EQ(action_on(built_in_vocabulary(), "ignition_coil", "replace"), "replace");
  EXPECT_EQ(action_on(*Vocabulary::parse({}), "coolant", "replace"), "replace");
}

}  // namespace
}  // namespace shoplore
