#include "query/snapshot.hpp"

#include <fmt/format.h>
#include <xapian.h>

#include <mutex>
#include <optional>
#include <set>
#include <system_error>
#include <vector>

#include "indexer/index_follower.hpp"
#include "indexer/store.hpp"
#include "query/ranking/kept_knobs.hpp"

namespace shoplore {
namespace {

Revision revision_of(const Xapian::Database& index) {
  const std::string text = index.get_metadata(kRevisionKey);
  return Revision{text.empty() ? 0 : std::stoll(text)};
}

tl::unexpected<Error> translated(const Xapian::Error& error, const std::filesystem::path& folder) {
  if (std::string(error.get_type()) == "DatabaseModifiedError") {
    return fail(ErrorCode::kBusy, folder.string(), "the index moved on; ask again");
  }
  // A generation that is gone was replaced by a newer one while we were opening it.
  std::error_code ignored;
  if (!std::filesystem::exists(folder, ignored)) {
    return fail(ErrorCode::kBusy, folder.string(), "the index was replaced; ask again");
  }
  return fail(ErrorCode::kDamagedIndex, folder.string(), error.get_description());
}

// A file that cannot be read is as good as none: the start values answer until the next fit.
RankingKnobs knobs_in(const ShopFolder& folder) {
  const auto kept = read_knobs(folder);
  return kept && *kept ? (*kept)->knobs : RankingKnobs{};
}

WorkFigures figures_in(const ShopFolder& folder) {
  return read_figures(folder).value_or(WorkFigures{});
}

}  // namespace

struct Snapshot::Impl {
  std::filesystem::path generation;
  Ledger ledger;
  Revision revision;
  RankingKnobs knobs;
  mutable std::once_flag ranking_made;
  mutable std::optional<RankingModel> ranking;
  WorkFigures figures;
  mutable std::once_flag rates_made;
  mutable std::vector<AnswerRates> rates;
  mutable std::once_flag basis_made;
  mutable WatchBasis basis;
  // A handle serves one user at a time; the lock is held only to take one and to put it back.
  mutable std::mutex mutex;
  mutable std::vector<Xapian::Database> idle;

  Result<Xapian::Database> borrow() const {
    {
      const std::lock_guard lock(mutex);
      if (!idle.empty()) {
        Xapian::Database handle = std::move(idle.back());
        idle.pop_back();
        return handle;
      }
    }
    Xapian::Database fresh(generation.string());
    if (revision_of(fresh) != revision) {
      return fail(ErrorCode::kBusy, generation.string(), "the index moved on; ask again");
    }
    return fresh;
  }
};

Snapshot::Snapshot(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Snapshot::~Snapshot() = default;

Result<std::shared_ptr<const Snapshot>> Snapshot::open(const ShopFolder& folder) {
  const auto generation = current_generation(folder);
  if (!generation) return fail(generation.error());
  try {
    auto impl = std::make_unique<Impl>();
    impl->generation = *generation;
    Xapian::Database index(generation->string());
    impl->revision = revision_of(index);
    impl->ledger = Ledger::load(index);
    impl->knobs = knobs_in(folder);
    impl->figures = figures_in(folder);
    impl->idle.push_back(std::move(index));
    return std::shared_ptr<const Snapshot>(new Snapshot(std::move(impl)));
  } catch (const Xapian::Error& error) {
    return translated(error, *generation);
  }
}

Result<std::shared_ptr<const Snapshot>> Snapshot::refreshed(
    const std::shared_ptr<const Snapshot>& old, const ShopFolder& folder, const Store& store) {
  const auto generation = current_generation(folder);
  if (!generation) return fail(generation.error());
  if (*generation != old->impl_->generation) return open(folder);
  try {
    Xapian::Database index(generation->string());
    const Revision revision = revision_of(index);
    if (revision == old->revision()) return old;
    std::set<CaseId> changed;
    constexpr std::size_t kMany = 20'000;
    const auto changes = store.changes_after(old->revision(), kMany);
    if (!changes) return fail(changes.error());
    if (changes->size() == kMany || revision < old->revision()) return open(folder);
    for (const Change& change : *changes) changed.insert(change.id);
    auto impl = std::make_unique<Impl>();
    impl->generation = *generation;
    impl->revision = revision;
    impl->ledger = old->ledger().updated(index, changed);
    impl->knobs = knobs_in(folder);
    impl->figures = figures_in(folder);
    impl->idle.push_back(std::move(index));
    return std::shared_ptr<const Snapshot>(new Snapshot(std::move(impl)));
  } catch (const Xapian::Error& error) {
    return translated(error, *generation);
  }
}

const RankingModel& Snapshot::ranking() const {
  std::call_once(impl_->ranking_made, [this] {
    // The ledger's counts are in memory and cannot fail.
    impl_->ranking = std::move(*RankingModel::of(impl_->ledger, impl_->knobs));
  });
  return *impl_->ranking;
}

const std::vector<AnswerRates>& Snapshot::answer_rates() const {
  std::call_once(impl_->rates_made, [this] {
    impl_->rates = *shoplore::answer_rates(impl_->ledger, impl_->knobs.smoothing);
  });
  return impl_->rates;
}

const WatchBasis& Snapshot::watch_basis(const Vocabulary& vocabulary) const {
  std::call_once(impl_->basis_made,
                 [&] { impl_->basis = *shoplore::watch_basis(impl_->ledger, vocabulary); });
  return impl_->basis;
}

const WorkFigures& Snapshot::figures() const {
  return impl_->figures;
}

const Ledger& Snapshot::ledger() const {
  return impl_->ledger;
}

Revision Snapshot::revision() const {
  return impl_->revision;
}

Result<void> Snapshot::with_index(const std::function<Result<void>(Xapian::Database&)>& use) const {
  try {
    auto handle = impl_->borrow();
    if (!handle) return fail(handle.error());
    auto done = use(*handle);
    const std::lock_guard lock(impl_->mutex);
    impl_->idle.push_back(std::move(*handle));
    return done;
  } catch (const Xapian::Error& error) {
    return translated(error, impl_->generation);
  }
}

}  // namespace shoplore
