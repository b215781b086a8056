// One change to one vocabulary entry, in memory: what is asked for, whether it may be done, and the
// entry afterwards.
//
// Writes nothing and does not load the result: vocabulary_edit.hpp does both. Refused here is what
// loading would not notice (somebody's identity in a text, retiring what is retired) or would say
// less well (a phrase of another entry).
// Entries are never deleted, so nothing here takes one away.
// Pure functions, any thread. Fails with kInvalidInput, kNotFound (with the ids that may have been
// meant) and kConflict at the place given.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/result.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

enum class IfMissing { kAdd, kRefuse };

// What to change; what is not given stays.
struct EntryEdit {
  EntryKind kind = EntryKind::kSymptom;
  std::string id;
  IfMissing if_missing = IfMissing::kRefuse;
  std::optional<std::string> name;                                        // a new entry needs one
  std::optional<std::string> unit, where, how, expands_to, source, make;  // "" empties the field
  std::optional<double> minutes, low, high;
  // Added to those that are there.
  std::vector<std::string> phrases, contraries, cautions, removals, components, afterwards,
      conditions, engine_families;
  std::vector<std::string> dropped;     // taken out of whichever of these lists, cautions apart
  std::optional<std::string> retired;   // why; "" takes it back
  std::optional<std::string> alias_of;  // the id that stands for it; "" takes it back
};

enum class Edited { kNothing, kAdded, kChanged };

struct EditedEntry {
  Edited edited = Edited::kNothing;
  Entry entry;                       // as it now stands
  std::vector<std::string> changes;  // "minutes: 5, now 8", "phrases: 'no grunt' added"
};

// `place` is what errors name: file and entry.
[[nodiscard]] Result<EditedEntry> edit_entry(const Vocabulary& vocabulary, const EntryEdit& edit,
                                             std::string place);

}  // namespace shoplore
