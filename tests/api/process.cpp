#include "tests/api/process.hpp"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <stdexcept>

namespace shoplore::testing {

namespace {

std::array<int, 2> make_pipe() {
  std::array<int, 2> ends{};
  if (pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
  return ends;
}

[[noreturn]] void become(const Start& start) {
  for (const auto& [name, value] : start.environment) setenv(name.c_str(), value.c_str(), 1);
  signal(SIGPIPE, SIG_DFL);
  std::vector<char*> words;
  for (const std::string& word : start.command) words.push_back(const_cast<char*>(word.c_str()));
  words.push_back(nullptr);
  execvp(words[0], words.data());
  _exit(127);
}

void close_end(int& end) {
  if (end >= 0) close(end);
  end = -1;
}

// Appends what is there; closes the end at the end of the stream.
void take(int& end, std::string& text) {
  char block[8192];
  const auto got = read(end, block, sizeof(block));
  if (got > 0)
    text.append(block, static_cast<std::size_t>(got));
  else
    close_end(end);
}

}  // namespace

Process::Process(const Start& start) : input_(start.input) {
  signal(SIGPIPE, SIG_IGN);
  auto in = make_pipe();
  auto out = make_pipe();
  auto err = make_pipe();
  pid_ = fork();
  if (pid_ == 0) {
    dup2(in[0], STDIN_FILENO);
    dup2(out[1], STDOUT_FILENO);
    dup2(err[1], STDERR_FILENO);
    become(start);
  }
  close(in[0]);
  close(out[1]);
  close(err[1]);
  in_ = in[1];
  out_ = out[0];
  err_ = err[0];
  fcntl(in_, F_SETFL, O_NONBLOCK);
}

Process::~Process() {
  if (pid_ > 0) {
    kill(pid_, SIGKILL);
    waitpid(pid_, nullptr, 0);
  }
  close_end(in_);
  close_end(out_);
  close_end(err_);
}

std::string Process::read_line() {
  std::string line;
  char c = 0;
  while (read(out_, &c, 1) == 1 && c != '\n') line += c;
  return line;
}

Ended Process::wait() {
  Ended ended;
  std::size_t written = 0;
  while (out_ >= 0 || err_ >= 0) {
    if (in_ >= 0 && written == input_.size()) close_end(in_);
    std::array<pollfd, 3> ends = {pollfd{out_, POLLIN, 0}, pollfd{err_, POLLIN, 0},
                                  pollfd{in_, POLLOUT, 0}};
    poll(ends.data(), ends.size(), -1);
    if (ends[0].revents != 0) take(out_, ended.out);
    if (ends[1].revents != 0) take(err_, ended.err);
    if (ends[2].revents != 0) {
      const auto put = write(in_, input_.data() + written, input_.size() - written);
      if (put < 0)
        close_end(in_);
      else
        written += static_cast<std::size_t>(put);
    }
  }
  close_end(in_);
  int status = 0;
  waitpid(pid_, &status, 0);
  pid_ = -1;
  ended.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return ended;
}

Ended Process::stop_with(int signal) {
  kill(pid_, signal);
  return wait();
}

Ended run_program(const Start& start) {
  Process process(start);
  return process.wait();
}

}  // namespace shoplore::testing
