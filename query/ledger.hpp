// The ledger: every counted case as bits, for exact counts in microseconds.
//
// A bitmap per evidence item, known group and proof, and packed columns (profile, vehicle,
// cause-and-vehicle, day closed, mileage, model year, days to coming back), in immutable chunks of
// 65,536 case ids. An edit rebuilds one chunk and shares the others. Lifetime: immutable; copies
// share. Threads: any number may read.
#pragma once

#include <memory>
#include <set>
#include <vector>

#include "query/case_counter.hpp"

namespace Xapian {
class Database;
}

namespace shoplore {

// Case ids a chunk spans: one container of a Roaring bitmap.
inline constexpr std::uint32_t kChunkCases = 65'536;

class Ledger final : public CaseCounter {
 public:
  Ledger();  // empty
  ~Ledger() override;
  Ledger(const Ledger&);
  Ledger& operator=(const Ledger&);

  // Reads all of an index generation. Xapian's exceptions pass through (snapshot.cpp owns them).
  [[nodiscard]] static Ledger load(const Xapian::Database& index);

  // This ledger with these cases as the index holds them now: changed, new, or no longer there.
  [[nodiscard]] Ledger updated(const Xapian::Database& index, const std::set<CaseId>& cases) const;

  [[nodiscard]] Result<Tally> tally(const CountQuestion& question) const override;
  [[nodiscard]] Result<std::vector<std::uint32_t>> by_cause(
      const CountQuestion& question) const override;
  [[nodiscard]] Result<std::vector<CaseCause>> cases(const CountQuestion& question) const override;
  [[nodiscard]] Result<std::vector<EvidenceItem>> items_beginning(
      std::string_view attribute) const override;
  [[nodiscard]] Result<std::uint32_t> value_count(std::string_view attribute) const override;
  [[nodiscard]] const CauseTable& causes() const override;

  // This ledger without these cases, as if they had never come in; for asking them as new.
  [[nodiscard]] Ledger without(const std::set<CaseId>& cases) const;

  // Ids of the cases where all of it holds, ascending.
  [[nodiscard]] std::vector<CaseId> matching(const CountQuestion& question) const;

  // Counted cases in all.
  [[nodiscard]] std::uint32_t case_count() const;

 private:
  struct Impl;
  std::shared_ptr<const Impl> impl_;
};

}  // namespace shoplore
