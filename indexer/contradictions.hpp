// Which verdicts of a case its cause contradicts: only of these is it asked whether they proved
// right or misled (`later`).
//
// A pass is contradicted when the check tells about the main cause's component. A fail is when the
// check tells about components, but about none of the main, contributing and also found causes'.
// An unclear verdict says nothing, and a check that tells about no component cannot be
// contradicted. Whether a contradicted verdict was wrong is for people to say: a hose can be good
// at the time of the look and split later.
// Aliases are followed. Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

struct Contradiction {
  std::size_t position = 0;  // in Case::checks, from 0
  std::string check;         // id as recorded
  Verdict verdict = Verdict::kPass;
  std::optional<Later> later;  // what was already said of it
};

// In the order of the checks; none without a main cause.
[[nodiscard]] std::vector<Contradiction> contradictions(const Case& record,
                                                        const Vocabulary& vocabulary);

// Those of them of which nothing was said yet: what to ask when a case is closed.
[[nodiscard]] std::vector<Contradiction> unanswered_contradictions(const Case& record,
                                                                   const Vocabulary& vocabulary);

// Canonical ids of the components the check tells about; none for a check that is not known.
[[nodiscard]] std::vector<std::string> components_told_about(std::string_view check,
                                                             const Vocabulary& vocabulary);

}  // namespace shoplore
