#include "api/wire/markup_text.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

// Four as written out in the HTML standard's "named character references", and decimal 39.
TEST(MarkupText, MarkupIsWrittenAsReferences) {
  const struct {
    const char *name, *text, *written;
  } rows[] = {{"all five", "a<b>c&d\"e'f", "a&lt;b&gt;c&amp;d&quot;e&#39;f"},
              {"a reference is text too", "&amp;", "&amp;amp;"},
              {"letters stay", "grün 20 °C", "grün 20 °C"},
              {"lines stay", "a\nb\tc", "a\nb\tc"},
              {"control characters go",
               "a\x01\x1f"
               "b",
               "ab"},
              {"nothing", "", ""}};
  for (const auto& row : rows) EXPECT_EQ(markup_text(row.text), row.written) << row.name;
}

}  // namespace
}  // namespace shoplore
