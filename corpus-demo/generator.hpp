// The invented workshop's books over eight years: closed cases, comebacks, visits without
// complaint, and a few open, ended and enquiry ones.
//
// The same settings give the same cases on every machine. Memory does not grow with the number
// of cases: a bounded pool of known vehicles and the comebacks still to come are all that is kept.
// Cases come out roughly by date; a comeback after the case it follows. Threads: one a call.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>

#include "corpus-demo/patterns.hpp"
#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

struct DemoSettings {
  std::int64_t closed_cases = 2'400;
  std::uint64_t seed = 1;
};

// First and last day on which a case is opened, both included.
inline constexpr Date kFirstDay{std::chrono::sys_days{std::chrono::year{2018} / 11 / 1}};
inline constexpr Date kLastDay{std::chrono::sys_days{std::chrono::year{2026} / 10 / 31}};

// A case with the truth behind it; visits without complaint and enquiries have none.
struct DemoCase {
  Case record;
  std::optional<std::size_t> pattern;  // number in World::patterns
};

// Exactly settings.closed_cases closed cases, and about three in ten others between them. Every
// closed case's main cause is the true one.
void generate_workshop(const World& world, const Vocabulary& vocabulary,
                       const DemoSettings& settings,
                       const std::function<void(const DemoCase&)>& emit);

}  // namespace shoplore
