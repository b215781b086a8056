// Notes as many hands wrote them, with what a careful reader takes from each, and how the
// recogniser's reading compares.
//
// Files in tests/indexer/notes/, one note a line:
//   {"hand":"...","note":"no misfire, P0299","items":[{"kind":"code","id":"P0299"},
//     {"kind":"symptom","id":"misfire","state":"absent"}]}
// An item may also carry verdict, reading, by, months_ago, how_often, status and module; a code
// its failure type ("P2463-00"). The notes were written from the names of the ids alone, before the
// recogniser was tuned; open_*.jsonl served for tuning, closed_*.jsonl were drawn at random and
// never looked at.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "indexer/recogniser.hpp"

namespace shoplore {

struct LabelledItem {
  std::string kind, id, state, verdict, by, reading, how_often, status, module, failure_type;
  int months_ago = -1;
};

struct LabelledNote {
  std::string hand, note;
  std::vector<LabelledItem> items;
};

// Every file whose name begins so, in name order.
[[nodiscard]] std::vector<LabelledNote> labelled_notes(const std::string& name_start);

struct Tally {
  int right = 0, extra = 0, missed = 0;
  [[nodiscard]] double precision() const;
  [[nodiscard]] double recall() const;
  void add(const Tally& other);
};

// A share of items read in both ways of which an attribute was read right too.
struct Agreement {
  int right = 0, of = 0;
  [[nodiscard]] double share() const { return of == 0 ? 1 : static_cast<double>(right) / of; }
};

struct Comparison {
  std::map<std::string, Tally> by_kind;
  // "negation": symptoms of which either side says absent; verdict, by, status and so on: items
  // whose label says it.
  std::map<std::string, Agreement> attributes;
  std::vector<std::string> differences;  // one line each, for tuning
  [[nodiscard]] Tally all() const;
};

// Items agree by kind and id; readings by number and unit.
[[nodiscard]] Comparison compare(const std::vector<LabelledNote>& notes,
                                 const Recogniser& recogniser);

[[nodiscard]] std::string table_of(const Comparison& comparison);

}  // namespace shoplore
