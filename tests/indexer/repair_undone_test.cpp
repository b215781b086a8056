#include "indexer/repair_undone.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

// The first component of the page.
TokenRange part_of(const NotePage& page) {
  const auto parts = page.matches({EntryKind::kComponent});
  return parts.empty() ? TokenRange{} : TokenRange{parts[0].first, parts[0].last};
}

bool is_undone_before_part(const char* text) {
  const NotePage page = page_of(text);
  return is_undone_before(page, part_of(page).first);
}

TEST(RepairUndone, WordsBeforeThePartWantOrDenyIt) {
  for (const char* text : {"needs new turbo", "not the turbo", "should be new turbo",
                           "quoted for new turbo", "no new turbo", "if turbo", "to be new turbo"}) {
    EXPECT_TRUE(is_undone_before_part(text)) << text;
  }
  for (const char* text :
       {"new turbo", "turbo", "needs it. turbo", "whistle turbo", "fitted in may new turbo"}) {
    EXPECT_FALSE(is_undone_before_part(text)) << text;
  }
}

bool is_undone_after_work(const std::string& text) {
  const NotePage page = page_of(text);
  const TokenRange part = part_of(page);
  const auto deeds = deeds_on(page);
  const std::size_t last = deeds.empty() ? part.last : std::max(part.last, deeds[0].at.last);
  return is_undone_after(page, work_on(page), {0, last});
}

TEST(RepairUndone, WordsAfterTheWorkWantOrAskForIt) {
  for (const char* text : {"new pads needed", "new pads advised", "new pads to be fitted",
                           "turbo replaced?", "turbo replaced here?"}) {
    EXPECT_TRUE(is_undone_after_work(text)) << text;
  }
  for (const char* text : {"new pads", "new pads fitted", "turbo replaced here",
                           "turbo replaced. whistle?", "turbo replaced and misfire"}) {
    EXPECT_FALSE(is_undone_after_work(text)) << text;
  }
}

bool is_swap_for_test(const char* text) {
  const NotePage page = page_of(text);
  const auto deeds = deeds_on(page);
  const TokenRange part = part_of(page), all{0, page.size()};
  if (deeds.empty()) return true;  // no word of work is none of a repair either
  const TokenRange work = deeds[0].at;
  const TokenRange group{std::min(work.first, part.first), std::max(work.last, part.last)};
  const RepairSaid said{repaired_by(page, work_on(page), all), months_ago_in(page, all)};
  return is_test_swap(page, work, group, all, said);
}

TEST(RepairUndone, PartsThatChangedPlacesAreATest) {
  for (const char* text : {"swapped coil with no 2", "swapped coils over", "pump relay swapped",
                           "we swapped the coils", "changed coils round"}) {
    EXPECT_TRUE(is_swap_for_test(text)) << text;
  }
  for (const char* text :
       {"coil replaced", "battery swapped 2 months ago", "battery swapped by the owner",
        "battery already swapped", "egr valve swapped", "turbo swapped, still no power"}) {
    EXPECT_FALSE(is_swap_for_test(text)) << text;
  }
}

bool is_put_in_car(const char* text) {
  const NotePage page = page_of(text);
  return is_put_in(page, token_of(page, "put"), part_of(page));
}

TEST(RepairUndone, PutInIsNotPutOnChargeOrBack) {
  for (const char* text : {"put a coil in it", "battery he put in", "put a new coil on"}) {
    EXPECT_TRUE(is_put_in_car(text)) << text;
  }
  for (const char* text :
       {"put the battery on charge", "put the battery back", "put injector on test bench"}) {
    EXPECT_FALSE(is_put_in_car(text)) << text;
  }
}

TEST(RepairUndone, WhatLiesInStockOrIsNotPutInIsNotDone) {
  for (const char* text :
       {"new turbo in stock", "new turbo here, not fitted", "new turbo, not yet",
        "new turbo in store", "turbo can be cleaned", "nobody replaced the turbo"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text;
  }
  for (const char* text : {"new turbo, no better", "new turbo, not coded"}) {
    EXPECT_EQ(lines_of(text),
              std::vector<std::string>{"earlier_repair replace turbocharger elsewhere"})
        << text;
  }
}

TEST(RepairUndone, WhatChangedPlacesOrWentInWrongIsNoRepair) {
  const std::vector<NoteRow> table{
      {"changed the coils over between 2 and 3", {}},
      {"injectors changed across", {}},
      {"coil fitted upside down", {"work_sign part_fitted_backwards"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(RepairUndone, ASwapToldOfByTheNextClauseIsOne) {
  const std::vector<NoteRow> table{
      {"belt tensioner swapped, here 7 mo ago", {"earlier_repair replace belt_tensioner here"}},
      {"belt tensioner swapped", {"earlier_repair replace belt_tensioner elsewhere"}},
      {"ignition coil swapped", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
