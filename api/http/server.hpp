// The HTTP server: loopback only, bounded in threads, times and sizes.
//
// Plain HTTP without users: other hosts are refused until there are users and TLS. A page of
// another site cannot use it from the browser of this machine: the Host header must name
// loopback, and bodies must be JSON by their content type.
// Lifetime: refers to the records it serves. Threads: run() on one, stop() from any.
#pragma once

#include <memory>
#include <string>

#include "api/http/live_records.hpp"

namespace shoplore {

class Server {
 public:
  explicit Server(LiveRecords& records);
  ~Server();

  // Takes the port; 0 takes any free one. Gives the port. kInvalidInput for a host that is not
  // loopback, kConflict when the port is taken.
  [[nodiscard]] Result<int> bind(const std::string& host, int port);

  // Serves until stop(). Requires: bind() succeeded.
  void run();

  // Lets requests under way end, then makes run() return; waits for a run() still to come.
  // Requires: run() was called or will be.
  void stop();

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

// Whether this is localhost or an address of 127.0.0.0/8 or ::1 (RFC 6890), written literally.
[[nodiscard]] bool is_loopback(std::string_view host);

// What is said of a host that is not.
[[nodiscard]] Error not_loopback(std::string_view host);

}  // namespace shoplore
