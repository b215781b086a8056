#include "indexer/complaint_words.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace shoplore {
namespace {

std::vector<std::string> stems_of(const std::vector<EvidenceItem>& words) {
  std::vector<std::string> stems;
  for (const EvidenceItem& word : words) {
    EXPECT_EQ(word.value, "present");
    EXPECT_EQ(kind_of_attribute(word.attribute), "word");
    stems.emplace_back(id_of_attribute(word.attribute));
  }
  return stems;
}

struct Row {
  const char* name;
  const char* text;
  std::vector<std::string> stems;
};

const Row kRows[] = {
    {"one stem of many forms", "Drumming, drums; DRUMMED", {"drum"}},
    {"sorted", "wobble drone", {"drone", "wobbl"}},
    {"stop words say nothing", "with the drone", {"drone"}},
    {"numbers say nothing", "drone 60 P0299 2nd", {"drone"}},
    {"two letters say nothing", "ac drone", {"drone"}},
    {"a removed identity says nothing", "[removed] drone, removed [removed]", {"drone", "remov"}},
    {"nothing at all", "", {}},
};

TEST(ComplaintWords, AreStemsOnceEach) {
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.name);
    EXPECT_EQ(stems_of(complaint_words(row.text)), row.stems);
  }
}

TEST(ComplaintWords, ALongWordIsLeftOut) {
  EXPECT_TRUE(complaint_words(std::string(65, 'q')).empty());
}

}  // namespace
}  // namespace shoplore
