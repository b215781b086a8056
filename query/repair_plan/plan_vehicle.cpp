#include "query/repair_plan/plan_vehicle.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

using Names = std::set<std::string>;  // in lower case

tl::unexpected<Error> refuse(std::string place, std::string why) {
  return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
}

struct KnownNames {
  Names makes, families;
};

Result<KnownNames> known_names(const CaseCounter& counter, const Vocabulary& vocabulary) {
  KnownNames known;
  for (const auto& [id, model] : vocabulary.entries(EntryKind::kVehicleModel)) {
    known.makes.insert(lower_case(model.make));
    for (const std::string& family : model.engine_families) {
      known.families.insert(lower_case(family));
    }
  }
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  for (const EvidenceItem& item : *items) {
    if (item.attribute == "make") known.makes.insert(item.value);
    if (item.attribute == "engine_family") known.families.insert(item.value);
  }
  return known;
}

Result<void> check_known(const std::string& place, const std::string& what, const std::string& name,
                         const Names& known) {
  if (name.empty() || known.contains(lower_case(name))) return {};
  return refuse(place, fmt::format("\"{}\" is not a known {}: no case here and no vehicle model of "
                                   "the vocabulary has it",
                                   name, what));
}

Result<Vehicle> vehicle_in(const std::string& words, const Recogniser& recogniser) {
  if (!is_utf8(words)) return refuse("vehicle", "is not valid UTF-8");
  const Recognised recognised = recogniser.recognise(words);
  if (!recognised.leftover.empty()) {
    const Span& left = recognised.leftover.front();
    return refuse("vehicle",
                  fmt::format("\"{}\" in \"{}\" is no make, model, engine family, year, mileage or "
                              "fuel known here",
                              words.substr(left.begin, left.end - left.begin), words));
  }
  Case record;
  add_recognised(record, recognised);
  const Vehicle& vehicle = record.vehicle;
  if (vehicle.make.empty() && vehicle.model.empty() && vehicle.engine_family.empty()) {
    return refuse("vehicle", fmt::format("\"{}\" names no make, model or engine family", words));
  }
  return vehicle;
}

bool names_another(const std::string& given, const std::string& known) {
  return !given.empty() && !known.empty() && lower_case(given) != lower_case(known);
}

// `over` where it says something, else `base`; a base of another make or family is another vehicle.
Vehicle laid_over(Vehicle base, const Vehicle& over) {
  if (names_another(over.make, base.make) ||
      names_another(over.engine_family, base.engine_family)) {
    return over;
  }
  if (!over.make.empty()) base.make = over.make;
  if (!over.model.empty()) base.model = over.model;
  if (!over.engine_family.empty()) base.engine_family = over.engine_family;
  if (over.model_year) base.model_year = over.model_year;
  if (over.fuel) base.fuel = over.fuel;
  if (over.mileage_km) base.mileage_km = over.mileage_km;
  return base;
}

}  // namespace

Result<Vehicle> plan_vehicle(const VehicleNaming& naming, const Vehicle& of_case,
                             const CaseCounter& counter, const Vocabulary& vocabulary,
                             const Recogniser& recogniser) {
  const auto known = known_names(counter, vocabulary);
  if (!known) return fail(known.error());
  const auto make = check_known("make", "make", naming.make, known->makes);
  if (!make) return fail(make.error());
  const auto family =
      check_known("engine_family", "engine family", naming.engine_family, known->families);
  if (!family) return fail(family.error());
  Vehicle vehicle = of_case;
  if (!naming.words.empty()) {
    const auto in_words = vehicle_in(naming.words, recogniser);
    if (!in_words) return fail(in_words.error());
    vehicle = laid_over(std::move(vehicle), *in_words);
  }
  Vehicle by_name;
  by_name.make = naming.make;
  by_name.engine_family = naming.engine_family;
  return laid_over(std::move(vehicle), by_name);
}

}  // namespace shoplore
