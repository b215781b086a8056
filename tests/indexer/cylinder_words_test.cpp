#include "indexer/cylinder_words.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

// The words of "misfire" with its cylinder.
std::string misfire_in(const std::string& text) {
  const NotePage page = page_of(text);
  const std::size_t at = token_of(page, "misfire");
  return words_at(text, page.span_of(with_cylinder(page, {at, at + 1})));
}

TEST(CylinderWords, TheCylinderMayStandBeforeOrAfter) {
  for (const char* text :
       {"misfire cylinder 3", "misfire on cyl 3", "misfire in no 3 cylinder",
        "misfire cylinder no 3", "cylinder 3 misfire", "no 3 cylinder misfire"}) {
    EXPECT_EQ(misfire_in(text), text);
  }
}

TEST(CylinderWords, AnotherClauseALargeNumberOrNoNumberIsNone) {
  for (const char* text : {"misfire", "misfire, cylinder 3", "misfire cylinder head", "misfire 3",
                           "misfire cylinder 300", "cylinder 3. misfire"}) {
    EXPECT_EQ(misfire_in(text), "misfire") << text;
  }
}

TEST(CylinderWords, ClaimedWordsAreLeft) {
  NotePage page = page_of("misfire cylinder 3");
  page.claim(std::size_t{2});
  EXPECT_EQ(with_cylinder(page, {0, 1}).last, 1U);
}

}  // namespace
}  // namespace shoplore
