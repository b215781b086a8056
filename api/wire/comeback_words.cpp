#include "api/wire/comeback_words.hpp"

#include <fmt/format.h>

#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

// "96 days", "1 day".
std::string days_words(std::chrono::days days) {
  return fmt::format("{} {}", days.count(), days.count() == 1 ? "day" : "days");
}

// What the command line and a request both need to say.
std::string names_joined(const std::vector<ComebackReason>& reasons, std::string_view between) {
  std::string text;
  for (const ComebackReason reason : reasons) {
    if (!text.empty()) text += between;
    text += name_of(reason);
  }
  return text;
}

}  // namespace

std::string comeback_words(const ComebackOffer& offer, const Vocabulary& vocabulary) {
  std::string text = offer.ref + ", " + days_words(offer.since);
  if (offer.km_since) text += " and " + thousands(offer.km_since->value) + " km";
  text += " before: " + display_fixes(offer.fixes, vocabulary);
  text += " (" + display_cause_key(offer.cause, vocabulary) + ")";
  std::vector<std::string> shared;
  for (const std::string& id : offer.shared.symptoms) {
    shared.push_back(vocabulary.display_name(EntryKind::kSymptom, id));
  }
  shared.insert(shared.end(), offer.shared.codes.begin(), offer.shared.codes.end());
  if (shared.empty()) return text + "; of the same cause";
  return text + fmt::format("; both with {}", fmt::join(shared, ", "));
}

std::string comeback_command(const ComebackOffer& offer, const std::string& ref) {
  return fmt::format("shoplore outcomes {} came_back --of {} --reason {}", offer.ref, ref,
                     names_joined(offer.possible, "|"));
}

std::string comeback_request(const ComebackOffer& offer, const std::string& ref) {
  return fmt::format(
      R"(POST /v1/cases/{}/outcome {{"status":"came_back","of":"{}","reason":"{}"}})", offer.ref,
      ref, names_joined(offer.possible, "|"));
}

}  // namespace shoplore
