// What the index holds of one closed case: the format, once, for writer and readers alike.
//
// No Xapian types here; index_writer.cpp turns a document into Xapian's, readers use the names
// below. The document id is the case id. Bump kIndexFormat when anything here changes: an index
// of another format is rebuilt from the records.
//
// | term            | meaning                                                        |
// |-----------------|----------------------------------------------------------------|
// | XI<attr>=<val>  | evidence item, or what hindsight adds (evidence_item.hpp)      |
// | XW<stem>        | word of the complaint, as a mention (complaint_words.hpp)      |
// | XK<group>       | attribute or group is known                                    |
// | XC<cause key>   | main cause                                                     |
// | XP<proof>       | how the cause was proved                                       |
// | (no prefix)     | stemmed word of the texts                                      |
//
// | slot | value (bytes)                                                             |
// |------|---------------------------------------------------------------------------|
// | 0    | profile: cause|outcome|fix+fix+...                                        |
// | 1    | vehicle: token, or case:<id>                                              |
// | 2    | cause|vehicle                                                             |
// | 3, 4 | day closed, mileage: sortable number                                      |
// | 5    | model year: sortable number                                               |
// | 6    | days from closing to the day it came back, if it did: sortable number     |
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/evidence_item.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

inline constexpr int kIndexFormat = 3;

inline constexpr unsigned kProfileSlot = 0, kVehicleSlot = 1, kCauseVehicleSlot = 2;
inline constexpr unsigned kClosedSlot = 3, kMileageSlot = 4, kModelYearSlot = 5;
inline constexpr unsigned kCameBackSlot = 6;

inline constexpr std::string_view kItemPrefix = "XI", kWordPrefix = "XW", kKnownPrefix = "XK",
                                  kCausePrefix = "XC", kProofPrefix = "XP";

// A word's has a prefix of its own, so that it is none of the items.
[[nodiscard]] std::string item_term(const EvidenceItem& item);
// Back again. Requires: a term that item_term made of another item than a word.
[[nodiscard]] EvidenceItem item_of_term(std::string_view term);
[[nodiscard]] std::string known_term(std::string_view group);
[[nodiscard]] std::string cause_term(std::string_view cause_key);
[[nodiscard]] std::string proof_term(Proof proof);

// Metadata keys of an index generation.
inline constexpr const char* kRevisionKey = "revision";
inline constexpr const char* kFormatKey = "format";
inline constexpr const char* kVocabularyKey = "vocabulary";
inline constexpr const char* kStoreKey = "store";

// How a counted case ended and what was done: the unit the counters count by.
struct Profile {
  std::string cause;  // cause key
  OutcomeStatus outcome = OutcomeStatus::kUnknown;
  std::vector<std::string> fixes;  // fix keys, sorted
  friend auto operator<=>(const Profile&, const Profile&) = default;
};
[[nodiscard]] std::string profile_text(const Profile& profile);

// Requires: text came from profile_text.
[[nodiscard]] Profile profile_from_text(std::string_view text);

struct IndexDocument {
  std::vector<std::string> terms;  // boolean terms, sorted, each once
  std::vector<std::string> texts;  // to be split into stemmed words
  Profile profile;
  std::string vehicle;
  Date closed;
  std::optional<Kilometres> mileage;
  std::optional<int> model_year;
  std::optional<int> came_back_days;  // 0 or more; known only where the day was written down
};

// Requires: the record is closed (it has a cause and a closing date).
[[nodiscard]] IndexDocument index_document(CaseId id, const Case& record,
                                           const Vocabulary& vocabulary);

}  // namespace shoplore
