#include "indexer/told_scans.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(ToldScans, AScanIsACheckWithoutAVerdict) {
  const std::vector<NoteRow> table{{"HV scan only", {"check hv_scan_only unclear"}},
                                   {"full scan", {"check module_scan unclear"}},
                                   {"full scan ok", {"check module_scan pass"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(ToldScans, AScanAskedForIsNone) {
  for (const char* text :
       {"do a full scan", "needs a full scan", "please do a full scan", "scan"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text;
  }
}

}  // namespace
}  // namespace shoplore
