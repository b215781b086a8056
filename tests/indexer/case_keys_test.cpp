#include "indexer/case_keys.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

const Vocabulary& vocabulary() {
  static const Vocabulary words = Vocabulary::built_in().value();
  return words;
}

TEST(CaseKeys, ACauseKeyComesApartAsItWasMade) {
  const std::string key =
      cause_key({"wastegate_linkage", "seized_open", Proof::kSeen}, vocabulary());
  EXPECT_EQ(key, "wastegate_linkage:seized_open");
  EXPECT_EQ(cause_parts(key).component, "wastegate_linkage");
  EXPECT_EQ(cause_parts(key).failure, "seized_open");
}

TEST(CaseKeys, AFixKeyComesApartAsItWasMade) {
  const Fix fix{"replace", "ignition_coil"};
  EXPECT_EQ(fix_key(fix, vocabulary()), "replace ignition_coil");
  EXPECT_EQ(fix_parts("replace ignition_coil"), fix);
}

TEST(CaseKeys, WhatIsNoKeyIsAllFirstPart) {
  EXPECT_EQ(cause_parts("turbocharger").component, "turbocharger");
  EXPECT_EQ(cause_parts("turbocharger").failure, "");
  EXPECT_EQ(fix_parts("replace"), (Fix{"replace", ""}));
}

TEST(CaseKeys, FixesOfACaseStandOnceAndInOrder) {
  Case record;
  EXPECT_TRUE(fix_keys(record, vocabulary()).empty());
  record.correction = Correction{};
  record.correction->fixes = {
      {"replace", "spark_plug"}, {"replace", "ignition_coil"}, {"replace", "spark_plug"}};
  EXPECT_EQ(fix_keys(record, vocabulary()),
            (std::vector<std::string>{"replace ignition_coil", "replace spark_plug"}));
}

TEST(CaseKeys, PeopleReadNamesAndIdsNobodyKnowsKeepTheirWords) {
  EXPECT_EQ(display_cause_key("wastegate_linkage:seized_open", vocabulary()),
            "wastegate linkage, seized open");
  EXPECT_EQ(display_cause_key("flux_valve:gone_soft", vocabulary()), "flux valve, gone soft");
  EXPECT_EQ(display_fix("replace ignition_coil", vocabulary()), "replace ignition coil");
  EXPECT_EQ(display_fixes({"replace ignition_coil", "replace spark_plug"}, vocabulary()),
            "replace ignition coil + replace spark plug");
  EXPECT_EQ(display_fixes({}, vocabulary()), "nothing written down");
}

}  // namespace
}  // namespace shoplore
