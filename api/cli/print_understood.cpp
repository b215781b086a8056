#include "api/cli/print_understood.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace shoplore {

namespace {

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  return fmt::format("{}", fmt::join(parts, between));
}

std::string last_id(const Recognised& recognised, ItemKind kind) {
  std::string id;
  for (const RecognisedItem& item : recognised.items) {
    if (item.kind == kind) id = item.id;
  }
  return id;
}

// "2016 Brackwater Tidal BW16D · diesel · 142,000 km" as far as the text said it.
std::vector<std::string> vehicle_parts(const Recognised& recognised) {
  std::vector<std::string> names;
  for (const ItemKind kind :
       {ItemKind::kModelYear, ItemKind::kMake, ItemKind::kModel, ItemKind::kEngineFamily}) {
    if (std::string id = last_id(recognised, kind); !id.empty()) names.push_back(std::move(id));
  }
  std::vector<std::string> parts;
  if (!names.empty()) parts.push_back(joined(names, " "));
  if (std::string fuel = last_id(recognised, ItemKind::kFuel); !fuel.empty()) {
    parts.push_back(std::move(fuel));
  }
  std::optional<Kilometres> mileage;
  for (const RecognisedItem& item : recognised.items) {
    if (item.mileage_km) mileage = item.mileage_km;
  }
  if (mileage) parts.push_back(thousands(mileage->value) + " km");
  return parts;
}

// Attributes that vehicle_parts() has said already, more exactly.
std::set<std::string> said_by_vehicle(const Recognised& recognised) {
  std::set<std::string> said;
  for (const RecognisedItem& item : recognised.items) {
    if (item.kind == ItemKind::kMake) said.insert("make");
    if (item.kind == ItemKind::kModel) said.insert("model");
    if (item.kind == ItemKind::kEngineFamily) said.insert("engine_family");
    if (item.kind == ItemKind::kFuel) said.insert("fuel");
    if (item.mileage_km) said.insert("mileage_band");
  }
  return said;
}

// Readings that no check took: "12.5 V (of what, is not said)".
std::vector<std::string> loose_readings(const Recognised& recognised) {
  std::vector<std::string> loose;
  for (const RecognisedItem& item : recognised.items) {
    if (item.kind != ItemKind::kReading) continue;
    const bool taken = std::any_of(
        recognised.items.begin(), recognised.items.end(), [&](const RecognisedItem& other) {
          return other.kind == ItemKind::kCheck && other.reading && other.unit == item.unit &&
                 other.reading->number == item.reading->number &&
                 other.reading->word == item.reading->word;
        });
    if (!taken) loose.push_back(item.id + " (not said of what)");
  }
  return loose;
}

std::string with_code_note(const EvidenceItem& item, const Vocabulary& vocabulary) {
  std::string text = display_item(item, vocabulary);
  if (item.attribute.rfind("code:", 0) != 0) return text;
  const Entry* note = vocabulary.find(EntryKind::kCodeNote, item.attribute.substr(5));
  return note == nullptr ? text : text + " (" + note->name + ")";
}

// " (did you mean: wobble at speed, wheel wobble?)", or nothing.
std::string did_you_mean(const std::string& word, const std::vector<WordSuggestions>& all) {
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const WordSuggestions& each) { return each.word == word; });
  if (found == all.end()) return "";
  std::vector<std::string> names;
  for (const Suggestion& suggestion : found->suggestions) names.push_back(suggestion.name);
  return " (did you mean: " + joined(names, ", ") + "?)";
}

}  // namespace

std::string print_understood(const Understood& understood, const Vocabulary& vocabulary,
                             const Page& page) {
  const Ink ink(page.colour);
  std::vector<std::string> first = vehicle_parts(understood.recognised);
  const auto said = said_by_vehicle(understood.recognised);
  std::vector<std::string> findings;
  for (const EvidenceItem& item : understood.evidence) {
    if (said.count(item.attribute) > 0) continue;
    const bool finding =
        item.attribute.find(':') != std::string::npos && item.attribute.rfind("code:", 0) != 0;
    auto& line = finding ? findings : first;
    line.push_back(with_code_note(item, vocabulary));
  }
  for (const RecognisedItem& item : understood.recognised.items) {
    if (item.kind == ItemKind::kScanned) first.emplace_back("no fault codes");
  }
  for (std::string& reading : loose_readings(understood.recognised)) {
    findings.push_back(std::move(reading));
  }
  std::string text = joined(first, " · ");
  if (!text.empty() && !findings.empty()) text += "\n";
  text += joined(findings, " · ");
  if (text.empty()) text = "nothing that counts as evidence";
  for (const RecognisedItem& item : understood.recognised.items) {
    if (!item.reading_chosen.empty()) text += "\n(" + item.reading_chosen + ")";
  }
  std::string out = hang("Understood  ", text, page.width);
  if (page.colour == Colour::kOn) out.replace(0, 10, ink.heading("Understood"));
  if (understood.not_understood.empty()) return out;
  std::vector<std::string> words;
  for (const std::string& word : understood.not_understood) {
    words.push_back("\"" + word + "\"" + did_you_mean(word, understood.suggestions));
  }
  return out + hang("Not understood  ", joined(words, ", "), page.width);
}

}  // namespace shoplore
