// What is seen more often lately, as a person asks it.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

#include "tests/api/lately_months.hpp"
#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::Ended;
using testing::months_of_cases;
using testing::TestShop;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

// Before the cases the shop comes with.
const std::vector<std::string> kAsOf{"lately", "--as-of", "2026-02-28"};

std::vector<std::string> as_of(std::vector<std::string> more) {
  std::vector<std::string> arguments = kAsOf;
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

TEST(LatelyVerb, ARisePutInIsSeen) {
  const TestShop shop;
  ASSERT_EQ(shop.run({"import"}, months_of_cases(2, 9)).exit_code, 0);
  const Ended text = shop.run(kAsOf);
  EXPECT_EQ(text.exit_code, 0) << text.err;
  EXPECT_SAYS(text.out, "wastegate linkage, seized open, engine family BW16D");
  EXPECT_SAYS(text.out, "more often since about 2025-12");
  const json whole = json::parse(shop.run(as_of({"--json"})).out);
  EXPECT_EQ(whole["rows"][0]["component"], "wastegate_linkage");
  EXPECT_EQ(whole["rows"][0]["windows"][0]["cases"], 27);
  EXPECT_EQ(shop.run(as_of({"--months", "3", "--engine-family", "bw16d"})).exit_code, 0);
  EXPECT_EQ(shop.run(as_of({"--engine-family", "DM15P"})).exit_code, 1) << "did not rise";
  EXPECT_EQ(shop.run(as_of({"--engine-family", "DM15P", "--all"})).exit_code, 0);
  // Before it rose there was nothing to see.
  EXPECT_EQ(shop.run({"lately", "--as-of", "2025-11-30"}).exit_code, 1);
}

TEST(LatelyVerb, NothingIsOneSentenceAndExitOne) {
  const TestShop shop;
  ASSERT_EQ(shop.run({"import"}, months_of_cases(3, 3)).exit_code, 0);
  const Ended text = shop.run(kAsOf);
  EXPECT_EQ(text.exit_code, 1);
  EXPECT_SAYS(text.out, "Nothing is seen more often lately than before");
  EXPECT_EQ(std::count(text.out.begin(), text.out.end(), '.'), 1) << text.out;
  EXPECT_EQ(shop.run(as_of({"--json"})).exit_code, 1);
}

TEST(LatelyVerb, ThePictureIsWritten) {
  const TestShop shop;
  ASSERT_EQ(shop.run({"import"}, months_of_cases(2, 9)).exit_code, 0);
  const std::string file = (shop.around() / "lately.svg").string();
  EXPECT_EQ(shop.run(as_of({"--svg", file})).exit_code, 0);
  std::ifstream in(file);
  const std::string svg(std::istreambuf_iterator<char>(in), {});
  EXPECT_SAYS(svg, "<?xml");
  EXPECT_SAYS(svg, "wastegate linkage, seized open");
  EXPECT_SAYS(svg, "</svg>");
  EXPECT_EQ(svg.find("<script"), std::string::npos);
}

TEST(LatelyVerb, WrongOptionsAreNamed) {
  const TestShop shop;
  ASSERT_EQ(shop.run({"import"}, months_of_cases(2, 9)).exit_code, 0);
  const struct {
    std::vector<std::string> options;
    const char* place;
    const char* reason;
  } rows[] = {{{"--months", "5"}, "--months", "expected 3, 6 or 12"},
              {{"--months", "3x"}, "--months", "expected 3, 6 or 12"},
              {{"--engine-family", "XX99X"}, "--engine-family", "\"XX99X\" is on no counted case"},
              {{"--falling", "--all"}, "--falling", "--all"},
              {{"--as-of", "2026-02-30"}, "--as-of", "2026-02-30"},
              {{"--as-of", "2019-05-01"}, "--as-of", "the first case was closed in 2022-09"},
              {{"--svg", "/nowhere/at/all.svg"}, "/nowhere/at/all.svg", "cannot be opened"}};
  for (const auto& row : rows) {
    std::vector<std::string> arguments{"lately"};
    arguments.insert(arguments.end(), row.options.begin(), row.options.end());
    const Ended ended = shop.run(arguments);
    EXPECT_EQ(ended.exit_code, 2) << row.options[0];
    EXPECT_SAYS(ended.err, row.place);
    EXPECT_SAYS(ended.err, row.reason);
    EXPECT_EQ(ended.out, "") << row.options[0];
  }
}

TEST(LatelyVerb, AShopWithoutHistorySaysWhatItTakes) {
  const TestShop shop;  // eight cases of one month
  const Ended ended = shop.run({"lately", "--as-of", "2026-06-30"});
  EXPECT_EQ(ended.exit_code, 1) << ended.err;
  EXPECT_SAYS(ended.out, "whole months are too few");
}

}  // namespace
}  // namespace shoplore
