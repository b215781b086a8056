// The invented world as it is written down: what it must hold, before anything is drawn from it.
#include "corpus-demo/world.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>
#include <string>

#include "indexer/fault_code.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {
namespace {

const World& world() {
  static const World made = demo_world();
  return made;
}

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

const FailurePattern* pattern_named(std::string_view id) {
  const auto found = std::find_if(world().patterns.begin(), world().patterns.end(),
                                  [&](const FailurePattern& pattern) { return pattern.id == id; });
  return found == world().patterns.end() ? nullptr : &*found;
}

void expect_known(EntryKind kind, std::string_view id, std::string_view where) {
  EXPECT_NE(vocabulary().find(kind, id), nullptr) << where << ": " << name_of(kind) << " " << id;
}

void expect_known(EntryKind kind, const std::vector<EvidenceRate>& rates, std::string_view where) {
  for (const EvidenceRate& rate : rates) expect_known(kind, rate.id, where);
}

void expect_known(const FixName& fix, std::string_view where) {
  expect_known(EntryKind::kAction, fix.action, where);
  expect_known(EntryKind::kComponent, fix.component, where);
}

void expect_known(const CauseName& cause, std::string_view where) {
  expect_known(EntryKind::kComponent, cause.component, where);
  expect_known(EntryKind::kFailure, cause.failure, where);
}

TEST(Patterns, AtLeastFortyOverAllSystems) {
  std::map<System, int> systems;
  for (const FailurePattern& pattern : world().patterns) ++systems[pattern.system];
  EXPECT_GE(world().patterns.size(), 40u);
  for (const auto& [system, name] : kEnumNames<System>) EXPECT_GE(systems[system], 2) << name;
}

TEST(Patterns, IdsAndCausesAreUnique) {
  std::set<std::string> ids, causes;
  for (const FailurePattern& pattern : world().patterns) {
    EXPECT_TRUE(ids.emplace(pattern.id).second) << pattern.id;
    EXPECT_TRUE(causes.insert(std::string(pattern.component) + std::string(pattern.failure)).second)
        << pattern.id;
  }
}

// What every workshop of that kind sees; the list of the design.
TEST(Patterns, HoldTheFailuresEveryWorkshopKnows) {
  for (const char* id :
       {"wastegate_linkage_seized_open", "turbocharger_vanes_sticking", "charge_air_hose_split",
        "plug_well_seal_leaking", "abs_tone_ring_corroded", "egr_passage_blocked",
        "thermostat_stuck_open", "purge_valve_stuck_open", "filter_pressure_hose_split",
        "door_latch_switch_sticking", "wiring_connector_water", "steering_angle_not_calibrated",
        "alternator_pulley_locked", "gearbox_fluid_degraded", "blend_door_gear_broken",
        "wheel_bearing_worn", "glow_module_internal_fault", "earth_strap_high_resistance",
        "timing_chain_stretched"}) {
    EXPECT_NE(pattern_named(id), nullptr) << id;
  }
}

TEST(Patterns, EveryIdIsInTheVocabulary) {
  for (const FailurePattern& pattern : world().patterns) {
    expect_known(CauseName{pattern.component, pattern.failure}, pattern.id);
    expect_known(EntryKind::kSymptom, pattern.symptoms, pattern.id);
    expect_known(EntryKind::kCondition, pattern.conditions, pattern.id);
    expect_known(EntryKind::kCheck, pattern.checks, pattern.id);
    expect_known(EntryKind::kWorkSign, pattern.signs, pattern.id);
    for (const EarlierRate& earlier : pattern.earlier) expect_known(earlier.fix, pattern.id);
    for (const FixPlan& plan : pattern.plans) {
      for (const FixName& fix : plan.fixes) expect_known(fix, pattern.id);
    }
    for (const auto id : pattern.removals) expect_known(EntryKind::kRemoval, id, pattern.id);
    for (const auto id : pattern.verification) {
      expect_known(EntryKind::kVerification, id, pattern.id);
    }
    for (const CauseName& cause : pattern.contributing) expect_known(cause, pattern.id);
    for (const EvidenceRate& code : pattern.codes) {
      EXPECT_TRUE(parse_fault_code(code.id)) << pattern.id << " " << code.id;
    }
  }
}

// A rate that no habit asks for would never show.
TEST(Patterns, EverySymptomAndCheckHasItsHabit) {
  std::set<std::string_view> symptoms, checks;
  for (const SymptomHabit& habit : world().symptoms) EXPECT_TRUE(symptoms.insert(habit.id).second);
  for (const CheckHabit& habit : world().checks) EXPECT_TRUE(checks.insert(habit.id).second);
  for (const FailurePattern& pattern : world().patterns) {
    for (const EvidenceRate& rate : pattern.symptoms) {
      EXPECT_TRUE(symptoms.contains(rate.id)) << pattern.id << " " << rate.id;
    }
    for (const EvidenceRate& rate : pattern.checks) {
      EXPECT_TRUE(checks.contains(rate.id)) << pattern.id << " " << rate.id;
    }
  }
}

// Each is confusable: it shares a symptom or code of some weight with another pattern.
TEST(Patterns, MostShareASymptomOrCodeWithAnother) {
  std::map<std::string_view, int> holders;
  const auto telling = [](const FailurePattern& pattern) {
    std::set<std::string_view> ids;
    for (const EvidenceRate& rate : pattern.symptoms) ids.insert(rate.id);
    for (const EvidenceRate& rate : pattern.codes) ids.insert(rate.id);
    return ids;
  };
  for (const FailurePattern& pattern : world().patterns) {
    for (const auto id : telling(pattern)) ++holders[id];
  }
  for (const FailurePattern& pattern : world().patterns) {
    const auto ids = telling(pattern);
    EXPECT_TRUE(std::any_of(ids.begin(), ids.end(), [&](auto id) { return holders[id] > 1; }))
        << pattern.id;
  }
}

// Right three times in four at best, or wrong too often: checks that look surer than they are.
TEST(Patterns, SomeChecksMislead) {
  int pass_too_often = 0, fail_without_cause = 0;
  for (const FailurePattern& pattern : world().patterns) {
    for (const EvidenceRate& rate : pattern.checks) {
      const Entry* entry = vocabulary().find(EntryKind::kCheck, rate.id);
      ASSERT_NE(entry, nullptr) << rate.id;
      const bool tells =
          std::count(entry->components.begin(), entry->components.end(), pattern.component) > 0;
      pass_too_often += tells && rate.probability < 0.75 ? 1 : 0;
      fail_without_cause += !tells && rate.probability > 0.25 ? 1 : 0;
    }
  }
  EXPECT_GE(pass_too_often, 10);
  EXPECT_GE(fail_without_cause, 10);
}

TEST(Patterns, MostHaveARepairTriedInVain) {
  const auto in_vain = std::count_if(
      world().patterns.begin(), world().patterns.end(), [](const FailurePattern& pattern) {
        return std::any_of(pattern.earlier.begin(), pattern.earlier.end(),
                           [](const EarlierRate& rate) { return rate.probability >= 0.2; });
      });
  EXPECT_GE(in_vain, 35);
}

TEST(Patterns, AtLeastFortyEngineFamiliesOfFiveMakesAllOfThemKnown) {
  std::map<std::string, std::set<std::string>> models;  // of each family, by the vocabulary
  for (const auto& [id, entry] : vocabulary().entries(EntryKind::kVehicleModel)) {
    for (const std::string& family : entry.engine_families) {
      models[family].insert(entry.make + " " + entry.name);
    }
  }
  std::set<std::string_view> makes;
  for (const EngineFamily& family : world().families) {
    makes.insert(family.make);
    for (const auto model : family.models) {
      EXPECT_TRUE(models[std::string(family.id)].contains(std::string(family.make) + " " +
                                                          std::string(model)))
          << family.id << " " << model;
    }
  }
  EXPECT_GE(world().families.size(), 40u);
  EXPECT_EQ(makes.size(), 5u);
}

TEST(Patterns, EveryFamilyFailsSomewhereAndNoPatternNamesAnother) {
  std::set<std::string_view> named, families;
  for (const EngineFamily& family : world().families) families.insert(family.id);
  for (const FailurePattern& pattern : world().patterns) {
    for (const EvidenceRate& rate : pattern.families) named.insert(rate.id);
  }
  EXPECT_EQ(named, families);
}

TEST(Patterns, SharesOfFactsAddToOne) {
  for (const FailurePattern& pattern : world().patterns) {
    for (const FactRates& fact : world().facts) {
      const auto& values = fact_rates(world(), pattern, fact.name);
      ASSERT_EQ(values.size(), fact.values.size()) << pattern.id;
      double sum = 0;
      for (std::size_t i = 0; i < values.size(); ++i) {
        EXPECT_EQ(values[i].id, fact.values[i].id) << pattern.id;
        sum += values[i].probability;
      }
      EXPECT_NEAR(sum, 1, 1e-9) << pattern.id;
    }
  }
}

// Salt favours rust.
TEST(Patterns, WhatRustsRustsByTheSea) {
  for (const char* id : {"abs_tone_ring_corroded", "earth_strap_high_resistance",
                         "brake_pipe_corroded", "caliper_slide_seized"}) {
    ASSERT_NE(pattern_named(id), nullptr) << id;
    EXPECT_GT(fact_rates(world(), *pattern_named(id), "kept")[0].probability, 0.5) << id;
  }
}

// Exponential life (shape 1, scale 100): F(50) = 1 - exp(-0.5) = 0.393469, F(100) = 0.632121,
// F(330) = 0.963117; by hand.
TEST(Patterns, WeibullBandsAreTheDistributionCutOff) {
  const BandWeights bands = weibull_bands(1, 100);
  EXPECT_NEAR(bands[0], 0.393469 / 0.963117, 1e-5);
  EXPECT_NEAR(bands[1], (0.632121 - 0.393469) / 0.963117, 1e-5);
  EXPECT_NEAR(std::accumulate(bands.begin(), bands.end(), 0.0), 1, 1e-12);
}

TEST(Patterns, AVehiclesRatesAddToOneOverAllVehicles) {
  const FailurePattern& pattern = world().patterns.front();
  double sum = 0;
  for (std::size_t family = 0; family < world().families.size(); ++family) {
    for (std::size_t band = 0; band < pattern.mileage.size(); ++band) {
      for (std::size_t duty = 0; duty < world().facts[0].values.size(); ++duty) {
        for (std::size_t kept = 0; kept < world().facts[1].values.size(); ++kept) {
          sum += vehicle_rate(world(), pattern, family, band, {duty, kept});
        }
      }
    }
  }
  EXPECT_NEAR(sum, 1, 1e-9);
}

}  // namespace
}  // namespace shoplore
