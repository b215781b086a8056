#include "indexer/mileage_words.hpp"

#include <gtest/gtest.h>

#include "indexer/number_readers.hpp"
#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

struct Read {
  const char *text, *id;
};

TEST(MileageWords, ANumberIsAMileageByTheWordsBesideIt) {
  const Read table[] = {{"92k on the clock", "92000"},
                        {"62 thou", "62000"},
                        {"62 thou on it", "62000"},
                        {"118,400 miles", "190546"},
                        {"just under 90 000 km", "90000"},
                        {"88.400 km", "88400"},
                        {"118'400 km", "118400"},
                        {"118,4 tkm", "118400"},
                        {"92 k km", "92000"},
                        {"odo 131204", "131204"},
                        {"odo reads 131204", "131204"},
                        {"odometer at 131,204", "131204"},
                        {"odometer shows 131 204", "131204"},
                        {"140 thousand on it", "140000"},
                        {"45k mls", "72420"},
                        {"200k+", "200000"},
                        {"98500 on the clock", "98500"},
                        {"it's done 110,000", "110000"},
                        {"has covered 85,000 km", "85000"},
                        {"mileage is 88400", "88400"},
                        {"mileage: approx. 88,400", "88400"},
                        {"speedo reads 99120", "99120"},
                        {"60,000 up", "60000"},
                        {"a hundred and ten thousand km", "110000"},
                        {"over 90,000 km", "90000"},
                        {"92k km, back again with the same", "92000"},
                        {"Fell / 92,000 km / diesel", "92000"},
                        {"94k km left front noisy", "94000"}};
  for (const Read& row : table) {
    const auto items = read_mileages(row.text, DistanceUnit::kKilometres);
    ASSERT_EQ(items.size(), 1U) << row.text;
    EXPECT_EQ(items[0].id, row.id) << row.text;
  }
}

TEST(MileageWords, AVehicleThatHasRunFarIsNoStretch) {
  for (const char* text : {"120,000 km service light on", "85,000 km range has dropped",
                           "120,000 km old battery", "last 142,000 km"}) {
    const auto items = read_mileages(text, DistanceUnit::kKilometres);
    EXPECT_EQ(items.size(), 1U) << text;
  }
}

TEST(MileageWords, OtherDistancesAndCountsAreNoMileage) {
  for (const char* text : {"came back after 3000 km",
                           "every 6000 km",
                           "range 1800 km",
                           "countdown 2400 km",
                           "service due in 2,400 km",
                           "2400 km to go",
                           "1100 km left",
                           "back within 2000 km",
                           "lost again 1500 km after that",
                           "1500 km on, the same",
                           "2000 km later",
                           "lasted 20,000 km",
                           "uses a litre in 1000 km",
                           "1 l / 1000 km",
                           "0.8 litre over 1000 km",
                           "next service 15k",
                           "towed 1500 km",
                           "changed 20k back",
                           "tyres have done 30k",
                           "first 5000 km",
                           "overdue by 5000 km",
                           "5000 km overdue",
                           "does 40,000 km a year",
                           "60,000 km service",
                           "resistance 47k",
                           "12 k cycles",
                           "5 thou",
                           "a gap of 40 thou",
                           "40 thou clearance"}) {
    const auto items = read_mileages(text, DistanceUnit::kKilometres);
    EXPECT_TRUE(items.empty()) << text << " read as " << items[0].id;
  }
}

TEST(MileageWords, AMileageHoldsTheWordsThatMakeItOne) {
  const std::pair<const char*, const char*> table[] = {
      {"Fell, 98500 on the clock, smokes", "98500 on the clock"},
      {"Fell, odo shows 98500, smokes", "odo shows 98500"},
      {"Fell with 92k km on Monday", "92k km"}};
  for (const auto& [text, words] : table) {
    const auto items = read_mileages(text, DistanceUnit::kKilometres);
    ASSERT_EQ(items.size(), 1U) << text;
    EXPECT_EQ(words_at(text, items[0].span), words);
  }
}

}  // namespace
}  // namespace shoplore
