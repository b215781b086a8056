#include "indexer/verdict_phrases.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

std::string verdict_in(const char* text, std::size_t at = 0) {
  const NotePage page = page_of(text);
  const auto words = verdict_phrase_at(page, at);
  return words ? std::string(name_of(words->verdict)) : "";
}

TEST(VerdictPhrases, SeveralWordsSayOne) {
  struct Row {
    const char *text, *verdict;
  };
  for (const Row& row :
       {Row{"as it should be", "pass"}, Row{"spot on", "pass"}, Row{"not the cause", "pass"},
        Row{"not it", "pass"}, Row{"works", "pass"}, Row{"not good enough", "fail"},
        Row{"has had it", "fail"}, Row{"that's the one", "fail"}, Row{"defect found", "fail"},
        Row{"hard to say", "unclear"}, Row{"no idea", "unclear"}, Row{"full of leaves", "fail"},
        Row{"came off", "fail"}, Row{"says replace", "fail"}, Row{"perhaps ok", "unclear"}}) {
    EXPECT_EQ(verdict_in(row.text), row.verdict) << row.text;
  }
}

TEST(VerdictPhrases, NearMissesSayNothing) {
  for (const char* text : {"as it was", "spot the fault", "not it but the pump", "had it done",
                           "found it leaking", "works on the bench", "hard pedal", ""}) {
    EXPECT_EQ(verdict_in(text), "") << text;
  }
}

TEST(VerdictPhrases, ADenialTurnsThemRoundOrLeavesThemOpen) {
  EXPECT_EQ(verdict_in("does not meet spec", 2), "fail");
  EXPECT_EQ(verdict_in("not ruled out", 1), "");
  EXPECT_EQ(verdict_in("ruled out"), "pass");
}

}  // namespace
}  // namespace shoplore
