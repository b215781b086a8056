// Readers take turns on one page, the surest first, each claiming the words it read: raw bytes,
// scan report, codes, mileage, year, vehicle, earlier repairs, checks with a verdict, then
// symptoms, conditions and work signs. What nobody claimed is left over.
#include "indexer/recogniser.hpp"

#include <mutex>
#include <optional>

#include "indexer/bare_parts.hpp"
#include "indexer/check_reader.hpp"
#include "indexer/code_reader.hpp"
#include "indexer/finding_reader.hpp"
#include "indexer/note_page.hpp"
#include "indexer/note_words.hpp"
#include "indexer/number_readers.hpp"
#include "indexer/other_subjects.hpp"
#include "indexer/reading_reader.hpp"
#include "indexer/repair_reader.hpp"
#include "indexer/scan_bytes_reader.hpp"
#include "indexer/scan_report.hpp"
#include "indexer/topic_remarks.hpp"
#include "indexer/vehicle_reader.hpp"
#include "indexer/vocabulary_words.hpp"

namespace shoplore {

struct Recogniser::Impl {
  const Vocabulary& vocabulary;
  DistanceUnit default_unit;
  PhraseMatcher matcher;
  CarriedPhrases carried;
  ConditionedPhrases conditioned;
  VehicleReader vehicle;
  BareParts bare_parts;
  CheckReader checks;
  TellingWords symptoms;
  OtherSubjects subjects;
  WordsToKeep names;
  mutable std::once_flag suggester_made;
  mutable std::optional<WordSuggester> suggester;

  Impl(const Vocabulary& words, DistanceUnit unit)
      : vocabulary(words),
        default_unit(unit),
        matcher(words),
        carried(words, matcher),
        conditioned(matcher),
        vehicle(words),
        bare_parts(words),
        checks(words, bare_parts),
        symptoms(words, EntryKind::kSymptom),
        subjects(words),
        names(vocabulary_words(words)) {}
};

Recogniser::Recogniser(const Vocabulary& vocabulary, DistanceUnit default_unit)
    : impl_(std::make_unique<Impl>(vocabulary, default_unit)) {}
Recogniser::~Recogniser() = default;
Recogniser::Recogniser(Recogniser&&) noexcept = default;

bool Recogniser::knows_stem(const std::string& stemmed) const {
  return impl_->matcher.knows_stem(stemmed);
}

const WordsToKeep& Recogniser::names() const {
  return impl_->names;
}

const WordSuggester& Recogniser::suggester() const {
  std::call_once(impl_->suggester_made, [this] { impl_->suggester.emplace(impl_->vocabulary); });
  return *impl_->suggester;
}

Recognised Recogniser::recognise(std::string_view text) const {
  NotePage page(impl_->matcher, impl_->carried, text, impl_->vehicle.words());
  read_scan_bytes(page);
  read_scan_report(page);
  read_codes(page);
  const std::string unread = page.unread_text();
  for (RecognisedItem& item : read_mileages(unread, impl_->default_unit)) {
    page.take(std::move(item));
  }
  for (RecognisedItem& item : read_model_years(unread)) page.take(std::move(item));
  for (RecognisedItem& item : read_readings(unread)) page.take(std::move(item));
  impl_->vehicle.read(page);
  read_earlier_repairs(page, impl_->vocabulary, impl_->bare_parts);
  impl_->checks.read(page);
  read_findings(page, impl_->vocabulary, {impl_->symptoms, impl_->conditioned, impl_->subjects});
  impl_->checks.read_carried(page);
  read_topic_remarks(page, impl_->vocabulary);
  drop_conditions_of_checks(page);
  return page.finish();
}

}  // namespace shoplore
