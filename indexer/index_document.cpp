#include "indexer/index_document.hpp"

#include <algorithm>
#include <array>
#include <cassert>

#include "indexer/case_keys.hpp"
#include "indexer/complaint_words.hpp"

namespace shoplore {
namespace {

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  while (true) {
    const auto end = text.find(separator, begin);
    parts.emplace_back(text.substr(begin, end - begin));
    if (end == std::string_view::npos) return parts;
    begin = end + 1;
  }
}

std::vector<std::string> terms_of(const Case& record, const Vocabulary& vocabulary) {
  std::vector<std::string> terms;
  for (const EvidenceItem& item : evidence_of(record, vocabulary)) terms.push_back(item_term(item));
  for (const EvidenceItem& item : hindsight_of(record, vocabulary))
    terms.push_back(item_term(item));
  for (const EvidenceItem& word : complaint_words(record.complaint)) {
    terms.push_back(item_term(word));
  }
  for (const std::string& group : known_in(record, vocabulary)) terms.push_back(known_term(group));
  terms.push_back(cause_term(cause_key(*record.cause, vocabulary)));
  terms.push_back(proof_term(record.cause->proof));
  std::sort(terms.begin(), terms.end());
  terms.erase(std::unique(terms.begin(), terms.end()), terms.end());
  return terms;
}

// Texts as written, then the vocabulary's words for what was recorded by id, so that a search
// finds a case whichever way it was entered.
std::vector<std::string> texts_of(const Case& record, const Vocabulary& vocabulary) {
  std::vector<std::string> texts{record.complaint, record.notes};
  for (const Check& check : record.checks) texts.push_back(check.note);
  for (const WorkSign& sign : record.work_signs) texts.push_back(sign.note);
  if (record.correction) {
    for (const std::string& trap : record.correction->traps) texts.push_back(trap);
    for (const Fix& fix : record.correction->fixes) {
      texts.push_back(vocabulary.display_name(EntryKind::kAction, fix.action));
      texts.push_back(vocabulary.display_name(EntryKind::kComponent, fix.component));
    }
  }
  for (const Symptom& symptom : record.symptoms) {
    if (symptom.state == Presence::kPresent) {
      texts.push_back(vocabulary.display_name(EntryKind::kSymptom, symptom.id));
    }
    for (const std::string& condition : symptom.when) {
      texts.push_back(vocabulary.display_name(EntryKind::kCondition, condition));
    }
  }
  for (const Code& code : record.codes) texts.push_back(code.code);
  texts.push_back(vocabulary.display_name(EntryKind::kComponent, record.cause->component));
  texts.push_back(vocabulary.display_name(EntryKind::kFailure, record.cause->failure));
  for (const std::string* name :
       {&record.vehicle.make, &record.vehicle.model, &record.vehicle.engine_family}) {
    texts.push_back(*name);
  }
  std::erase(texts, "");
  return texts;
}

std::optional<int> came_back_days(const Case& record) {
  const auto& outcome = record.outcome;
  if (!outcome || outcome->status != OutcomeStatus::kCameBack || !outcome->as_of) return {};
  if (*outcome->as_of < *record.closed) return {};
  return static_cast<int>((outcome->as_of->days - record.closed->days).count());
}

}  // namespace

std::string item_term(const EvidenceItem& item) {
  if (kind_of_attribute(item.attribute) == "word") {
    return std::string(kWordPrefix).append(id_of_attribute(item.attribute));
  }
  return std::string(kItemPrefix) + item.attribute + "=" + item.value;
}

EvidenceItem item_of_term(std::string_view term) {
  term.remove_prefix(kItemPrefix.size());
  const std::size_t sign = term.find('=');
  assert(sign != term.npos);
  return {std::string(term.substr(0, sign)), std::string(term.substr(sign + 1))};
}

std::string known_term(std::string_view group) {
  return std::string(kKnownPrefix).append(group);
}

std::string cause_term(std::string_view key) {
  return std::string(kCausePrefix).append(key);
}

std::string proof_term(Proof proof) {
  return std::string(kProofPrefix).append(name_of(proof));
}

std::string profile_text(const Profile& profile) {
  std::string text = profile.cause + "|" + std::string(name_of(profile.outcome)) + "|";
  for (std::size_t i = 0; i < profile.fixes.size(); ++i) {
    if (i > 0) text += '+';
    text += profile.fixes[i];
  }
  return text;
}

Profile profile_from_text(std::string_view text) {
  const auto parts = split(text, '|');
  Profile profile;
  profile.cause = parts.at(0);
  profile.outcome = enum_from_name<OutcomeStatus>(parts.at(1)).value_or(OutcomeStatus::kUnknown);
  if (!parts.at(2).empty()) profile.fixes = split(parts[2], '+');
  return profile;
}

IndexDocument index_document(CaseId id, const Case& record, const Vocabulary& vocabulary) {
  IndexDocument document;
  document.terms = terms_of(record, vocabulary);
  document.texts = texts_of(record, vocabulary);
  document.profile = {cause_key(*record.cause, vocabulary),
                      record.outcome ? record.outcome->status : OutcomeStatus::kUnknown,
                      fix_keys(record, vocabulary)};
  document.vehicle =
      record.vehicle.token.empty() ? "case:" + std::to_string(id.value) : record.vehicle.token;
  document.closed = *record.closed;
  document.mileage = record.vehicle.mileage_km;
  document.model_year = record.vehicle.model_year;
  document.came_back_days = came_back_days(record);
  return document;
}

}  // namespace shoplore
