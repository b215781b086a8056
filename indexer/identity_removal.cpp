#include "indexer/identity_removal.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "indexer/json_limits.hpp"
#include "indexer/vin.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kReferenceHashDigits = 12;

// At most `bytes`, never cutting a character in two.
void shorten(std::string& text, std::size_t bytes) {
  if (text.size() <= bytes) return;
  while (bytes > 0 && (static_cast<unsigned char>(text[bytes]) & 0xC0U) == 0x80U) --bytes;
  text.resize(bytes);
}

bool is_token(std::string_view text) {
  return text.size() == 32 && text.find_first_not_of("0123456789abcdef") == text.npos;
}

// Walks every string of a case. What a new field of the record needs is one line here; the test
// plants an identity in every string of a full case and fails when that line is missing.
class Cleaner {
 public:
  Cleaner(const Identity& identity, const IdentityKey& key, const WordsToKeep& keep)
      : identity_(identity), key_(key), keep_(keep) {}

  void clean(Case& record) const {
    for (std::string* reference : {&record.ref, &record.follows}) this->reference(*reference);
    if (record.visit) reference(record.visit->ref);
    if (has_mention(record.job_number, TextKind::kReference)) record.job_number = kRemoved;
    clean_vehicle(record.vehicle);
    text(record.complaint);
    text(record.notes);
    clean_facts(record.facts);
    clean_findings(record);
    for (Declined& declined : record.declined) text(declined.work);
    clean_work(record);
  }

 private:
  [[nodiscard]] bool has_mention(const std::string& value, TextKind kind) const {
    return !find_mentions(value, identity_, keep_, kind).empty();
  }

  void text(std::string& value) const {
    value = remove_identities_from_text(value, identity_, keep_);
    shorten(value, kMaxTextBytes);
  }

  // Ids, names and units: what the vocabulary knows names nobody.
  void name(std::string& value) const {
    if (value.empty() || keep_.has_entry(value)) return;
    value = remove_identities_from_text(value, identity_, keep_);
    shorten(value, kMaxNameBytes);
  }

  void names(std::vector<std::string>& values) const {
    for (std::string& value : values) name(value);
  }

  void reference(std::string& value) const {
    if (!has_mention(value, TextKind::kReference)) return;
    value = "removed-" + key_.token_of_reference(value).substr(0, kReferenceHashDigits);
  }

  void clean_vehicle(Vehicle& vehicle) const {
    for (std::string* field : {&vehicle.make, &vehicle.model, &vehicle.engine_family}) name(*field);
    if (!is_token(vehicle.token)) name(vehicle.token);
  }

  void clean_facts(std::map<std::string, std::string>& facts) const {
    std::map<std::string, std::string> cleaned;
    for (const auto& [fact, written] : facts) {
      std::string unique = fact, value = written;
      name(unique);
      name(value);
      for (int i = 2; cleaned.contains(unique); ++i) unique = fmt::format("{} {}", kRemoved, i);
      cleaned.emplace(std::move(unique), std::move(value));
    }
    facts = std::move(cleaned);
  }

  void clean_findings(Case& record) const {
    for (Symptom& symptom : record.symptoms) {
      name(symptom.id);
      names(symptom.when);
    }
    for (Code& code : record.codes) {
      for (std::string* field : {&code.code, &code.failure_type, &code.module}) name(*field);
      for (FreezeFrameValue& value : code.freeze_frame) {
        name(value.name);
        name(value.unit);
      }
    }
    for (Check& check : record.checks) {
      name(check.id);
      if (check.reading) name(check.reading->word);
      name(check.unit);
      name(check.where);
      names(check.conditions);
      text(check.note);
    }
    for (WorkSign& sign : record.work_signs) {
      name(sign.id);
      name(sign.component);
      text(sign.note);
    }
  }

  void clean_fix(Fix& fix) const {
    name(fix.action);
    name(fix.component);
  }

  void clean_cause(Cause& cause) const {
    name(cause.component);
    name(cause.failure);
  }

  void clean_work(Case& record) const {
    if (record.earlier_repairs) {
      for (EarlierRepair& repair : *record.earlier_repairs) clean_fix(repair.fix);
    }
    if (record.cause) clean_cause(*record.cause);
    for (Cause& cause : record.contributing) clean_cause(cause);
    for (Cause& cause : record.also_found) clean_cause(cause);
    for (Verification& verification : record.verification) name(verification.id);
    if (record.correction) clean_correction(*record.correction);
  }

  void clean_correction(Correction& correction) const {
    for (Fix& fix : correction.fixes) clean_fix(fix);
    for (Part& part : correction.parts) {
      name(part.part);
      name(part.brand);
    }
    name(correction.currency);
    names(correction.removals);
    for (std::string& trap : correction.traps) text(trap);
  }

  const Identity& identity_;
  const IdentityKey& key_;
  const WordsToKeep& keep_;
};

}  // namespace

std::string remove_identities_from_text(std::string_view text, const Identity& identity,
                                        const WordsToKeep& keep) {
  std::string cleaned;
  std::size_t at = 0;
  for (const Mention& mention : find_mentions(text, identity, keep)) {
    cleaned.append(text.substr(at, mention.begin - at)).append(kRemoved);
    at = mention.end;
  }
  return cleaned.append(text.substr(at));
}

std::string remove_identities_from_question(std::string_view text, const WordsToKeep& keep) {
  return remove_identities_from_text(text, Identity{}, keep);
}

namespace {

// How often something stands removed in these two texts.
std::size_t removals_in(std::string_view complaint, std::string_view notes) {
  std::size_t count = 0;
  for (const std::string_view text : {complaint, notes}) {
    for (auto at = text.find(kRemoved); at != text.npos; at = text.find(kRemoved, at + 1)) ++count;
  }
  return count;
}

}  // namespace

Result<CleanCase> remove_identities(Intake intake, const IdentityKey& key,
                                    const WordsToKeep& keep) {
  const Identity& identity = intake.identity;
  std::vector<std::string> warnings;
  std::string token;
  if (!identity.plate.empty()) {
    if (letters_and_digits(identity.plate).size() < 2) {
      return fail(ErrorCode::kInvalidInput, "/identity/plate",
                  "a plate has at least two letters or digits");
    }
    token = key.token_of_plate(identity.plate);
  }
  if (!identity.vin.empty()) {
    const auto vin = Vin::parse(identity.vin);
    if (!vin) return fail(ErrorCode::kInvalidInput, "/identity/vin", vin.error().message);
    if (vin->check_digit() == CheckDigit::kDoesNotFit) {
      warnings.emplace_back(
          "the VIN's check character does not fit: mistyped, or built for a market that uses none");
    }
    token = key.token_of_vin(vin->text());
  }
  if (!token.empty()) intake.record.vehicle.token = std::move(token);
  const std::size_t before = removals_in(intake.record.complaint, intake.record.notes);
  Cleaner(identity, key, keep).clean(intake.record);
  const std::size_t after = removals_in(intake.record.complaint, intake.record.notes);
  if (after > before) {
    // What was removed is gone for good: whoever typed a part number must see it now.
    warnings.push_back("removed from complaint and notes as somebody's identity: " +
                       std::to_string(after - before) +
                       "; if a part number was meant, write \"part\" or \"serial\" before it");
  }
  return CleanCase(std::move(intake.record), std::move(warnings));
}

}  // namespace shoplore
