// All the ranking counts for one question, taken once: everything after is arithmetic on it.
//
// Per item how many cases of each cause hold it and know its attribute; per edge of the question's
// tree the joint counts; per item the cases that hold it. A case that is left out is taken away
// from every count by cause, but not from backgrounds, strengths and tree weights, which hardly
// move. Words are counted apart: by cause only. Threads and errors: the counter's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/ranking/findings_held.hpp"
#include "query/ranking/item_strengths.hpp"
#include "query/ranking/pair_weights.hpp"

namespace shoplore {

// A case to be left out of all counts: asking a closed case as if it were new.
struct LeftOut {
  CaseId id;
  CauseNumber cause = 0;
  std::vector<EvidenceItem> items;  // it stated
  std::vector<std::string> known;   // groups known in it
};

using CauseCounts = std::vector<double>;  // by CauseNumber

struct ItemCounts {
  EvidenceItem item;
  CauseCounts with, known;
  double background = 0;         // p_f
  double strength = 1;           // w_f
  std::vector<CaseCause> cases;  // that hold it, the left-out one too
};

// One edge of the tree: first and second are positions of items.
struct EdgeCounts {
  std::size_t first = 0, second = 0;
  CauseCounts both;                      // n_cfg
  CauseCounts first_where_second_known;  // d_c,g|f: cases with f where g's attribute is known
  CauseCounts second_where_first_known;  // d_c,f|g
};

struct QuestionCounts {
  CauseCounts seen;  // n_c
  std::vector<ItemCounts> items;
  std::vector<EdgeCounts> edges;  // of a maximum spanning tree over the items, in Prim's order
  // That some case holds: known is n_c, background N_f / N, both without the left-out case; no
  // cases.
  std::vector<ItemCounts> words;
  std::vector<EvidenceItem> never_seen;  // items no case holds: of them the records say nothing
  std::vector<double> scarcity;          // by CauseNumber (findings_held.hpp); 0 without findings
  std::optional<CaseId> left_out;
};

// What the ranking takes from the records besides the counts of one question.
struct RankingBasis {
  const CaseCounter& counter;
  const ItemStrengths& strengths;
  const FindingsHeld& findings;
  const PairWeights& pairs;
};

// Items repeat no attribute; words may be among them. With a filter the tree's weights are counted
// anew.
[[nodiscard]] Result<QuestionCounts> count_question(const std::vector<EvidenceItem>& items,
                                                    const Filter& filter, const RankingBasis& basis,
                                                    const std::optional<LeftOut>& left_out = {});

}  // namespace shoplore
