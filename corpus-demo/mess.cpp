#include "corpus-demo/mess.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "corpus-demo/hand.hpp"

namespace shoplore {
namespace {

constexpr double kKilometresAMile = 1.609344;

void leave_fields_out(Case& record, Random& random) {
  if (random.chance(0.5)) record.vehicle.model_year.reset();
  if (random.chance(0.4)) record.correction->hours.reset();
  if (random.chance(0.4)) record.verification.clear();
  if (random.chance(0.3)) record.source.reset();
  if (random.chance(0.3)) record.correction->cost_total.reset();
  if (random.chance(0.3)) record.correction->parts.clear();
}

void add_note(Case& record, const std::string& words) {
  record.notes += (record.notes.empty() ? "" : " ") + words;
}

// Whether or not there are any: else the gap itself would tell of codes.
void codes_into_text(Case& record) {
  std::string words;
  for (const Code& code : record.codes) words += (words.empty() ? "" : ", ") + code.code;
  change_case(words, Letters::kSmall);
  if (!words.empty()) add_note(record, "codes " + words);
  record.codes.clear();
  record.scanned.reset();
}

void mileage_in_miles(Case& record) {
  if (!record.vehicle.mileage_km) return;
  const double miles = static_cast<double>(record.vehicle.mileage_km->value) / kKilometresAMile;
  add_note(record, fmt::format("clock says {:.0f} thousand miles", std::round(miles / 1000)));
}

void complaint_into_notes(Case& record) {
  record.notes = record.complaint + (record.notes.empty() ? "" : ". ") + record.notes;
  record.complaint.clear();
}

}  // namespace

void spoil(Case& record, Random& random) {
  leave_fields_out(record, random);
  if (random.chance(0.5)) {
    change_case(record.vehicle.make, random.chance(0.5) ? Letters::kSmall : Letters::kCapitals);
  }
  if (random.chance(0.25)) mileage_in_miles(record);
  if (random.chance(kCodesInTextOnly)) codes_into_text(record);
  if (random.chance(0.3)) double_a_word(record.notes, random);
  if (random.chance(kComplaintInNotes)) complaint_into_notes(record);
  // Always something to see.
  record.complaint = " " + record.complaint + "   ";
}

}  // namespace shoplore
