// The cautions that symptoms, checks done or proposed with what comes off for them, earlier repairs
// and likely causes call for; or those of any work, by what it has to do with.
//
// From the vocabulary alone: independent of any count, so they show when nothing matches too.
// Pure, any thread.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "query/answer.hpp"

namespace shoplore {

// Each caution once, with everything that needs it; what forbids to go on first (high voltage,
// brakes or steering in doubt, an engine not to be cranked, airbags, fire), then the most needed.
// What forbids to go on is also looked for in the words of `text`, by the caution's own phrases:
// danger must not wait for a finding to be understood.
[[nodiscard]] std::vector<Caution> cautions_for(std::string_view text,
                                                const std::vector<EvidenceItem>& items,
                                                const std::vector<LikelyCause>& causes,
                                                const CheckAdvice& next,
                                                const Vocabulary& vocabulary);

// A thing that work has to do with, as the vocabulary knows it.
struct Involved {
  EntryKind kind = EntryKind::kComponent;
  std::string id;
};

// Those that these call for, and the drive where it is electric or hybrid; in the same order.
[[nodiscard]] std::vector<Caution> cautions_of(const std::vector<Involved>& involved,
                                               std::optional<Fuel> fuel,
                                               const Vocabulary& vocabulary);

// Whether it forbids to go on.
[[nodiscard]] bool is_forbidding(const Caution& caution);

// Checks that must not be done with these findings: on the road where brakes or steering may have
// failed, with the engine cranked or running where that may break it.
[[nodiscard]] std::set<std::string> unsafe_checks(const std::vector<EvidenceItem>& items,
                                                  const std::vector<LikelyCause>& causes,
                                                  const Vocabulary& vocabulary);

}  // namespace shoplore
