// What goes together in a repair: fixes that were done beside one another, the parts they took, and
// which part was missed when it was left out.
//
// Left out is told by comparison: repairs in which one fix was done alone against those in which a
// second was done with it. Only where both were heard of at least kFewestToPlan times, the fix
// alone came back more often, and the 90 % Jeffreys intervals of the two shares do not overlap:
// that asks for more than a test at 10 % does (Schenker & Gentleman 2001, Amer. Statist. 55:182),
// which is meant, since many pairs are looked at. What was only ever done beside something
// told already (a gasket never changed without the seal) is not told: kFewestToPlan of the repairs
// with it must be without. Repairs nobody heard of afterwards count on neither side. These are
// plain counts of those heard of; how long repairs lasted is stayed_fixed.hpp's. Pure functions,
// any thread; nothing fails.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/outcomes/fix_lives.hpp"
#include "query/repair_plan/plan_cases.hpp"
#include "query/share.hpp"

namespace shoplore {

struct FixInCases {
  std::string fix;  // fix key
  std::uint32_t cases = 0;
};

// One fix and what was done beside it.
struct FixCompany {
  std::string fix;
  std::uint32_t cases = 0;         // in which it was done
  std::vector<FixInCases> beside;  // most cases first, then by key
};
// Of each of these fixes, in their order.
[[nodiscard]] std::vector<FixCompany> fixes_beside(std::span<const PlanCase> cases,
                                                   const std::vector<std::string>& fixes);

struct PartUsed {
  std::string name;           // the component's where the vocabulary knows it, else as written most
  std::string component;      // its id; empty where unknown
  std::uint32_t cases = 0;    // that took it
  double usual_quantity = 1;  // the one most of them took; of equals the smaller
};

struct PartsUsed {
  std::uint32_t out_of = 0;     // cases in which parts were written down
  std::vector<PartUsed> parts;  // most cases first, then by name
};
// Names are compared without regard to case and spaces; a component's phrases are one part. A part
// named twice in a case counts once, its quantities added.
[[nodiscard]] PartsUsed parts_used(std::span<const PlanCase* const> cases,
                                   const Vocabulary& vocabulary);

struct MissedPart {
  std::string fix, missed;  // fix keys
  Share alone;              // came back, of those with `fix` and nothing else
  Share together;           // came back, of those with both, whatever else was done
};
// By fix; of one fix, what was done beside it most often first. Requires: lives of one cause.
[[nodiscard]] std::vector<MissedPart> missed_when_left_out(std::span<const FixLife> lives);

}  // namespace shoplore
