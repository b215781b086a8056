// How well notes are understood that the recogniser was not fitted to. The bars are those of the
// project's own demand: precision .95, recall .90 over all kinds, .98 and .95 for codes and
// mileage, negation right .95.
#include "tests/indexer/labelled_notes.hpp"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

void expect_understood(const Comparison& comparison) {
  std::puts(table_of(comparison).c_str());
  const Tally all = comparison.all();
  EXPECT_GE(all.precision(), .95);
  EXPECT_GE(all.recall(), .90);
  for (const char* kind : {"code", "mileage"}) {
    EXPECT_GE(comparison.by_kind.at(kind).precision(), .98) << kind;
    EXPECT_GE(comparison.by_kind.at(kind).recall(), .95) << kind;
  }
  EXPECT_GE(comparison.attributes.at("negation").share(), .95);
}

TEST(LabelledNotes, TheNotesOfTuningAreUnderstood) {
  const auto notes = labelled_notes("open_");
  EXPECT_GE(notes.size(), 220U);
  const Comparison comparison = compare(notes, built_in_recogniser());
  expect_understood(comparison);
  if (std::getenv("SHOPLORE_SHOW_DIFFERENCES") == nullptr) return;
  for (const std::string& line : comparison.differences) std::puts(line.c_str());
}

TEST(LabelledNotes, NotesNeverLookedAtAreUnderstoodAsWell) {
  const auto notes = labelled_notes("closed_");
  EXPECT_EQ(notes.size(), 80U);
  expect_understood(compare(notes, built_in_recogniser()));
}

TEST(LabelledNotes, EveryLabelNamesAnEntryThatExists) {
  const std::map<std::string, EntryKind> kinds{{"symptom", EntryKind::kSymptom},
                                               {"condition", EntryKind::kCondition},
                                               {"check", EntryKind::kCheck},
                                               {"work_sign", EntryKind::kWorkSign}};
  for (const char* files : {"open_", "closed_"}) {
    for (const LabelledNote& note : labelled_notes(files)) {
      for (const LabelledItem& item : note.items) {
        const auto kind = kinds.find(item.kind);
        if (kind == kinds.end()) continue;
        EXPECT_NE(built_in_vocabulary().find(kind->second, item.id), nullptr) << item.id;
      }
    }
  }
}

}  // namespace
}  // namespace shoplore
