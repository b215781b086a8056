// Text as a hurried person types it -> items of evidence, with where each stood and what was left.
//
// Recognises fault codes, mileage, model year, vehicle (make, model, engine family, fuel),
// symptoms and conditions by phrase, checks with a verdict, earlier repairs, work signs, and
// negation ("no whistle" is a symptom that is absent; "no start" is a symptom). It never guesses
// causes. What it cannot read it returns as leftover words rather than drop; read and dropped are
// a cylinder number and when an earlier repair was done.
// How each kind is read: scan_bytes.hpp, scan_report.hpp, code_reader.hpp, number_readers.hpp,
// vehicle_reader.hpp, repair_reader.hpp, finding_reader.hpp. Holds references into the vocabulary
// it was made from, which must outlive it; read-only after construction, any thread.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"
#include "indexer/word_suggestions.hpp"
#include "indexer/words_to_keep.hpp"

namespace shoplore {

// Half-open byte range in the text.
struct Span {
  std::size_t begin = 0, end = 0;
  friend bool operator==(const Span&, const Span&) = default;
};

enum class ItemKind {
  kCode,
  kMileage,
  kModelYear,
  kMake,
  kModel,
  kEngineFamily,
  kFuel,
  kSymptom,
  kCondition,
  kCheck,
  kReading,
  kEarlierRepair,
  kWorkSign,
  kScanned
};
template <>
inline constexpr EnumTable<ItemKind, 14> kEnumNames<ItemKind>{
    {{ItemKind::kCode, "code"},
     {ItemKind::kMileage, "mileage"},
     {ItemKind::kModelYear, "model_year"},
     {ItemKind::kMake, "make"},
     {ItemKind::kModel, "model"},
     {ItemKind::kEngineFamily, "engine_family"},
     {ItemKind::kFuel, "fuel"},
     {ItemKind::kSymptom, "symptom"},
     {ItemKind::kCondition, "condition"},
     {ItemKind::kCheck, "check"},
     {ItemKind::kReading, "reading"},
     {ItemKind::kEarlierRepair, "earlier_repair"},
     {ItemKind::kWorkSign, "work_sign"},
     {ItemKind::kScanned, "scanned"}}};  // id "no_codes": scanned, and no codes were there

struct RecognisedItem {
  ItemKind kind = ItemKind::kSymptom;
  std::string
      id;  // vocabulary id, code ("P0299"), or the value as text ("142000", "2016", "Tidal")
  Presence state = Presence::kPresent;
  std::optional<Verdict> verdict;        // kCheck
  std::optional<Code> code;              // kCode: status, module, failure type, where any was given
  std::optional<Reading> reading;        // kReading ("11.2 V"); kCheck when one was taken by it
  std::string unit;                      // of the reading, as the vocabulary spells it
  std::optional<HowOften> how_often;     // kSymptom
  std::optional<EarlierRepair> repair;   // kEarlierRepair; id is then "replace turbocharger"
  std::optional<int> months_ago;         // kEarlierRepair: when it was done
  std::optional<Kilometres> mileage_km;  // kMileage
  std::string
      reading_chosen;  // how an ambiguity was settled ("142k taken as kilometres"); may be empty
  Span span;
};

struct Recognised {
  std::vector<RecognisedItem> items;  // in text order
  std::vector<Span> leftover;         // words not understood, stop words apart
};

enum class DistanceUnit { kKilometres, kMiles };
template <>
inline constexpr EnumTable<DistanceUnit, 2> kEnumNames<DistanceUnit>{
    {{DistanceUnit::kKilometres, "km"}, {DistanceUnit::kMiles, "mi"}}};

class Recogniser {
 public:
  // default_unit is what a bare "180k" means in this shop.
  explicit Recogniser(const Vocabulary& vocabulary,
                      DistanceUnit default_unit = DistanceUnit::kKilometres);
  ~Recogniser();
  Recogniser(Recogniser&&) noexcept;

  // Requires: text is valid UTF-8. Linear in its length for ordinary notes.
  [[nodiscard]] Recognised recognise(std::string_view text) const;

  // Whether a phrase of the vocabulary has a word of this stem (text.hpp).
  [[nodiscard]] bool knows_stem(const std::string& stemmed) const;

  // The vocabulary's names, which identity removal leaves alone in a text to be recognised.
  [[nodiscard]] const WordsToKeep& names() const;

  // What may have been meant by leftover words. Made when first asked for.
  [[nodiscard]] const WordSuggester& suggester() const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

// Writes what was recognised into a record, keeping everything it already holds: a later word
// about the same symptom, check or vehicle field replaces the earlier one; one that says the same
// again changes nothing. Of a code named again the surer status, the later sighting, and module,
// failure type and freeze frame where there were none yet are kept; a bare mention adds nothing.
// Conditions go to the nearest symptom before them in the text, else the
// nearest after.
void add_recognised(Case& record, const Recognised& recognised);

}  // namespace shoplore
