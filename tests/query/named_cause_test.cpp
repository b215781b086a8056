#include "query/named_cause.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

const std::set<std::string> kSeen{"wastegate_linkage:seized_open", "turbocharger:worn",
                                  "turbocharger:leaking",          "turbocharger_vanes:sticking",
                                  "charge_air_hose:split",         "spark_plug:worn"};

TEST(NamedCause, IsReadByItsKeyOrItsWords) {
  const struct {
    const char* text;
    const char* key;
  } rows[] = {
      {"wastegate_linkage:seized_open", "wastegate_linkage:seized_open"},
      {"wastegate linkage seized open", "wastegate_linkage:seized_open"},
      {"Wastegate linkage, seized open", "wastegate_linkage:seized_open"},  // as it is shown
      {"wastegate_linkage seized_open", "wastegate_linkage:seized_open"},
      {"seized open wastegate linkage", "wastegate_linkage:seized_open"},
      {"worn turbocharger", "turbocharger:worn"},
      {"turbo worn", "turbocharger:worn"},
      {"wastegate linkage", "wastegate_linkage:seized_open"},  // the records hold one cause of it
      {"seized open", "wastegate_linkage:seized_open"},
      {"charge air hose torn", "charge_air_hose:split"},
      {"wastegate linkage siezed open", "wastegate_linkage:seized_open"},
      {"thermostat stuck open", "thermostat:stuck_open"},  // named outright, never seen
      {"thermostat:stuck_open", "thermostat:stuck_open"},
  };
  for (const auto& row : rows) {
    SCOPED_TRACE(row.text);
    const auto key = named_cause(row.text, vocabulary(), kSeen);
    ASSERT_TRUE(key) << describe(key.error());
    EXPECT_EQ(*key, row.key);
  }
}

TEST(NamedCause, WhatIsNotOneCauseIsRefused) {
  const struct {
    const char* text;
    const char* says;
    std::vector<std::string> candidates;
  } rows[] = {
      {"turbocharger", "several causes", {"turbocharger:leaking", "turbocharger:worn"}},
      {"worn", "several causes", {"spark_plug:worn", "turbocharger:worn"}},
      {"flux capacitor", "names no cause", {}},
      {"thermostat", "names no cause", {}},  // no failure given, and none seen
      {"", "1 to 12 words", {}},
      {"a b c d e f g h i j k l m", "1 to 12 words", {}},
      {"wastegate_linkag:seized_open", "near it: wastegate_linkage", {}},
      {"wastegate_linkage:seized_opn", "near it: seized_open", {}},
      {":", "no component", {}},
  };
  for (const auto& row : rows) {
    SCOPED_TRACE(row.text);
    const auto key = named_cause(row.text, vocabulary(), kSeen);
    ASSERT_FALSE(key) << *key;
    EXPECT_EQ(key.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(key.error().place, row.text);
    EXPECT_NE(key.error().message.find(row.says), std::string::npos) << key.error().message;
    std::vector<std::string> candidates;
    for (const Problem& problem : key.error().problems) candidates.push_back(problem.place);
    EXPECT_EQ(candidates, row.candidates);
  }
}

}  // namespace
}  // namespace shoplore
