#include <fmt/format.h>
#include <pthread.h>
#include <signal.h>

#include <thread>

#include "api/cli/verbs.hpp"
#include "api/http/server.hpp"

namespace shoplore {

namespace {

// SIGINT and SIGTERM as a call, on a thread of its own: a handler may do next to nothing.
// Make it before any other thread, so that all of them leave the signals to it.
class StopSignals {
 public:
  StopSignals() {
    sigemptyset(&set_);
    sigaddset(&set_, SIGINT);
    sigaddset(&set_, SIGTERM);
    pthread_sigmask(SIG_BLOCK, &set_, &before_);
  }
  ~StopSignals() {
    end();
    pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }
  // Afterwards `stop` is not called any more: what it refers to may go.
  void end() {
    if (!thread_.joinable()) return;
    pthread_kill(thread_.native_handle(), SIGTERM);  // wakes it if it still waits
    thread_.join();
  }
  void on_signal(const std::function<void()>& stop) {
    thread_ = std::thread([this, stop] {
      int signal = 0;
      sigwait(&set_, &signal);
      stop();
    });
  }

 private:
  sigset_t set_{}, before_{};
  std::thread thread_;
};

}  // namespace

Result<ExitCode> run(const ServeOptions& options, Session& session) {
  if (!is_loopback(options.host)) return fail(not_loopback(options.host));
  StopSignals signals;
  std::vector<std::string> notes;
  auto records = LiveRecords::open(session.folder, notes);
  if (!records) return fail(records.error());
  for (const std::string& note : notes) session.err << "shoplore: " << note << "\n";
  Server server(*records);
  const auto port = server.bind(options.host, options.port);
  if (!port) return fail(port.error());
  const std::string host = options.host == "::1" ? "[::1]" : options.host;
  session.out << fmt::format("listening on http://{}:{}", host, *port) << std::endl;
  signals.on_signal([&server] { server.stop(); });
  server.run();
  signals.end();
  return ExitCode::kAnswered;
}

}  // namespace shoplore
