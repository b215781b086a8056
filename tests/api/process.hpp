// Running the built program as a person would: fork, exec, both streams read, exit code kept.
//
// Child dies with its Process object (SIGKILL, by its own pid). One thread.
#pragma once

#include <sys/types.h>
#include <string>
#include <utility>
#include <vector>

namespace shoplore::testing {

struct Ended {
  int exit_code = -1;  // 128 + signal when it was killed
  std::string out, err;
};

struct Start {
  std::vector<std::string> command;  // the program first
  std::string input;                 // standard input; then its end
  std::vector<std::pair<std::string, std::string>> environment = {};  // added to our own
};

// Runs to its end. Writing much input to a program that does not read it is no error.
[[nodiscard]] Ended run_program(const Start& start);

// A program left running.
class Process {
 public:
  explicit Process(const Start& start);
  ~Process();
  Process(const Process&) = delete;
  Process& operator=(const Process&) = delete;

  // The next line of standard output without its end; empty at the end of the stream.
  [[nodiscard]] std::string read_line();

  // Sends the signal and waits for the end.
  [[nodiscard]] Ended stop_with(int signal);
  [[nodiscard]] pid_t pid() const { return pid_; }

 private:
  Ended wait();
  pid_t pid_ = -1;
  int in_ = -1, out_ = -1, err_ = -1;
  friend Ended run_program(const Start& start);
  std::string input_;
};

}  // namespace shoplore::testing
