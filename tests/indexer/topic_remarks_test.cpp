#include "indexer/topic_remarks.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

bool holds(const std::string& text, const std::string& line) {
  const auto lines = lines_of(text);
  return std::find(lines.begin(), lines.end(), line) != lines.end();
}

TEST(TopicRemarks, AShortRemarkIsOfWhatWasSpokenOfBefore) {
  const std::pair<const char*, const char*> table[] = {
      {"gearbox harsh 2 to 3 when hot. Not slipping.", "symptom slipping_gearbox absent"},
      {"gearbox harsh 2-3 - fluid changed here - never slips", "symptom slipping_gearbox absent"},
      {"clutch judders. Doesn't slip.", "symptom clutch_slips absent"},
      {"air con warm at idle. Doesn't smell.", "symptom air_con_smells absent"},
      {"exhaust rattles over bumps, isn't blowing", "symptom exhaust_blow absent"},
      {"steering heavy when parking, lamp on", "symptom steering_lamp_on"},
      {"ABS cuts in at walking pace, lamp not on", "symptom abs_lamp_on absent"}};
  for (const auto& [text, line] : table) EXPECT_TRUE(holds(text, line)) << text;
}

TEST(TopicRemarks, WithoutATopicOrWithMoreInTheClauseNothingIsRead) {
  const std::pair<const char*, const char*> table[] = {
      {"misfire uphill. Doesn't slip.", "symptom slipping_gearbox absent"},
      {"gearbox harsh when hot. Slips.", "symptom slipping_gearbox"},
      {"gearbox harsh when hot. Belt does not slip.", "symptom slipping_gearbox absent"},
      {"Not slipping. gearbox harsh when hot", "symptom slipping_gearbox absent"},
      {"gearbox slips in fourth. Never slips cold.", "symptom slipping_gearbox absent"}};
  for (const auto& [text, line] : table) EXPECT_FALSE(holds(text, line)) << text;
}

}  // namespace
}  // namespace shoplore
