#include "api/http/page_cursor.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace shoplore {
namespace {

TEST(PageCursor, GivesItsPositionBack) {
  for (const std::int64_t position : {std::int64_t{1}, std::int64_t{3117}, INT64_MAX}) {
    EXPECT_EQ(cursor_position(page_cursor(position, "a?make=b"), "a?make=b"), position);
  }
  EXPECT_EQ(cursor_position("", "anything"), 0);
}

TEST(PageCursor, AnythingElseIsRefused) {
  const std::string good = page_cursor(7, "a");
  for (const std::string& bad :
       {std::string("7"), std::string("x"), "0" + good, good + "0", "8" + good.substr(1) + "x",
        page_cursor(0, "a"), page_cursor(-1, "a"), std::string("99999999999999999999-") + good,
        page_cursor(7, "b")}) {
    const auto position = cursor_position(bad, "a");
    ASSERT_FALSE(position) << bad;
    EXPECT_EQ(position.error().place, "?cursor") << bad;
  }
}

}  // namespace
}  // namespace shoplore
