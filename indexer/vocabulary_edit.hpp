// Changing a shop's own words: entries added, changed, retired, and made to stand for each other.
//
// Writes the shop's vocabulary folder only, in the file form of vocabulary.hpp: into the file that
// holds the entry already, else into KIND.json. A changed built-in entry is written whole and from
// then on overrides it; one that is again as it was built in is taken out. Entries are never
// deleted: a retired one is still shown, and counted in the cases that were recorded with it; it
// is no longer recognised or offered. An alias's cases count under the entry that stands for it.
// Neither changes a case: taking it back brings the counts back too.
// The index notices by the fingerprint and is built anew at the next follow. A program that has
// loaded the vocabulary keeps what it loaded.
// Processes take turns by a lock in the folder; readers see the old file or the new. Pure but for
// the folder; any thread.
// Nothing is written unless the whole vocabulary loads with the change. Fails with kInvalidInput
// (a wrong field, a phrase of another entry, a text that holds somebody's identity), kNotFound
// (with the ids that may have been meant), kConflict (retired already or not at all, and the
// like), kBusy, kNoPermission. The place is "FILE, entry 'ID'".
#pragma once

#include <chrono>
#include <filesystem>

#include "indexer/entry_edit.hpp"
#include "indexer/result.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

struct EditReport {
  EditedEntry done;
  std::filesystem::path file;  // written; empty when nothing changed
};

[[nodiscard]] Result<EditReport> edit_vocabulary(const std::filesystem::path& folder,
                                                 const EntryEdit& edit,
                                                 std::chrono::milliseconds patience);

// Where an entry comes from.
enum class EntryOrigin { kBuiltIn, kOwn, kOverridden };
template <>
inline constexpr EnumTable<EntryOrigin, 3> kEnumNames<EntryOrigin>{
    {{EntryOrigin::kBuiltIn, "built_in"},
     {EntryOrigin::kOwn, "own"},
     {EntryOrigin::kOverridden, "overridden"}}};

// Requires: built_in is Vocabulary::built_in().
[[nodiscard]] EntryOrigin origin_of(const Entry& entry, const Vocabulary& built_in);

}  // namespace shoplore
