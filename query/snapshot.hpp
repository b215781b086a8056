// One consistent view of the records: index, ledger and revision, published together.
//
// Lifetime: held by shared pointer for as long as an answer is being made; a newer one replaces
// it without disturbing readers. Threads: any number may read one snapshot; index handles are
// lent out one to a user at a time. Takes no lock while counting.
// Fails with kNotFound when there is no index (let records.hpp follow first), kDamagedIndex when
// it is unreadable.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>

#include "indexer/index_document.hpp"
#include "indexer/quantities.hpp"
#include "indexer/result.hpp"
#include "indexer/shop_folder.hpp"
#include "indexer/store.hpp"
#include "query/checks/verdict_rates.hpp"
#include "query/checks/work_figures.hpp"
#include "query/ledger.hpp"
#include "query/ranking/ranking_model.hpp"
#include "query/watch_out/watch_basis.hpp"

namespace Xapian {
class Database;
}

namespace shoplore {

class Snapshot : public std::enable_shared_from_this<Snapshot> {
 public:
  // Opens the generation in use and loads the ledger from it.
  [[nodiscard]] static Result<std::shared_ptr<const Snapshot>> open(const ShopFolder& folder);

  // The present state: this very snapshot when nothing changed, else a new one that shares all
  // unchanged chunks of the ledger. The store tells which cases changed in between.
  [[nodiscard]] static Result<std::shared_ptr<const Snapshot>> refreshed(
      const std::shared_ptr<const Snapshot>& old, const ShopFolder& folder, const Store& store);

  [[nodiscard]] const Ledger& ledger() const;
  // The ranking of these records; its strengths are worked out when first asked for.
  [[nodiscard]] const RankingModel& ranking() const;
  // What to expect of every question that can be asked; worked out when first asked for.
  [[nodiscard]] const std::vector<AnswerRates>& answer_rates() const;
  // What warnings are weighed against; worked out when first asked for. Requires: the vocabulary
  // the index was made with.
  [[nodiscard]] const WatchBasis& watch_basis(const Vocabulary& vocabulary) const;
  // What work takes here, as of the last fit.
  [[nodiscard]] const WorkFigures& figures() const;
  [[nodiscard]] Revision revision() const;

  // Runs `use` with an index handle at this snapshot's revision. When the index has moved on so
  // far that the handle is gone, fails with kBusy: refresh and ask again. Xapian's exceptions
  // thrown inside `use` are caught here.
  [[nodiscard]] Result<void> with_index(
      const std::function<Result<void>(Xapian::Database&)>& use) const;

  ~Snapshot();

 private:
  struct Impl;
  explicit Snapshot(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace shoplore
