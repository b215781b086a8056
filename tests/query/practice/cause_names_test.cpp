#include "query/practice/cause_names.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

class CauseNamesTest : public ::testing::Test {
 protected:
  CauseNamesTest() {
    for (const char* key : {"wastegate_linkage:seized_open", "turbocharger_vanes:sticking",
                            "turbocharger:worn", "charge_air_hose:split", "battery:worn"}) {
      static_cast<void>(causes.number(key));
    }
  }
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  CauseTable causes;
  const std::vector<std::uint32_t> seen{9, 4, 7, 3, 0};
  [[nodiscard]] CauseNames names() const { return CauseNames(causes, seen, vocabulary); }
};

TEST_F(CauseNamesTest, WordsNameTheOneCauseTheyFit) {
  const std::vector<std::pair<const char*, const char*>> rows{
      {"wastegate_linkage:seized_open", "wastegate_linkage:seized_open"},
      {"wastegate linkage, seized open", "wastegate_linkage:seized_open"},
      {"the linkage seized", "wastegate_linkage:seized_open"},
      {"Turbo vanes STICKING", "turbocharger_vanes:sticking"},
      {"vanes stick", "turbocharger_vanes:sticking"},
      {"turbocharger worn", "turbocharger:worn"},
      {"hose split", "charge_air_hose:split"}};
  for (const auto& [words, key] : rows) {
    const auto found = names().find(words, "/cause");
    ASSERT_TRUE(found) << words << ": " << describe(found.error());
    EXPECT_EQ(*found, key) << words;
  }
}

TEST_F(CauseNamesTest, WordsThatLeaveItOpenAreAnsweredWithNames) {
  const auto found = names().find("turbo", "/cause");
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().code, ErrorCode::kInvalidInput);
  EXPECT_EQ(found.error().place, "/cause");
  EXPECT_THAT(found.error().message, HasSubstr("leaves open"));
  EXPECT_THAT(found.error().message, HasSubstr("turbocharger, worn"));
}

TEST_F(CauseNamesTest, UnknownWordsAreAnsweredWithWhatIsNear) {
  const auto misspelt = names().find("wastgate linkage", "/cause");
  ASSERT_FALSE(misspelt);
  EXPECT_THAT(misspelt.error().message, HasSubstr("near: wastegate linkage, seized open"));
  const auto unknown = names().find("flux", "/cause");
  ASSERT_FALSE(unknown);
  EXPECT_THAT(unknown.error().message, HasSubstr("\"flux\""));
  EXPECT_THAT(unknown.error().message, Not(HasSubstr("near")));
  EXPECT_FALSE(names().find("", "/cause"));
  EXPECT_FALSE(names().find("the", "/cause"));
}

TEST_F(CauseNamesTest, CausesWithoutCasesAreNotNamed) {
  EXPECT_FALSE(names().find("battery worn", "/cause"));
  EXPECT_FALSE(names().find("battery:worn", "/cause"));
  EXPECT_THAT(names().matching(""),
              ElementsAre("charge_air_hose:split", "turbocharger_vanes:sticking",
                          "turbocharger:worn", "wastegate_linkage:seized_open"));
}

}  // namespace
}  // namespace shoplore
