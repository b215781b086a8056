#include "indexer/repair_said.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

TEST(RepairSaid, WhoDidIt) {
  struct Row {
    const char* text;
    std::optional<RepairedBy> by;
  };
  for (const Row& row :
       {Row{"coil replaced here", RepairedBy::kHere},
        Row{"we replaced the coil", RepairedBy::kHere},
        Row{"coil replaced elsewhere", RepairedBy::kElsewhere},
        Row{"coil replaced by dealer", RepairedBy::kElsewhere},
        Row{"coil replaced not by us", RepairedBy::kElsewhere},
        Row{"customer had coil replaced", std::nullopt},
        Row{"customer replaced coil", RepairedBy::kOwner},
        Row{"coil replaced by owner", RepairedBy::kOwner},
        Row{"coil replaced by previous owner", RepairedBy::kElsewhere},
        Row{"coil replaced", std::nullopt}, Row{"customer says coil replaced", std::nullopt}}) {
    const NotePage page = page_of(row.text);
    EXPECT_EQ(repaired_by(page, work_on(page), {0, page.size()}), row.by) << row.text;
  }
}

TEST(RepairSaid, HowLongAgo) {
  struct Row {
    const char* text;
    std::optional<int> months;
  };
  for (const Row& row : {Row{"4 mo ago", 4}, Row{"2mo back", 2}, Row{"three months old", 3},
                         Row{"last year", 12}, Row{"half a year ago", 6}, Row{"5 weeks ago", 1},
                         Row{"2 months earlier", 2}, Row{"2 months previously", 2},
                         Row{"last week", 0}, Row{"2 months before sale", std::nullopt},
                         Row{"5000 km ago", std::nullopt}, Row{"in 2 months", std::nullopt},
                         Row{"2 coils", std::nullopt}, Row{"coil", std::nullopt}}) {
    const NotePage page = page_of(row.text);
    EXPECT_EQ(months_ago_in(page, {0, page.size()}), row.months) << row.text;
  }
}

TEST(RepairSaid, WordsOfTimeAndPersonTellAndPass) {
  for (const char* text : {"here", "elsewhere", "owner", "ago", "already"}) {
    EXPECT_TRUE(tells_repair(page_of(text), 0)) << text;
    EXPECT_TRUE(passes_in_repair(page_of(text), 0)) << text;
  }
  EXPECT_TRUE(tells_repair(page_of("four months"), 0));
  for (const char* text : {"the", "left", "3"}) {
    EXPECT_FALSE(tells_repair(page_of(text), 0)) << text;
    EXPECT_TRUE(passes_in_repair(page_of(text), 0)) << text;
  }
  for (const char* text : {"misfire", "coil", "whistles"}) {
    EXPECT_FALSE(tells_repair(page_of(text), 0)) << text;
    EXPECT_FALSE(passes_in_repair(page_of(text), 0)) << text;
  }
}

TEST(RepairSaid, SomebodyBeforeTheWork) {
  for (const char* text : {"customer change", "other garage change", "he just change"}) {
    const NotePage page = page_of(text);
    EXPECT_TRUE(has_somebody_before(page, token_of(page, "change"))) << text;
  }
  for (const char* text :
       {"change", "please change", "customer. change", "oil change", "we change"}) {
    const NotePage page = page_of(text);
    EXPECT_FALSE(has_somebody_before(page, token_of(page, "change"))) << text;
  }
}

TEST(RepairSaid, ByWhomInFewWords) {
  const std::vector<NoteRow> table{
      {"turbo new (owner)", {"earlier_repair replace turbocharger owner"}},
      {"turbo replaced - main dealer", {"earlier_repair replace turbocharger elsewhere"}},
      {"turbo replaced, main dealer, 4 mo", {"earlier_repair replace turbocharger elsewhere"}},
      {"turbo cleaned by our day shift", {"earlier_repair clean turbocharger here"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(RepairSaid, ABareNumberOfYears) {
  const auto items = built_in_recogniser().recognise("turbo new 1 yr").items;
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(items[0].months_ago, 12);
}

TEST(RepairSaid, ByMeIsHere) {
  const std::vector<NoteRow> table{
      {"turbo cleaned by me", {"earlier_repair clean turbocharger here"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
