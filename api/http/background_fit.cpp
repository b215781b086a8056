#include "api/http/background_fit.hpp"

#include "query/ranking/fit_in_shop.hpp"

namespace shoplore {

BackgroundFit::BackgroundFit(ShopFolder folder, std::function<void()> fitted)
    : folder_(std::move(folder)), fitted_(std::move(fitted)) {}

void BackgroundFit::consider(std::shared_ptr<const Snapshot> snapshot,
                             const Vocabulary& vocabulary) {
  const bool is_running =
      running_.valid() && running_.wait_for(std::chrono::seconds(0)) != std::future_status::ready;
  if (is_running || snapshot->revision() == considered_) return;
  considered_ = snapshot->revision();
  running_ = std::async(std::launch::async, [this, snapshot, &vocabulary] {
    const auto store = Store::open(folder_.records());
    if (!store) return;
    const auto done = fit_when_due(folder_, *snapshot, *store, vocabulary);
    if (done && *done == FitDone::kFitted) fitted_();
  });
}

}  // namespace shoplore
