// The words of the trade: symptoms, checks, components and so on, each with an id, a name people
// read and the phrases they type.
//
// The built-in entries are the JSON files of indexer/vocabulary/, compiled into the program; a
// shop's own folder overrides an entry of the same kind and id, or adds one. Everything is
// checked on load and errors name the file and the entry. Entries are retired, never deleted;
// an alias maps an id recorded earlier to the entry that now stands for it.
// Immutable after loading: share freely between threads. References stay valid as long as the
// Vocabulary lives.
//
// File form, one per kind, entries one a line:
//   {"kind":"check","entries":[
//     {"id":"wastegate_linkage_by_hand","name":"move the wastegate linkage by hand",
//      "phrases":["linkage by hand","moved the linkage"],"minutes":5,
//      "removals":["heat_shield"],"components":["wastegate_linkage"],
//      "cautions":["hot_exhaust"],"how":"Engine off and cold. ..."}]}
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/enum_names.hpp"
#include "indexer/result.hpp"

namespace shoplore {

enum class EntryKind {
  kSymptom,
  kCondition,
  kCheck,
  kComponent,
  kFailure,
  kAction,
  kRemoval,
  kWorkSign,
  kVerification,
  kCaution,
  kShorthand,
  kCodeNote,
  kVehicleModel
};
template <>
inline constexpr EnumTable<EntryKind, 13> kEnumNames<EntryKind>{
    {{EntryKind::kSymptom, "symptom"},
     {EntryKind::kCondition, "condition"},
     {EntryKind::kCheck, "check"},
     {EntryKind::kComponent, "component"},
     {EntryKind::kFailure, "failure"},
     {EntryKind::kAction, "action"},
     {EntryKind::kRemoval, "removal"},
     {EntryKind::kWorkSign, "work_sign"},
     {EntryKind::kVerification, "verification"},
     {EntryKind::kCaution, "caution"},
     {EntryKind::kShorthand, "shorthand"},
     {EntryKind::kCodeNote, "code_note"},
     {EntryKind::kVehicleModel, "vehicle_model"}}};

// What the expected range of a check is of: the value read, or the difference of two ("asked and
// reached"), against which a single value says nothing.
enum class RangeOf { kValue, kDifference };
template <>
inline constexpr EnumTable<RangeOf, 2> kEnumNames<RangeOf>{
    {{RangeOf::kValue, "value"}, {RangeOf::kDifference, "difference"}}};

// One entry of any kind; a field that a kind does not use stays empty and is refused in its file.
struct Entry {
  EntryKind kind = EntryKind::kSymptom;
  std::string id;                       // [a-z0-9_]{1,64}; a code_note's id is the code, "P0299"
  std::string name;                     // what people read, in our own words
  std::vector<std::string> phrases;     // further ways it is typed, lower case
  std::vector<std::string> contraries;  // symptom: what denies it, "drives straight", lower case
  std::string retired;                  // empty, or why it is no longer offered
  std::string alias_of;                 // empty, or the id of the same kind that stands for it
  std::string kind_of;                  // symptom: the wider symptom it is one sort of
  // symptom, check, component, removal, action, verification: caution ids
  std::vector<std::string> cautions;
  std::vector<std::string> removals;    // check: what must come off first
  std::vector<std::string> components;  // check, symptom: components it tells about
  // component: what it commonly needs once it was renewed or opened, a sentence each
  std::vector<std::string> afterwards;
  std::optional<double> minutes;    // check, removal, verification
  std::string unit;                 // check: unit of its reading
  std::optional<double> low, high;  // check: expected range of its reading
  std::optional<RangeOf> range_of;  // check: nothing is kValue
  std::string where;                // check: where to look or measure
  // check: condition ids it needs; symptom: those with which the wider symptom is this one
  std::vector<std::string> conditions;
  std::string how;         // check, verification: how to do it safely; caution: the text
  std::string expands_to;  // shorthand: the words it stands for
  std::string source;      // where a trade value comes from
  std::string make;        // vehicle_model: its make
  std::vector<std::string> engine_families;  // vehicle_model
};

// Name and text of every file of a vocabulary, later ones overriding.
using VocabularyFiles = std::vector<std::pair<std::string, std::string>>;

class Vocabulary {
 public:
  // The built-in files alone. Fails with kInternal only if the shipped files are wrong (tested).
  [[nodiscard]] static Result<Vocabulary> built_in();

  // Built-in files, then every *.json of the folder in name order; a missing folder is no error.
  [[nodiscard]] static Result<Vocabulary> load(const std::filesystem::path& overrides);

  // Documents in the file form, all of them checked against one another; the names are for errors.
  // load() takes for granted that the shipped ones are sound among themselves, which a test shows.
  [[nodiscard]] static Result<Vocabulary> parse(const VocabularyFiles& files_and_texts);

  // The entry of that very id, retired or alias though it be; nullptr when unknown.
  [[nodiscard]] const Entry* find(EntryKind kind, std::string_view id) const;

  // The id that stands for this one: follows aliases; the id itself when unknown.
  [[nodiscard]] std::string canonical(EntryKind kind, std::string_view id) const;

  // Every id that this one stands for, itself the first; just the id when unknown. Cases keep the
  // id they were recorded with.
  [[nodiscard]] std::vector<std::string> same_entries(EntryKind kind, std::string_view id) const;

  // Name for people; the id with spaces for underscores when unknown.
  [[nodiscard]] std::string display_name(EntryKind kind, std::string_view id) const;

  // All entries of a kind in id order.
  [[nodiscard]] const std::map<std::string, Entry, std::less<>>& entries(EntryKind kind) const;

  // 16 hex digits over every text as loaded; an index built under another one is out of date.
  [[nodiscard]] const std::string& fingerprint() const { return fingerprint_; }

 private:
  [[nodiscard]] static Result<Vocabulary> parse(const VocabularyFiles& shipped,
                                                const VocabularyFiles& own);

  std::map<EntryKind, std::map<std::string, Entry, std::less<>>> entries_;
  std::string fingerprint_;
};

// Path and text of every *.json of a shop's folder in name order; a missing folder has none.
[[nodiscard]] Result<VocabularyFiles> own_vocabulary_files(const std::filesystem::path& folder);

// The entry in the file form, one line. Requires: its texts are valid UTF-8.
[[nodiscard]] std::string entry_line(const Entry& entry);

}  // namespace shoplore
