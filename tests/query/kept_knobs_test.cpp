#include "query/ranking/kept_knobs.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

namespace shoplore {
namespace {

class KeptKnobsTest : public ::testing::Test {
 protected:
  KeptKnobsTest() {
    std::string name = (std::filesystem::temp_directory_path() / "shoplore-knobs-XXXXXX").string();
    folder.root = mkdtemp(name.data());
  }
  ~KeptKnobsTest() override { std::filesystem::remove_all(folder.root); }
  ShopFolder folder;
};

TEST_F(KeptKnobsTest, ComeBackAsTheyWereKept) {
  EXPECT_FALSE(read_knobs(folder).value());
  KeptKnobs kept;
  kept.knobs = {6, .125, .25, 4, .875, .5, 1.5, .625, .375, .75};
  kept.revision = Revision{77};
  kept.cases = 2'400;
  kept.questions = 600;
  kept.log_loss = .8125;
  kept.start_log_loss = .9375;
  ASSERT_TRUE(keep_knobs(folder, kept));
  const auto read = read_knobs(folder).value();
  ASSERT_TRUE(read);
  EXPECT_EQ(read->knobs.smoothing, 6);
  EXPECT_EQ(read->knobs.rho, .125);
  EXPECT_EQ(read->knobs.gamma, .25);
  EXPECT_EQ(read->knobs.eta, 4);
  EXPECT_EQ(read->knobs.sureness, .875);
  EXPECT_EQ(read->knobs.growth, .5);
  EXPECT_EQ(read->knobs.words, 1.5);
  EXPECT_EQ(read->knobs.listing, .625);
  EXPECT_EQ(read->knobs.scarcity, .375);
  EXPECT_EQ(read->knobs.strength, .75);
  EXPECT_EQ(read->revision, Revision{77});
  EXPECT_EQ(read->cases, 2'400);
  EXPECT_EQ(read->questions, 600);
  EXPECT_EQ(read->log_loss, .8125);
  EXPECT_EQ(read->start_log_loss, .9375);
}

// Else a shop would lose its fit to a newer program without a word.
TEST_F(KeptKnobsTest, AFileFromBeforeScarcityIsReadWithoutIt) {
  KeptKnobs kept;
  kept.knobs.scarcity = .5;
  kept.knobs.eta = 4;
  ASSERT_TRUE(keep_knobs(folder, kept));
  std::ifstream file(folder.ranking());
  std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto at = text.find("\"scarcity\"");
  ASSERT_NE(at, text.npos);
  text.erase(at, text.find('\n', at) - at);
  std::ofstream(folder.ranking()) << text;
  const auto read = read_knobs(folder);
  ASSERT_TRUE(read) << read.error().message;
  EXPECT_EQ((*read)->knobs.scarcity, 0);
  EXPECT_EQ((*read)->knobs.eta, 4);
}

TEST_F(KeptKnobsTest, ADamagedFileIsNamedWithWhatMendsIt) {
  for (const char* text : {"", "{", "[]", "{}", R"({"knobs":{"rho":"much"}})"}) {
    std::ofstream(folder.ranking()) << text;
    const auto read = read_knobs(folder);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().code, ErrorCode::kDamagedIndex);
    EXPECT_EQ(read.error().place, folder.ranking().string());
    EXPECT_NE(read.error().message.find("shoplore fit"), std::string::npos);
  }
}

TEST(FitDue, AfterTwoHundredCasesAndATenthMore) {
  EXPECT_FALSE(is_fit_due({}, 199));
  EXPECT_TRUE(is_fit_due({}, 200));
  KeptKnobs kept;
  kept.cases = 1'000;
  EXPECT_FALSE(is_fit_due(kept, 1'099));
  EXPECT_TRUE(is_fit_due(kept, 1'100));
}

}  // namespace
}  // namespace shoplore
