#include "api/http/background_lately.hpp"

#include "api/wire/kept_lately.hpp"

namespace shoplore {

void BackgroundLately::consider(const std::shared_ptr<const Snapshot>& snapshot, Date day) {
  const bool is_running =
      running_.valid() && running_.wait_for(std::chrono::seconds(0)) != std::future_status::ready;
  if (is_running || day == considered_) return;
  considered_ = day;
  running_ = std::async(std::launch::async, [folder = folder_, snapshot, day] {
    const auto kept = read_lately(folder);
    if (kept && *kept && (*kept)->made == day) return;
    // One that cannot be kept is no harm: who asks for it counts anew.
    static_cast<void>(make_lately(folder, snapshot->ledger(), snapshot->revision(), day));
  });
}

}  // namespace shoplore
