#include "indexer/entry_edit.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

Vocabulary sample() {
  auto loaded = Vocabulary::parse(
      {{"s", R"({"kind":"symptom","entries":[
          {"id":"lack_of_power","name":"lack of power","phrases":["flat"],"cautions":["hot"]},
          {"id":"hesitation","name":"hesitation"},
          {"id":"squeal","name":"squeal","retired":"too vague"},
          {"id":"sluggish","name":"sluggish","alias_of":"lack_of_power"}]})"},
       {"k", R"({"kind":"check","entries":[{"id":"look","name":"look at it","minutes":5,
          "removals":["shield"]}]})"},
       {"r", R"({"kind":"removal","entries":[{"id":"shield","name":"shield"}]})"},
       {"c", R"({"kind":"caution","entries":[{"id":"hot","name":"hot"},
          {"id":"sharp","name":"sharp"}]})"},
       {"v", R"({"kind":"vehicle_model","entries":[{"id":"tidal","name":"Tidal",
          "make":"Brackwater","engine_families":["BW16D"]}]})"}});
  EXPECT_TRUE(loaded) << describe(loaded.error());
  return *loaded;
}

EntryEdit edit_of(EntryKind kind, const std::string& id) {
  EntryEdit edit;
  edit.kind = kind;
  edit.id = id;
  edit.if_missing = IfMissing::kAdd;
  return edit;
}

TEST(EntryEdit, ANewEntryIsWhatWasGiven) {
  EntryEdit edit = edit_of(EntryKind::kCheck, "tap");
  edit.name = "tap it";
  edit.phrases = {"tapped it"};
  edit.minutes = 3;
  edit.low = -700;
  edit.removals = {"shield"};
  const auto done = edit_entry(sample(), edit, "here");
  ASSERT_TRUE(done) << describe(done.error());
  EXPECT_EQ(done->edited, Edited::kAdded);
  EXPECT_EQ(entry_line(done->entry),
            R"({"id":"tap","name":"tap it","phrases":["tapped it"],"removals":["shield"],)"
            R"("minutes":3.0,"low":-700.0})");
  EXPECT_THAT(done->changes, ElementsAre("name: 'tap it'", "minutes: 3", "low: -700",
                                         "phrases: 'tapped it' added", "removals: 'shield' added"));
}

TEST(EntryEdit, OnlyGivenFieldsChangeAndListsGrow) {
  EntryEdit edit = edit_of(EntryKind::kCheck, "look");
  edit.minutes = 8;
  edit.phrases = {"looked"};
  const auto done = edit_entry(sample(), edit, "here");
  ASSERT_TRUE(done);
  EXPECT_EQ(done->edited, Edited::kChanged);
  EXPECT_THAT(done->changes, ElementsAre("minutes: 5, now 8", "phrases: 'looked' added"));
  EXPECT_EQ(done->entry.name, "look at it");
  EXPECT_THAT(done->entry.removals, ElementsAre("shield"));
}

TEST(EntryEdit, TheSameAgainChangesNothing) {
  EntryEdit edit = edit_of(EntryKind::kSymptom, "lack_of_power");
  edit.phrases = {"flat"};
  edit.name = "lack of power";
  const auto done = edit_entry(sample(), edit, "here");
  ASSERT_TRUE(done);
  EXPECT_EQ(done->edited, Edited::kNothing);
}

TEST(EntryEdit, DropTakesOutButNeverACaution) {
  EntryEdit edit = edit_of(EntryKind::kSymptom, "lack_of_power");
  edit.dropped = {"flat"};
  const auto done = edit_entry(sample(), edit, "here");
  ASSERT_TRUE(done);
  EXPECT_TRUE(done->entry.phrases.empty());
  edit.dropped = {"hot"};
  EXPECT_THAT(edit_entry(sample(), edit, "here").error().message, HasSubstr("'hot'"));
}

TEST(EntryEdit, RetiringAndAliasesAreTakenBack) {
  EntryEdit edit = edit_of(EntryKind::kSymptom, "squeal");
  edit.retired = "";
  EXPECT_EQ(edit_entry(sample(), edit, "here")->entry.retired, "");
  edit = edit_of(EntryKind::kSymptom, "sluggish");
  edit.alias_of = "";
  EXPECT_EQ(edit_entry(sample(), edit, "here")->entry.alias_of, "");
  edit = edit_of(EntryKind::kSymptom, "hesitation");
  edit.alias_of = "lack_of_power";
  EXPECT_EQ(edit_entry(sample(), edit, "here")->entry.alias_of, "lack_of_power");
}

struct Refused {
  const char* name;
  EntryEdit edit;
  ErrorCode code;
  const char* says;
};

// `change` sets what is to be refused.
template <class Change>
Refused row(const char* name, EntryKind kind, const char* id, ErrorCode code, const char* says,
            const Change& change) {
  Refused made{name, edit_of(kind, id), code, says};
  change(made.edit);
  return made;
}

TEST(EntryEdit, RefusesNamingFieldAndReason) {
  using E = EntryEdit;
  constexpr auto kSymptom = EntryKind::kSymptom;
  constexpr auto kWrong = ErrorCode::kInvalidInput;
  constexpr auto kConflict = ErrorCode::kConflict;
  const Refused rows[] = {
      row("no name", kSymptom, "hesitatio", kWrong, "near it: hesitation", [](E&) {}),
      row("unknown", kSymptom, "hesitatio", ErrorCode::kNotFound, "near it: hesitation",
          [](E& e) { e.if_missing = IfMissing::kRefuse; }),
      row("phrase of another", kSymptom, "hesitation", kWrong, "'lack_of_power' (flat)",
          [](E& e) { e.phrases = {"flats"}; }),
      row("name of another", kSymptom, "new_one", kWrong, "'lack_of_power'",
          [](E& e) { e.name = "lack of power"; }),
      row("change of retired", kSymptom, "squeal", kConflict, "is retired",
          [](E& e) { e.phrases = {"x"}; }),
      row("change of alias", kSymptom, "sluggish", kConflict, "'lack_of_power' stands for it",
          [](E& e) { e.phrases = {"x"}; }),
      row("not retired", kSymptom, "hesitation", kConflict, "is not retired",
          [](E& e) { e.retired = ""; }),
      row("no alias", kSymptom, "hesitation", kConflict, "is no alias",
          [](E& e) { e.alias_of = ""; }),
      row("stands for another", kSymptom, "lack_of_power", kConflict, "stands for 'sluggish'",
          [](E& e) { e.retired = "x"; }),
      row("alias of unknown", kSymptom, "hesitation", ErrorCode::kNotFound,
          "near it: lack_of_power", [](E& e) { e.alias_of = "lack_of_powr"; }),
      row("alias of itself", kSymptom, "hesitation", kWrong, "for itself",
          [](E& e) { e.alias_of = "hesitation"; }),
      row("alias of retired", kSymptom, "hesitation", kConflict, "'squeal' is retired",
          [](E& e) { e.alias_of = "squeal"; }),
      row("alias of a kind without", EntryKind::kVehicleModel, "tidal", kWrong, "vehicle_model",
          [](E& e) { e.alias_of = "other"; }),
      row("code in small letters", EntryKind::kCodeNote, "p0299", kWrong, "P0299",
          [](E& e) { e.name = "low boost"; }),
      row("nothing to drop", kSymptom, "hesitation", kWrong, "'xyz'",
          [](E& e) { e.dropped = {"xyz"}; }),
      row("not UTF-8", kSymptom, "hesitation", kWrong, "phrases: is not valid UTF-8",
          [](E& e) { e.phrases = {"caf\xe9"}; }),
  };
  for (const Refused& each : rows) {
    const auto done = edit_entry(sample(), each.edit, "here");
    ASSERT_FALSE(done) << each.name;
    EXPECT_EQ(done.error().place, "here") << each.name;
    EXPECT_EQ(done.error().code, each.code) << each.name;
    EXPECT_THAT(done.error().message, HasSubstr(each.says)) << each.name;
  }
}

TEST(EntryEdit, IdentitiesAreRefusedInEveryTextAndNotRepeated) {
  // The number is of the block that Ofcom keeps free for drama.
  const char* identities[] = {"ring 0151 496 0123", "ask jo@example.org", "ab12 cde shakes",
                              "1hgcm82633a004352"};
  for (const char* identity : identities) {
    for (const auto& [field, set] :
         {std::pair{"phrases", +[](EntryEdit&e, const char*t) { e.phrases = {t}; }},
          std::pair{"name", +[](EntryEdit&e, const char*t) { e.name = t; }},
          std::pair{"how", +[](EntryEdit&e, const char*t) { e.how = t; }},
          std::pair{"where", +[](EntryEdit&e, const char*t) { e.where = t; }},
          std::pair{"source", +[](EntryEdit&e, const char*t) { e.source = t; }},
          std::pair{"retired", +[](EntryEdit&e, const char*t) { e.retired = t; }}}) {
      EntryEdit edit = edit_of(EntryKind::kCheck, "look");
      set(edit, identity);
      const auto done = edit_entry(sample(), edit, "here");
      ASSERT_FALSE(done) << field << " " << identity;
      EXPECT_THAT(done.error().message, HasSubstr(std::string(field) + ": ")) << identity;
      EXPECT_THAT(done.error().message, Not(HasSubstr(identity))) << field;
    }
  }
  EntryEdit plate_as_id = edit_of(EntryKind::kSymptom, "ab12_cde");
  plate_as_id.name = "odd";
  EXPECT_THAT(edit_entry(sample(), plate_as_id, "here").error().message, HasSubstr("id: "));
}

TEST(EntryEdit, AnEngineFamilyMayLookLikeAPlateButNotLikeAnAddress) {
  EntryEdit edit = edit_of(EntryKind::kVehicleModel, "tidal");
  edit.engine_families = {"BW22D"};
  EXPECT_TRUE(edit_entry(sample(), edit, "here"));
  edit.engine_families = {"jo@example.org"};
  EXPECT_FALSE(edit_entry(sample(), edit, "here"));
}

// What is shipped could have been typed: the gate does not take the trade's words for identities.
// Every fortieth entry: an edit looks at each of its texts for identities, which takes a while.
TEST(EntryEdit, TheBuiltInTextsWouldBeTaken) {
  const auto built_in = Vocabulary::built_in();
  ASSERT_TRUE(built_in);
  std::size_t number = 0;
  for (const auto& [kind, name] : kEnumNames<EntryKind>) {
    for (const auto& [id, entry] : built_in->entries(kind)) {
      if (number++ % 40 != 0) continue;
      EntryEdit edit = edit_of(kind, id);
      edit.name = entry.name;
      edit.phrases = entry.phrases;
      edit.how = entry.how;
      edit.where = entry.where;
      edit.source = entry.source;
      edit.engine_families = entry.engine_families;
      const auto done = edit_entry(*built_in, edit, "here");
      ASSERT_TRUE(done) << name << " " << id << " " << describe(done.error());
      EXPECT_EQ(done->edited, Edited::kNothing) << name << " " << id;
    }
  }
}

}  // namespace
}  // namespace shoplore
