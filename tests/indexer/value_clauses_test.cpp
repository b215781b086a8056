#include "indexer/value_clauses.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

// The text of the clause that begins at the first token, when it holds readings alone; "" else.
std::string values_of(const std::string& text) {
  const NotePage page = page_of(text);
  std::vector<char> findings(page.size(), 0), readings(page.size(), 0);
  for (std::size_t i = 0; i < page.size(); ++i) {
    readings[i] = page.word(i) == "bar" || (i + 1 < page.size() && page.word(i + 1) == "bar");
  }
  const std::size_t end = end_of_values(page, findings, readings, 0);
  return end == 0 ? "" : text.substr(0, page.token(end - 1).end);
}

TEST(ValueClauses, HoldReadingsAndWhichOneTheyAreOf) {
  EXPECT_EQ(values_of("24 bar, good"), "24 bar");
  EXPECT_EQ(values_of("cyl 2 24 bar. good"), "cyl 2 24 bar");
  EXPECT_EQ(values_of("24 bar and 23 bar - good"), "24 bar and 23 bar");
  EXPECT_EQ(values_of("24 bar whistles, good"), "");
  EXPECT_EQ(values_of("cyl 2, good"), "");
}

TEST(ValueClauses, LeadOnPastACommaButNoFullStop) {
  const auto leads = [](const std::string& text) { return leads_on(page_of(text), 0, 1); };
  for (const char* text : {"play, none", "play: none", "play - none", "play? none"}) {
    EXPECT_TRUE(leads(text)) << text;
  }
  for (const char* text : {"play. none", "play; none", "play\nnone"}) {
    EXPECT_FALSE(leads(text)) << text;
  }
}

}  // namespace
}  // namespace shoplore
