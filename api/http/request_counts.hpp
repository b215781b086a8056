// How many requests were answered, by route and class of status, since the server started.
//
// A request that fits no route counts under the route "other", so that strangers cannot make up
// names. Threads: every function from any.
#pragma once

#include <compare>
#include <cstdint>
#include <map>
#include <mutex>
#include <string>
#include <string_view>

namespace shoplore {

struct RequestKind {
  std::string method, route;  // as in the table of routes; "other" both
  int status_class = 2;       // first digit of the status
  friend auto operator<=>(const RequestKind&, const RequestKind&) = default;
};

class RequestCounts {
 public:
  void add(std::string_view method, std::string_view route, int status);
  [[nodiscard]] std::map<RequestKind, std::uint64_t> all() const;

 private:
  mutable std::mutex mutex_;
  std::map<RequestKind, std::uint64_t> counts_;
};

}  // namespace shoplore
