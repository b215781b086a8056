#include "indexer/vehicle_reader.hpp"

#include <algorithm>

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestName = 3;  // words

bool has(const NotePage& page, ItemKind kind) {
  return std::any_of(page.items().begin(), page.items().end(),
                     [&](const RecognisedItem& item) { return item.kind == kind; });
}

bool is_capital(char c) {
  return c >= 'A' && c <= 'Z';
}

// Whether the word at `at` says what the vehicle runs on, not what smells, leaks or has failed.
bool is_vehicle_fuel(const NotePage& page, std::size_t at) {
  const bool before =
      page.same_clause(at, at - 1) && (page.word(at - 1) == "of" || page.word(at - 1) == "exhaust");
  const bool after = page.same_clause(at, at + 1) && takes_fuel_word(page.word(at + 1));
  return !before && !after;
}

// "electric van", "gas vehicle"
bool is_before_vehicle(const NotePage& page, std::size_t at) {
  if (!page.same_clause(at, at + 1)) return false;
  const std::string& next = page.word(at + 1);
  return next == "van" || next == "car" || next == "vehicle" || next == "truck" || next == "taxi" ||
         next == "minibus" || next == "pickup";
}

// "ev time", "ev single morning": every.
bool is_every(const NotePage& page, std::size_t at) {
  if (!page.same_clause(at, at + 1)) return false;
  const std::string& next = page.word(at + 1);
  for (const char* word : {"time", "times", "single", "day", "morning", "night", "start", "week",
                           "few", "bump", "bend", "one", "other"}) {
    if (next == word) return true;
  }
  return false;
}

// What a workshop calls a fuel, where the fuel's own name says something else: a bare "gas" is
// mostly what somebody steps on.
std::optional<Fuel> fuel_of(const NotePage& page, std::size_t at) {
  std::string_view word = page.word(at);
  if (word == "gas") return is_before_vehicle(page, at) ? std::optional(Fuel::kGas) : std::nullopt;
  if (word.ends_with("'s")) word.remove_suffix(2);  // "the hybrid's battery"
  if (word == "lpg" || word == "cng") return Fuel::kGas;
  if (word == "ev" && is_every(page, at)) return std::nullopt;
  if (word == "ev" || word == "bev") return Fuel::kElectric;
  if (word == "phev" || word == "hev") return Fuel::kHybrid;
  return enum_from_name<Fuel>(word);
}

void read_fuels(NotePage& page) {
  // "petrol smell" as a symptom's phrase is not the vehicle's fuel; "electric van will not charge"
  // is.
  std::vector<char> in_phrase(page.size(), 0);
  for (const PhraseMatch& match :
       page.matches({EntryKind::kSymptom, EntryKind::kCheck, EntryKind::kComponent})) {
    for (std::size_t i = match.first; i < match.last; ++i) in_phrase[i] = 1;
  }
  for (std::size_t i = 0; i < page.size(); ++i) {
    const auto fuel = fuel_of(page, i);
    const bool is_free = !page.is_claimed(i) && (in_phrase[i] == 0 || is_before_vehicle(page, i));
    if (!fuel || !is_free || !is_vehicle_fuel(page, i) || has(page, ItemKind::kFuel)) continue;
    page.take(
        recognised_item(ItemKind::kFuel, std::string(name_of(*fuel)), page.span_of({i, i + 1})));
  }
}

}  // namespace

VehicleReader::VehicleReader(const Vocabulary& vocabulary) {
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kVehicleModel)) {
    if (!entry.retired.empty()) continue;
    add(ItemKind::kMake, entry.make, "");
    add(ItemKind::kModel, entry.name, entry.make);
    for (const std::string& family : entry.engine_families) {
      add(ItemKind::kEngineFamily, family, "");
    }
  }
}

void VehicleReader::add(ItemKind kind, const std::string& name, const std::string& make) {
  std::vector<std::string> key;
  for (const Word& word : words_of(name)) {
    key.push_back(word.text);
    words_.insert(word.text);
  }
  if (key.empty()) return;
  Naming& naming = namings_.try_emplace(std::move(key), Naming{kind, name, {}}).first->second;
  if (!make.empty()) naming.makes.insert(lower_case(make));
}

void VehicleReader::read(NotePage& page) const {
  // Makes come first: a model named like a word is surer when its make is there.
  for (std::size_t i = 0; i < page.size(); ++i) read_at(page, i);
  read_fuels(page);
}

void VehicleReader::read_at(NotePage& page, std::size_t at) const {
  for (std::size_t n = std::min(kLongestName, page.size() - at); n > 0; --n) {
    std::vector<std::string> key;
    for (std::size_t k = 0; k < n && page.same_clause(at, at + k); ++k) {
      if (!page.is_claimed(at + k)) key.push_back(page.word(at + k));
    }
    const auto found = key.size() == n ? namings_.find(key) : namings_.end();
    if (found == namings_.end() || !is_sure(page, at, found->second)) continue;
    const Naming& naming = found->second;
    const bool other = has(page, naming.kind) &&
                       std::none_of(page.items().begin(), page.items().end(), [&](const auto& i) {
                         return i.kind == naming.kind && i.id == naming.id;
                       });
    if (other) continue;
    if (has(page, naming.kind)) return page.claim({at, at + n});
    return page.take(recognised_item(naming.kind, naming.id, page.span_of({at, at + n})));
  }
}

bool VehicleReader::is_sure(const NotePage& page, std::size_t at, const Naming& naming) const {
  if (naming.kind != ItemKind::kModel || at == 0 || is_capital(page.text()[page.token(at).begin])) {
    return true;
  }
  // "on the byre", "electric dray"
  if (page.same_clause(at - 1, at) && introduces_vehicle(page.word(at - 1))) return true;
  return std::any_of(page.items().begin(), page.items().end(), [&](const RecognisedItem& item) {
    return item.kind == ItemKind::kMake && naming.makes.contains(lower_case(item.id));
  });
}

}  // namespace shoplore
