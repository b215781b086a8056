// What is only known once a case is over, as the index keeps it beside the evidence.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "indexer/case_json.hpp"
#include "indexer/evidence_item.hpp"
#include "indexer/index_document.hpp"

namespace shoplore {
namespace {

using ::testing::IsEmpty;

const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

Case record(const std::string& fields) {
  return case_from_json(R"({"schema":1,"state":"closed","opened":"2026-03-02",
      "closed":"2026-03-04","cause":{"component":"turbocharger","failure":"worn"},)" +
                        fields + "}")
      .value();
}

std::vector<std::string> hindsight(const std::string& fields) {
  std::vector<std::string> lines;
  for (const EvidenceItem& item : hindsight_of(record(fields), words())) {
    EXPECT_TRUE(is_hindsight(item.attribute)) << item.attribute;
    EXPECT_EQ(known_by(item.attribute), KnownBy::kMention) << item.attribute;
    lines.push_back(item.attribute + "=" + item.value);
  }
  return lines;
}

TEST(Hindsight, IsListedByKind) {
  const struct {
    const char* name;
    std::string fields;
    std::vector<std::string> items;
  } table[] = {{"nothing known", R"("notes":"x")", {}},
               {"a check that misled",
                R"("checks":[{"id":"turbo_shaft_play","verdict":"pass","later":"misled"}])",
                {"misled:turbo_shaft_play=pass"}},
               {"a contributing cause, not one also found",
                R"("contributing":[{"component":"turbo_oil_feed","failure":"blocked"}],
          "also_found":[{"component":"tyre","failure":"worn"}])",
                {"contributing:turbo_oil_feed:blocked=present"}},
               {"fixes together, sorted",
                R"("correction":{"fixes":[{"action":"replace","component":"turbocharger"},
          {"action":"clean","component":"intercooler"}]})",
                {"done:clean intercooler+replace turbocharger=present"}},
               {"came back for the part",
                R"("outcome":{"status":"came_back","as_of":"2026-04-01","reason":"part"})",
                {"came_back:part=present"}},
               {"came back, nobody says why",
                R"("outcome":{"status":"came_back"})",
                {"came_back:unsaid=present"}},
               {"stayed fixed", R"("outcome":{"status":"stayed_fixed","as_of":"2026-09-01"})", {}},
               {"codes at arrival and after clearing",
                R"("codes":[{"code":"P0299"},{"code":"P2263","seen":"after_clearing"}])",
                {"codes:at_arrival=present", "codes:later=present"}}};
  for (const auto& each : table) EXPECT_EQ(hindsight(each.fields), each.items) << each.name;
}

TEST(Hindsight, ABrandBelongsToTheComponentItsPartIsNamedAfter) {
  const struct {
    const char* name;
    std::string fixes, parts;
    std::vector<std::string> brands;
  } table[] = {{"by its name",
                "",
                R"({"part":"Ignition Coil","brand":"QuickSpark"})",
                {"brand:ignition_coil=quickspark"}},
               {"by its id",
                "",
                R"({"part":"ignition_coil","brand":"Harbour"})",
                {"brand:ignition_coil=harbour"}},
               {"as the only part",
                R"({"action":"replace","component":"turbocharger"})",
                R"({"part":"unit no. 7","brand":"Harbour"})",
                {"brand:turbocharger=harbour"}},
               {"two replaced",
                R"({"action":"replace","component":"turbocharger"},
         {"action":"replace","component":"boost_sensor"})",
                R"({"part":"unit no. 7","brand":"Harbour"})",
                {}},
               {"two parts",
                R"({"action":"replace","component":"turbocharger"})",
                R"({"part":"unit no. 7","brand":"Harbour"},{"part":"bolts","brand":"Harbour"})",
                {}},
               {"without a brand", "", R"({"part":"ignition coil"})", {}}};
  for (const auto& each : table) {
    auto items =
        hindsight(R"("correction":{"fixes":[)" + each.fixes + R"(],"parts":[)" + each.parts + "]}");
    std::erase_if(items, [](const std::string& item) { return item.starts_with("done:"); });
    EXPECT_EQ(items, each.brands) << each.name;
  }
}

// A term of the index holds 245 bytes.
TEST(Hindsight, MoreFixesThanATermHoldsAreNotListed) {
  std::string fixes;
  for (int i = 0; i < 9; ++i) {
    fixes += std::string(i == 0 ? "" : ",") +
             R"({"action":"replace","component":"some_component_no_)" + std::to_string(i) + "\"}";
  }
  EXPECT_THAT(hindsight(R"("correction":{"fixes":[)" + fixes + "]}"), IsEmpty());
}

TEST(Hindsight, EvidenceIsNone) {
  for (const char* attribute : {"symptom:misfire", "code:P0299", "condition:uphill", "make",
                                "check:turbo_shaft_play", "fact:duty"}) {
    EXPECT_FALSE(is_hindsight(attribute)) << attribute;
  }
}

TEST(Hindsight, DaysToComingBackAreCountedFromClosing) {
  const struct {
    const char* name;
    std::string outcome;
    std::optional<int> days;
  } table[] = {{"came back", R"({"status":"came_back","as_of":"2026-04-03"})", 30},
               {"the same day", R"({"status":"came_back","as_of":"2026-03-04"})", 0},
               {"day not known", R"({"status":"came_back"})", std::nullopt},
               {"stayed fixed", R"({"status":"stayed_fixed","as_of":"2026-04-03"})", std::nullopt}};
  for (const auto& each : table) {
    const auto document =
        index_document(CaseId{1}, record(R"("outcome":)" + each.outcome), words());
    EXPECT_EQ(document.came_back_days, each.days) << each.name;
  }
}

}  // namespace
}  // namespace shoplore
