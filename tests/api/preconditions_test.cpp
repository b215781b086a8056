#include "api/http/preconditions.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace shoplore {
namespace {

// RFC 9110 section 8.8.3.2: the table of strong and weak comparison, and section 13.1's lists.
TEST(Preconditions, TagsAreComparedAsTheStandardSays) {
  struct Row {
    std::string list;
    bool strong, weak;
  };
  for (const auto& [list, strong, weak] : std::vector<Row>{{"\"12\"", true, true},
                                                           {"W/\"12\"", false, true},
                                                           {"\"1\"", false, false},
                                                           {"\"1\", \"12\"", true, true},
                                                           {"\"12\",\"1\"", true, true},
                                                           {"\"1\" ,W/\"12\"", false, true},
                                                           {"*", true, true},
                                                           {" * ", true, true},
                                                           {"", false, false},
                                                           {"12", false, false},
                                                           {"\"12", false, false},
                                                           {"12\"", false, false},
                                                           {"\"12\" \"1\"", false, false},
                                                           {"w/\"12\"", false, false},
                                                           {"W/", false, false},
                                                           {"\"1,12\"", false, false}}) {
    EXPECT_EQ(names_tag(list, "\"12\"", TagComparison::kStrong), strong) << list;
    EXPECT_EQ(names_tag(list, "\"12\"", TagComparison::kWeak), weak) << list;
  }
}

TEST(Preconditions, TheTagOfACaseIsItsRevision) {
  EXPECT_EQ(entity_tag(Revision{2412}), "\"2412\"");
}

}  // namespace
}  // namespace shoplore
