// Three kinds of connection: one Records that writes, guarded by a mutex; one Records of the
// following thread, so that a slow index commit never holds up a write; a pool of Stores lent to
// readers one at a time.
#include "api/http/live_records.hpp"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <set>
#include <thread>
#include <utility>
#include <vector>

#include "api/http/background_fit.hpp"
#include "api/http/background_lately.hpp"
#include "api/http/current_snapshot.hpp"
#include "query/cause_words.hpp"

namespace shoplore {

namespace {

constexpr std::chrono::milliseconds kPoll{100};
constexpr std::chrono::milliseconds kFollowPatience{2'000};
constexpr std::chrono::milliseconds kStartPatience{30'000};
constexpr int kAskTries = 3;

}  // namespace

struct LiveRecords::Impl {
  Impl(Records the_writer, Records the_follower, std::shared_ptr<const Snapshot> first)
      : writer(std::move(the_writer)),
        follower(std::move(the_follower)),
        snapshot(std::move(first)) {
    thread = std::thread([this] { follow_until_stopped(); });
  }

  ~Impl() {
    {
      const std::lock_guard lock(wake_mutex);
      stopping = true;
    }
    wake.notify_all();
    thread.join();
  }

  // Runs `use` with a Store lent for its duration.
  template <class Use>
  auto with_store(const Use& use) -> decltype(use(std::declval<const Store&>())) {
    std::unique_ptr<Store> store;
    {
      const std::lock_guard lock(pool_mutex);
      if (!pool.empty()) {
        store = std::move(pool.back());
        pool.pop_back();
      }
    }
    if (!store) {
      auto opened = Store::open(writer.folder().records());
      if (!opened) return fail(opened.error());
      store = std::make_unique<Store>(std::move(*opened));
    }
    auto result = use(static_cast<const Store&>(*store));
    const std::lock_guard lock(pool_mutex);
    pool.push_back(std::move(store));
    return result;
  }

  // Runs `use` on the snapshot in use; anew on a fresh one when the index moved on meanwhile.
  template <class Use>
  auto on_snapshot(const Use& use)
      -> decltype(use(std::declval<const Snapshot&>(), std::declval<const Store&>())) {
    using Answered = decltype(use(std::declval<const Snapshot&>(), std::declval<const Store&>()));
    return with_store([&](const Store& store) -> Answered {
      for (int tries = 1;; ++tries) {
        auto answer = use(*snapshot.load(), store);
        if (answer || answer.error().code != ErrorCode::kBusy || tries == kAskTries) return answer;
        if (auto fresh = refresh(store); !fresh) return fail(fresh.error());
      }
    });
  }

  Result<void> refresh(const Store& store) {
    const std::lock_guard lock(refresh_mutex);
    auto fresh = Snapshot::refreshed(snapshot.load(), writer.folder(), store);
    if (!fresh) return fail(fresh.error());
    snapshot.store(std::move(*fresh));
    return {};
  }

  // Mined when first asked for of a snapshot; whoever asks meanwhile waits for it. Not kept by
  // revision: a fit or a new index opens another snapshot of the same one, whose causes have other
  // numbers.
  Result<std::shared_ptr<const PatternBook>> patterns_of(const Snapshot& asked) {
    const std::lock_guard lock(book_mutex);
    if (!book || book_of.get() != &asked) {
      auto mined = PatternBook::mine(asked.ledger(), writer.vocabulary());
      if (!mined) return fail(mined.error());
      book = std::make_shared<const PatternBook>(std::move(*mined));
      book_of = asked.shared_from_this();
    }
    return book;
  }

  // The same revision, with what a fit has left.
  void reopen() {
    const std::lock_guard lock(refresh_mutex);
    if (auto fresh = Snapshot::open(writer.folder())) snapshot.store(std::move(*fresh));
  }

  void note_trouble(std::string text) {
    const std::lock_guard lock(trouble_mutex);
    trouble = std::move(text);
  }

  void written() {
    {
      const std::lock_guard lock(wake_mutex);
      woken = true;
    }
    wake.notify_all();
  }

  // True when the snapshot shows everything recorded.
  bool follow_once() {
    const auto followed = follower.follow(kFollowPatience);
    const auto refreshed = refresh(follower.store());
    if (!followed || !refreshed) {
      note_trouble(describe(followed ? refreshed.error() : followed.error()));
      return false;
    }
    note_trouble("");
    const auto recorded = follower.store().revision();
    return recorded && snapshot.load()->revision() >= *recorded;
  }

  void follow_until_stopped() {
    std::int64_t seen_version = -1;
    bool in_step = false;
    while (true) {
      bool told = false;
      {
        std::unique_lock lock(wake_mutex);
        wake.wait_for(lock, kPoll, [this] { return woken || stopping; });
        if (stopping) return;
        told = std::exchange(woken, false);
      }
      const auto version = follower.store().data_version();
      if (in_step) lately.consider(snapshot.load(), today());
      if (version && *version == seen_version && in_step && !told) continue;
      in_step = follow_once();
      if (version) seen_version = *version;
      if (in_step) fit.consider(snapshot.load(), follower.vocabulary());
    }
  }

  Records writer;
  Records follower;
  std::mutex write_mutex, refresh_mutex, pool_mutex, wake_mutex, claims_mutex, book_mutex;
  mutable std::mutex trouble_mutex;
  CurrentSnapshot snapshot;
  std::vector<std::unique_ptr<Store>> pool;
  std::set<std::string> claims;  // keys of requests under way
  std::shared_ptr<const PatternBook> book;
  std::shared_ptr<const Snapshot> book_of;
  std::condition_variable wake;
  bool woken = false, stopping = false;
  std::string trouble;
  RequestCounts requests;
  BackgroundLately lately{writer.folder()};
  BackgroundFit fit{writer.folder(), [this] { reopen(); }};
  std::thread thread;  // last: it uses all the others
};

LiveRecords::LiveRecords(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
LiveRecords::~LiveRecords() = default;
LiveRecords::LiveRecords(LiveRecords&&) noexcept = default;

Result<LiveRecords> LiveRecords::open(const ShopFolder& folder, std::vector<std::string>& notes) {
  auto writer = Records::open(folder);
  if (!writer) return fail(writer.error());
  const auto followed = writer->follow(kStartPatience);
  if (!followed) return fail(followed.error());
  if (followed->followed == Followed::kRebuilt) {
    notes.push_back(followed->why_rebuilt + "; it was built anew from the records");
  }
  auto follower = Records::open(folder);
  if (!follower) return fail(follower.error());
  auto snapshot = Snapshot::open(folder);
  if (!snapshot) return fail(snapshot.error());
  return LiveRecords(
      std::make_unique<Impl>(std::move(*writer), std::move(*follower), std::move(*snapshot)));
}

Result<Answer> LiveRecords::ask(const Question& question) const {
  return impl_->on_snapshot([&](const Snapshot& snapshot, const Store& store) {
    return shoplore::ask(question, snapshot, store, vocabulary(), impl_->writer.recogniser());
  });
}

Result<std::string> LiveRecords::token_of(const Identity& identity) const {
  return impl_->writer.token_of(identity);
}

Result<SearchPage> LiveRecords::find(const SearchQuestion& question) const {
  return impl_->on_snapshot([&](const Snapshot& snapshot, const Store& store) {
    return find_similar(question, snapshot, store, vocabulary(), impl_->writer.recogniser());
  });
}

Result<FailureMileage> LiveRecords::mileage(const MileageQuestion& question) const {
  return impl_->on_snapshot(
      [&](const Snapshot& snapshot, const Store& store) -> Result<FailureMileage> {
        auto cause = cause_from_words(question.cause, "?cause", vocabulary(), snapshot.ledger());
        if (!cause) return fail(cause.error());
        const auto histories = vehicle_histories(store, vocabulary());
        if (!histories) return fail(histories.error());
        return failure_mileage(*histories, {std::move(cause->key), question.scope});
      });
}

Result<RepairPlan> LiveRecords::plan(const PlanQuestion& question) const {
  return impl_->on_snapshot([&](const Snapshot& snapshot, const Store& store) {
    return repair_plan(question, snapshot, store, vocabulary(), impl_->writer.recogniser());
  });
}

Result<LiveRecords::PatternsPage> LiveRecords::patterns(const PatternChoice& choice,
                                                        const Skip& skip, std::size_t limit) const {
  const auto use = [&](const Snapshot& snapshot, const Store& store) -> Result<PatternsPage> {
    const auto skipped = skip(snapshot.revision());
    if (!skipped) return fail(skipped.error());
    auto book = impl_->patterns_of(snapshot);
    if (!book) return fail(book.error());
    auto list = (*book)->choose(choice, snapshot.ledger(), vocabulary());
    if (!list) return fail(list.error());
    const std::size_t first = std::min(*skipped, list->patterns.size());
    const std::size_t count = std::min(limit, list->patterns.size() - first);
    const auto begin = list->patterns.begin() + static_cast<std::ptrdiff_t>(first);
    auto shown =
        opened({begin, begin + static_cast<std::ptrdiff_t>(count)}, snapshot.ledger(), store);
    if (!shown) return fail(shown.error());
    return PatternsPage{std::move(*book), std::move(*list), std::move(*shown), first,
                        snapshot.revision()};
  };
  return impl_->on_snapshot(use);
}

Understood LiveRecords::understand(std::string_view text) const {
  Question question;
  question.text = text;
  return shoplore::understand(question, vocabulary(), impl_->writer.recogniser());
}

Result<StoredCase> LiveRecords::read(std::string_view ref, std::optional<Revision> as_of) const {
  return impl_->with_store([&](const Store& store) -> Result<StoredCase> {
    auto now = store.read(ref);
    if (!now || !as_of) return now;
    auto then = store.read(now->id, as_of);
    const bool too_early = !then && then.error().code == ErrorCode::kNotFound;
    if (!too_early) return then;
    return fail(ErrorCode::kNotFound, std::string(ref), "was not recorded yet at that revision");
  });
}

Result<std::vector<StoredCase>> LiveRecords::list(const CaseListFilter& filter, CaseId before,
                                                  std::size_t limit) const {
  return impl_->with_store([&](const Store& store) { return store.list(filter, before, limit); });
}

Result<LiveRecords::History> LiveRecords::history(std::string_view ref, Revision after,
                                                  std::size_t limit) const {
  return impl_->with_store([&](const Store& store) -> Result<History> {
    const auto now = store.read(ref);
    if (!now) return fail(now.error());
    History history;
    if (after.value > 0) {
      const auto before = store.read(now->id, after);
      if (!before) return fail(before.error());
      history.before = case_to_json(before->record);
    }
    auto changes = store.history(now->id, after, limit);
    if (!changes) return fail(changes.error());
    history.changes = std::move(*changes);
    return history;
  });
}

Result<Recorded> LiveRecords::add(Intake intake, const std::optional<Receipt>& receipt) {
  const std::lock_guard lock(impl_->write_mutex);
  auto recorded = impl_->writer.add(std::move(intake), Role::kTechnician, receipt);
  if (recorded) impl_->written();
  return recorded;
}

Result<Recorded> LiveRecords::change(std::string_view ref, std::optional<Revision> expected,
                                     std::string_view patch,
                                     const std::optional<Receipt>& receipt) {
  const std::lock_guard lock(impl_->write_mutex);
  auto recorded = impl_->writer.change(ref, expected, patch, Role::kTechnician, receipt);
  if (recorded) impl_->written();
  return recorded;
}

Result<OutcomesDue> LiveRecords::due(std::size_t limit) const {
  return impl_->with_store(
      [&](const Store& store) { return outcomes_due(store, vocabulary(), today(), limit); });
}

Result<std::vector<ComebackOffer>> LiveRecords::comebacks(const Case& record) const {
  return impl_->with_store(
      [&](const Store& store) { return comeback_offers(record, store, vocabulary()); });
}

Result<Recorded> LiveRecords::record_outcome(std::string_view ref, std::optional<Revision> expected,
                                             const OutcomeReport& report,
                                             const std::optional<Receipt>& receipt) {
  const std::lock_guard lock(impl_->write_mutex);
  auto recorded = shoplore::record_outcome(impl_->writer, ref, expected, report, today(),
                                           Role::kTechnician, receipt);
  if (recorded) impl_->written();
  return recorded;
}

Receipt LiveRecords::receipt_of(std::string_view key, std::string_view request, int status) const {
  return impl_->writer.receipt_of(key, request, status);
}

Result<std::optional<KeptReply>> LiveRecords::kept_reply(const std::string& key) const {
  return impl_->with_store([&](const Store& store) { return store.kept_reply(key); });
}

std::shared_ptr<void> LiveRecords::claim(const std::string& key) {
  const std::lock_guard lock(impl_->claims_mutex);
  if (!impl_->claims.insert(key).second) return nullptr;
  Impl* const impl = impl_.get();
  return {impl, [impl, key](void*) {
            const std::lock_guard unclaim(impl->claims_mutex);
            impl->claims.erase(key);
          }};
}

Result<LiveRecords::Health> LiveRecords::health() const {
  return impl_->with_store([&](const Store& store) -> Result<Health> {
    const auto revision = store.revision();
    if (!revision) return fail(revision.error());
    const auto cases = store.case_count();
    if (!cases) return fail(cases.error());
    const std::lock_guard lock(impl_->trouble_mutex);
    const auto snapshot = impl_->snapshot.load();
    return Health{*revision, snapshot->revision(), *cases, snapshot->ledger().case_count(),
                  impl_->trouble};
  });
}

Result<KeptLately> LiveRecords::lately() const {
  if (auto kept = lately_as_kept()) return std::move(*kept);
  const auto snapshot = impl_->snapshot.load();
  return make_lately(impl_->writer.folder(), snapshot->ledger(), snapshot->revision(), today());
}

std::optional<KeptLately> LiveRecords::lately_as_kept() const {
  auto kept = read_lately(impl_->writer.folder());
  return kept ? std::move(*kept) : std::nullopt;
}

RequestCounts& LiveRecords::requests() const {
  return impl_->requests;
}

Result<void> LiveRecords::read_with(
    const std::function<Result<void>(const Snapshot&, const Store&)>& use) const {
  return impl_->on_snapshot(use);
}

const ShopFolder& LiveRecords::folder() const {
  return impl_->writer.folder();
}

const Vocabulary& LiveRecords::vocabulary() const {
  return impl_->writer.vocabulary();
}

}  // namespace shoplore
