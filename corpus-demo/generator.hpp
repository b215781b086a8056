// The invented workshop's books over eight years: closed cases, comebacks, visits without
// complaint, and a few open, ended and enquiry ones. In some visits a vehicle has two faults: two
// cases of one day that share their visit's ref.
//
// The same settings give the same cases on every machine. Memory does not grow with the number
// of cases: a bounded pool of known vehicles and the comebacks still to come are all that is kept.
// Cases come out roughly by date; a comeback after the case it follows. Threads: one a call.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>

#include "corpus-demo/calendar.hpp"
#include "corpus-demo/world.hpp"
#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

struct DemoSettings {
  std::int64_t closed_cases = 2'400;
  std::uint64_t seed = 1;
};

// How the record came about.
enum class Hand { kOrdinary, kMessy, kShowcase };

// A case with the truth behind it; visits without complaint, enquiries and showcases have none.
struct DemoCase {
  Case record;
  std::optional<std::size_t> pattern;  // number in World::patterns
  Hand hand = Hand::kOrdinary;
};

// Exactly settings.closed_cases drawn closed cases, about three in ten others between them, and at
// the end the showcases (showcases.hpp), the same whatever the settings and not counted in them.
// Every drawn closed case's main cause is the true one.
void generate_workshop(const World& world, const Vocabulary& vocabulary,
                       const DemoSettings& settings,
                       const std::function<void(const DemoCase&)>& emit);

}  // namespace shoplore
