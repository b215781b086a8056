#include "corpus-demo/case_closing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace shoplore {
namespace {

// Parts that are fitted by the set; all others one at a time.
struct SetOf {
  std::string_view component;
  double quantity = 1;
};
constexpr std::array<SetOf, 7> kSets{{{"spark_plug", 4},
                                      {"glow_plug", 4},
                                      {"tyre", 2},
                                      {"brake_disc", 2},
                                      {"coil_spring", 2},
                                      {"plug_well_seal", 4},
                                      {"gearbox_fluid", 7.5}}};  // litres

// Seen on the ramp and unrelated to the complaint.
constexpr std::array<CauseName, 8> kOftenFound{{{"brake_pad", "worn"},
                                                {"tyre", "worn"},
                                                {"drive_belt", "cracked"},
                                                {"bulb", "burnt"},
                                                {"wiper_blade", "worn"},
                                                {"cv_boot", "split"},
                                                {"exhaust_mount", "broken"},
                                                {"engine_oil", "degraded"}}};

double tenths(double hours) {
  return std::round(hours * 10) / 10;
}

Proof draw_proof(Random& random) {
  const double kind = random.uniform();
  return kind < 0.42   ? Proof::kSeen
         : kind < 0.62 ? Proof::kMeasured
         : kind < 0.88 ? Proof::kCuredByFix
                       : Proof::kPresumed;
}

PartGrade draw_grade(Random& random) {
  const double kind = random.uniform();
  return kind < 0.34   ? PartGrade::kMaker
         : kind < 0.88 ? PartGrade::kEquivalent
         : kind < 0.93 ? PartGrade::kUsed
         : kind < 0.98 ? PartGrade::kRebuilt
                       : PartGrade::kCustomers;
}

bool needs_part(const FixName& fix) {
  return fix.action == "replace" || fix.action == "change_fluid" || fix.action == "top_up";
}

Part draw_part(const FixName& fix, double cost, const Vocabulary& vocabulary, Random& random) {
  Part part;
  part.part = vocabulary.display_name(EntryKind::kComponent, fix.component);
  for (const SetOf& set : kSets) {
    if (set.component == fix.component) part.quantity = set.quantity;
  }
  part.grade = draw_grade(random);
  const double factor = part.grade == PartGrade::kMaker ? 1.25 : random.between(0.85, 1.1);
  if (part.grade != PartGrade::kCustomers) part.cost = std::round(cost * factor);
  return part;
}

void write_parts(Correction& done, const FixPlan& plan, const Vocabulary& vocabulary,
                 Random& random) {
  const auto count = std::count_if(plan.fixes.begin(), plan.fixes.end(), needs_part);
  for (const FixName& fix : plan.fixes) {
    done.fixes.push_back({std::string(fix.action), std::string(fix.component)});
    if (!needs_part(fix)) continue;
    done.parts.push_back(
        draw_part(fix, plan.cost / static_cast<double>(count), vocabulary, random));
  }
}

Correction draw_correction(const FailurePattern& pattern, const FixPlan& plan,
                           const Vocabulary& vocabulary, Random& random) {
  Correction done;
  write_parts(done, plan, vocabulary, random);
  const double clocked = std::max(0.3, tenths(plan.hours * random.between(0.7, 1.5)));
  done.hours = Hours{tenths(random.between(0.2, 1.6)), clocked, tenths(plan.hours)};
  double parts = done.parts.empty() ? plan.cost : 0;  // small stuff that is no part
  for (const Part& part : done.parts) parts += part.cost.value_or(0);
  done.cost_total = std::round(parts + kLabourAnHour * plan.hours);
  done.currency = "EUR";
  for (const std::string_view removal : pattern.removals) done.removals.emplace_back(removal);
  if (!pattern.traps.empty() && random.chance(0.3)) {
    done.traps.emplace_back(random.one_of(pattern.traps));
  }
  return done;
}

std::vector<Verification> draw_verification(const FailurePattern& pattern, Random& random) {
  std::vector<Verification> done;
  const auto add = [&](std::string_view id, double often) {
    const bool known =
        std::any_of(done.begin(), done.end(), [&](const auto& each) { return each.id == id; });
    if (!random.chance(often) || known) return;
    const double how = random.uniform();
    const bool caught = how < kProofCatches;
    const bool unclear = !caught && how < kProofCatches + kProofUnclear;
    if (caught) done.push_back({std::string(id), Verdict::kFail});
    done.push_back({std::string(id), unclear ? Verdict::kUnclear : Verdict::kPass});
  };
  add("road_test", 0.7);
  for (const std::string_view id : pattern.verification) add(id, 0.5);
  if (!pattern.codes.empty()) add("rescan_after_drive", 0.35);
  return done;
}

Cause named(const CauseName& cause, Random& random) {
  return {std::string(cause.component), std::string(cause.failure), draw_proof(random)};
}

void write_other_causes(Case& record, const FailurePattern& pattern, Random& random) {
  if (!pattern.contributing.empty() && random.chance(kContributing)) {
    record.contributing.push_back(named(random.one_of(pattern.contributing), random));
  }
  if (!random.chance(kAlsoFound)) return;
  const auto pick = random.integer(0, static_cast<std::int64_t>(kOftenFound.size()) - 1);
  const CauseName& found = kOftenFound[static_cast<std::size_t>(pick)];
  // An electric vehicle has neither exhaust nor engine oil.
  const bool no_engine = record.vehicle.fuel == Fuel::kElectric || !record.vehicle.fuel;
  if (no_engine && pick >= 6) return;
  if (found.component != pattern.component) record.also_found.push_back(named(found, random));
}

}  // namespace

void write_closing(Case& record, const FailurePattern& pattern, const FixPlan& plan,
                   const Vocabulary& vocabulary, Random& random) {
  record.cause = named({pattern.component, pattern.failure}, random);
  record.correction = draw_correction(pattern, plan, vocabulary, random);
  record.verification = draw_verification(pattern, random);
  write_other_causes(record, pattern, random);
  if (random.chance(kDeclinedShare)) {
    record.declined.push_back(draw_declined(*record.closed, random));
  }
}

Declined draw_declined(Date day, Random& random) {
  struct Offer {
    std::string_view work;
    YesNo safety = YesNo::kNo;
  };
  static const std::vector<Offer> offers{{"front tyres, down to two millimetres", YesNo::kYes},
                                         {"rear discs and pads, rust edge", YesNo::kYes},
                                         {"brake fluid, three percent water", YesNo::kYes},
                                         {"lower ball joint, a little play", YesNo::kYes},
                                         {"wiper blades", YesNo::kNo},
                                         {"drive belt, fine cracks", YesNo::kNo},
                                         {"cabin filter, black", YesNo::kNo},
                                         {"underbody wax before the winter", YesNo::kNo}};
  const Offer& offer = random.one_of(offers);
  Declined declined{std::string(offer.work), offer.safety, {}};
  if (offer.safety == YesNo::kYes) declined.warned_on = day;
  return declined;
}

}  // namespace shoplore
