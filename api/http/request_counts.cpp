#include "api/http/request_counts.hpp"

namespace shoplore {

void RequestCounts::add(std::string_view method, std::string_view route, int status) {
  const std::lock_guard lock(mutex_);
  ++counts_[{std::string(method), std::string(route), status / 100}];
}

std::map<RequestKind, std::uint64_t> RequestCounts::all() const {
  const std::lock_guard lock(mutex_);
  return counts_;
}

}  // namespace shoplore
