#include "indexer/reading_reader.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

std::vector<std::string> ids_of(std::string_view text) {
  std::vector<std::string> ids;
  for (const RecognisedItem& item : read_readings(text)) ids.push_back(item.id);
  return ids;
}

TEST(ReadingReader, ReadsANumberWithItsUnitHoweverWritten) {
  const std::vector<NoteRow> table{{"11.2 V", {"11.2 V"}},
                                   {"11.2V", {"11.2 V"}},
                                   {"11,2 volts", {"11.2 V"}},
                                   {"0.4 ohm", {"0.4 ohm"}},
                                   {"0.40 ohms", {"0.4 ohm"}},
                                   {"4k7", {}},
                                   {"4.7 k\u03a9", {"4.7 kohm"}},
                                   {"60 \u03a9", {"60 ohm"}},
                                   {"2.1 bar", {"2.1 bar"}},
                                   {"-8 mbar", {"-8 mbar"}},
                                   {"1,200 rpm", {"1200 rpm"}},
                                   {"draws 1 200 A", {"1200 A"}},
                                   {"cyl 3 120 ohm", {"120 ohm"}},
                                   {"5 M\u03a9", {"5 Mohm"}},
                                   {"5 m\u03a9", {}},
                                   {"350mV drop", {"350 mV"}},
                                   {"drain 0.85 A", {"0.85 A"}},
                                   {"2a fuse", {"2 A"}},
                                   {"88\u00b0C", {"88 C"}},
                                   {"88 deg C", {"88 C"}},
                                   {"toe 0.2 deg", {"0.2 deg"}},
                                   {"40 kilohms", {"40 kohm"}},
                                   {"1.6 millimetres", {"1.6 mm"}},
                                   {"0.4 meg", {"0.4 Mohm"}},
                                   {".06 mm", {"0.06 mm"}},
                                   {"trim minus 12 percent", {"-12 %"}},
                                   {"minus 12.4 V", {"12.4 V"}},
                                   {"a hundred and twenty psi", {"120 psi"}},
                                   {"3.5 grams per second", {"3.5 g/s"}},
                                   {"load 64%", {"64 %"}},
                                   {"12 g/s", {"12 g/s"}},
                                   {"7 mm of pad", {"7 mm"}},
                                   {"12.1 / 12 / 6.4 bar", {"12.1 bar", "12 bar", "6.4 bar"}},
                                   {"OL", {"OL"}},
                                   {"reads o.l.", {"OL"}},
                                   {"12.6 V, 9.4 V cranking", {"12.6 V", "9.4 V"}}};
  for (const NoteRow& row : table) EXPECT_EQ(ids_of(row.text), row.items) << row.text;
}

TEST(ReadingReader, LeavesWhatWasNotMeasured) {
  for (const char* text : {"should be 10 to 12 V", "10-12 V expected", "shakes at 90 km/h",
                           "over 3000 rpm", ">2000 rpm", "above 20 C", "in 2 a day", "142,000 km",
                           "4 months", "old", "P0299", "3 cylinders", "Tidal 2 v6", "12.06.2026"}) {
    EXPECT_TRUE(ids_of(text).empty()) << text << ": " << ids_of(text).front();
  }
}

TEST(ReadingReader, ASpanIsTheNumberAndItsUnit) {
  const std::string text = "boost -120 mbar at idle";
  const auto items = read_readings(text);
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(words_at(text, items[0].span), "-120 mbar");
  EXPECT_EQ(items[0].reading->number, -120);
  EXPECT_EQ(items[0].unit, "mbar");
}

TEST(ReadingReader, UnitsOfOneQuantityConvert) {
  struct Row {
    double value;
    const char *from, *to;
    double expected;
  };
  // 14.5 psi: 14.5 * 6.894757 kPa (NIST SP 811, appendix B.9) is 99.97398 kPa.
  for (const Row& row :
       {Row{11.2, "V", "mV", 11200}, Row{2.1, "bar", "mbar", 2100},
        Row{14.5, "psi", "bar", 0.9997398}, Row{0.47, "kohm", "ohm", 470}, Row{3, "mm", "mm", 3},
        Row{90, "MPa", "bar", 900}, Row{18, "deg", "C", 18}}) {
    ASSERT_TRUE(in_unit(row.value, row.from, row.to)) << row.from;
    EXPECT_NEAR(*in_unit(row.value, row.from, row.to), row.expected, 1e-6) << row.from;
  }
  EXPECT_FALSE(in_unit(1, "V", "ohm"));
  EXPECT_FALSE(in_unit(1, "C", "deg"));  // a temperature is no angle
  EXPECT_FALSE(in_unit(1, "furlong", "mm"));
}

TEST(ReadingReader, NumbersInARowShareTheUnitOfTheLast) {
  const std::pair<const char*, std::vector<std::string>> table[] = {
      {"11.8, 12.1, 7.9 bar", {"11.8 bar", "12.1 bar", "7.9 bar"}},
      {"24, 23, 24 bar", {"24 bar", "23 bar", "24 bar"}},
      {"cyl 3, 24 bar", {"24 bar"}},
      {"16, 24 bar", {"24 bar"}},
      {"in 2019, 1.4 bar", {"1.4 bar"}}};
  for (const auto& [text, expected] : table) {
    std::vector<std::string> ids;
    for (const RecognisedItem& item : read_readings(text)) ids.push_back(item.id);
    EXPECT_EQ(ids, expected) << text;
  }
}

}  // namespace
}  // namespace shoplore
