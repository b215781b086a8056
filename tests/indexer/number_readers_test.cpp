#include "indexer/number_readers.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

struct Read {
  const char *text, *id, *words;
};

TEST(NumberReaders, MileagesInEverySpelling) {
  // Miles times 1.609344 exactly (international mile of 1959), to the nearest kilometre.
  const Read table[] = {{"142k km", "142000", "142k km"},
                        {"142,000 km", "142000", "142,000 km"},
                        {"142.000 km", "142000", "142.000 km"},
                        {"142 000 km", "142000", "142 000 km"},
                        {"142000km", "142000", "142000km"},
                        {"142\u00a0km 142000\u00a0km", "142000", "142000\u00a0km"},
                        {"88k mi", "141622", "88k mi"},
                        {"88,000 miles", "141622", "88,000 miles"},
                        {"88.5K kms", "88500", "88.5K kms"},
                        {"1000 km", "1000", "1000 km"},
                        {"mileage: 142000", "142000", "mileage: 142000"},
                        {"odo 99000 P0299", "99000", "odo 99000"},
                        {"180k", "180000", "180k"},
                        {"10k", "10000", "10k"}};
  for (const Read& row : table) {
    const auto items = read_mileages(row.text, DistanceUnit::kKilometres);
    ASSERT_EQ(items.size(), 1U) << row.text;
    EXPECT_EQ(items[0].id, row.id) << row.text;
    EXPECT_EQ(words_at(row.text, items[0].span), row.words) << row.text;
  }
}

TEST(NumberReaders, WhatIsNoMileage) {
  for (const char* text : {"142000",
                           "2 km",
                           "999 km",
                           "5 miles",
                           "100 km/h",
                           "80 km/h",
                           "3k",
                           "9.9k",
                           "12k rpm",
                           "12 k ohm",
                           "5,000 km ago",
                           "every 10,000 km",
                           "after 5000 miles",
                           "2,000,001 km",
                           "4k7",
                           "142kg",
                           "99999999999999999999 km",
                           "0 km",
                           "km",
                           "mileage unknown",
                           "clutch replaced at 90k",
                           "1,00,000 km"}) {
    const auto items = read_mileages(text, DistanceUnit::kKilometres);
    EXPECT_TRUE(items.empty()) << text << " read as " << items[0].id;
  }
}

TEST(NumberReaders, ABareMileageSaysItsUnit) {
  const auto km = read_mileages("180k", DistanceUnit::kKilometres);
  EXPECT_EQ(km.at(0).reading_chosen, "'180k' taken as kilometres");
  const auto miles = read_mileages("100k", DistanceUnit::kMiles);
  EXPECT_EQ(miles.at(0).mileage_km->value, 160'934);  // 100,000 x 1.609344
  EXPECT_EQ(miles.at(0).reading_chosen, "'100k' taken as miles");
  EXPECT_EQ(read_mileages("100k km", DistanceUnit::kMiles).at(0).reading_chosen, "");
}

TEST(NumberReaders, OfSeveralDistancesTheLongestIsTheMileage) {
  const auto items = read_mileages("belt at 120,000 km, now 142,000 km", DistanceUnit::kKilometres);
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(items[0].id, "142000");
  EXPECT_EQ(items[0].reading_chosen, "the longest of several distances");
}

TEST(NumberReaders, ModelYears) {
  const Read table[] = {{"2016 Tidal", "2016", "2016"},   {"Tidal, 2016", "2016", "2016"},
                        {"1980", "1980", "1980"},         {"Tidal '16", "2016", "'16"},
                        {"Tidal ’16", "2016", "’16"},     {"'98 Tidal", "1998", "'98"},
                        {"2016 or 2018", "2016", "2016"}, {"MY2016 Tidal", "2016", "MY2016"},
                        {"MY16", "2016", "MY16"},         {"15 plate Fell", "2015", "15"},
                        {"63-plate", "2013", "63"}};
  for (const Read& row : table) {
    const auto items = read_model_years(row.text);
    ASSERT_EQ(items.size(), 1U) << row.text;
    EXPECT_EQ(items[0].id, row.id) << row.text;
    EXPECT_EQ(words_at(row.text, items[0].span), row.words) << row.text;
  }
  EXPECT_EQ(read_model_years("'16").at(0).reading_chosen, "'16 taken as 2016");
}

TEST(NumberReaders, WhatIsNoModelYear) {
  for (const char* text : {"1979",       "2199",         "20165",       "x2016",
                           "2016x",      "2000 rpm",     "at 2000",     "replaced in 2019",
                           "since 2019", "2016-05-01",   "01/05/2016",  "12.2016",
                           "2016,5",     "part no 2016", "BX-2016",     "16",
                           "1'16",       "it's 2",       "my 16 bolts", "replaced here 2021",
                           "15 plates",  "'1",           "2000 ohm",    ""}) {
    const auto items = read_model_years(text);
    EXPECT_TRUE(items.empty()) << text << " read as " << items[0].id;
  }
}

}  // namespace
}  // namespace shoplore
