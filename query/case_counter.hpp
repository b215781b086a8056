// How many cases, and how many vehicles, under this evidence, by cause, outcome and fixes.
//
// One interface, two implementations that must agree exactly: the ledger (bitmaps in memory, the
// fast one) and the index counter (Xapian, the same over its remote back end). Counts only
// closed cases as of one revision.
// Lifetime: a counter refers to the CauseTable it counts by. Threads: see each implementation.
#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/evidence_item.hpp"
#include "indexer/index_document.hpp"
#include "indexer/result.hpp"

namespace shoplore {

// Dense number of a cause within one snapshot: an index into per-cause vectors.
using CauseNumber = std::uint32_t;

// Cause keys of one snapshot, numbered from 0 in the order first met.
class CauseTable {
 public:
  // The number of the key, new if need be.
  CauseNumber number(std::string_view key);
  [[nodiscard]] std::optional<CauseNumber> find(std::string_view key) const;
  [[nodiscard]] const std::string& key(CauseNumber number) const { return keys_[number]; }
  [[nodiscard]] std::size_t size() const { return keys_.size(); }

 private:
  std::vector<std::string> keys_;
  std::unordered_map<std::string, CauseNumber> numbers_;
};

// Half open: low <= x < high; a missing end is open. A case without the value is outside.
template <class T>
struct Band {
  std::optional<T> low, high;
  [[nodiscard]] bool is_open() const { return !low && !high; }
};

// Restricts what is counted at all, as opposed to evidence, which is weighed. Empty: everything.
struct Filter {
  std::string make, engine_family;  // compared in lower case
  Band<Kilometres> mileage;
  Band<int> model_year;
  std::optional<Date> closed_since;  // that day included
  std::set<Proof> proofs;            // any of these; empty means all
  [[nodiscard]] bool is_open() const {
    return make.empty() && engine_family.empty() && mileage.is_open() && model_year.is_open() &&
           !closed_since && proofs.empty();
  }
};

struct CountQuestion {
  std::vector<EvidenceItem> all_of;  // every item must hold; a group's "absent" is allowed
  Filter filter;
  std::vector<std::string> known = {};  // attributes whose value must be known; of a mention it is
};

// A case and its main cause.
struct CaseCause {
  CaseId id;
  CauseNumber cause = 0;
  std::optional<int> came_back_days = {};  // from closing to coming back, where written down
};

struct ProfileCount {
  Profile profile;
  std::uint32_t cases = 0;
};

struct Tally {
  std::uint32_t cases = 0;
  std::uint32_t vehicles = 0;                    // distinct; a case without a token is its own
  std::vector<std::uint32_t> cases_by_cause;     // by CauseNumber; size of the CauseTable
  std::vector<std::uint32_t> vehicles_by_cause;  // distinct vehicles within the cause
  std::vector<ProfileCount> profiles;            // counts > 0, sorted by profile
};

class CaseCounter {
 public:
  virtual ~CaseCounter() = default;

  // Everything about the cases where all of it holds.
  [[nodiscard]] virtual Result<Tally> tally(const CountQuestion& question) const = 0;

  // Only cases by cause: what the ranking needs of every item. Size of the CauseTable.
  [[nodiscard]] virtual Result<std::vector<std::uint32_t>> by_cause(
      const CountQuestion& question) const = 0;

  // Cases by cause where the attribute's value is known (all cases for a mention).
  [[nodiscard]] Result<std::vector<std::uint32_t>> known_by_cause(std::string_view attribute,
                                                                  const Filter& filter) const {
    return by_cause({{}, filter, {std::string(attribute)}});
  }

  // The cases where all of it holds, ascending by id.
  [[nodiscard]] virtual Result<std::vector<CaseCause>> cases(
      const CountQuestion& question) const = 0;

  // Every item the counted cases hold whose attribute begins so, sorted: a group's "absent" is none
  // of them.
  [[nodiscard]] virtual Result<std::vector<EvidenceItem>> items_beginning(
      std::string_view attribute) const = 0;
  [[nodiscard]] Result<std::vector<EvidenceItem>> stored_items() const {
    return items_beginning("");
  }

  // How many different values of the attribute the records hold; at least 1.
  [[nodiscard]] virtual Result<std::uint32_t> value_count(std::string_view attribute) const = 0;

  [[nodiscard]] virtual const CauseTable& causes() const = 0;
};

// V_f of the ranking: values the attribute can take. Two for symptom, code, work_sign and
// earlier_repair, four for check, else what the records hold.
[[nodiscard]] Result<std::uint32_t> possible_values(const CaseCounter& counter,
                                                    std::string_view attribute);

}  // namespace shoplore
