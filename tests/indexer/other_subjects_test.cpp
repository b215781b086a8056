#include "indexer/other_subjects.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(OtherSubjects, ABareWordBelongsToThePartBeforeIt) {
  struct Row {
    const char* text;
    bool is_hum;
  };
  for (const Row& row :
       {Row{"pump hums", false}, Row{"relay still hums", false}, Row{"hums", true},
        Row{"wheel hums", true}, Row{"pump ok, hums", true}, Row{"bearing hums", true}}) {
    const auto lines = lines_of(row.text);
    const bool hums = std::find(lines.begin(), lines.end(), "symptom wheel_hum") != lines.end();
    EXPECT_EQ(hums, row.is_hum) << row.text;
  }
}

TEST(OtherSubjects, ALackOfPowerIsOfThePartBeforeIt) {
  const std::vector<NoteRow> table{{"fan relay no power", {}},
                                   {"turbo, no power", {"symptom lack_of_power"}},
                                   {"no power", {"symptom lack_of_power"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
