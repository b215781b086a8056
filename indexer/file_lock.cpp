#include "indexer/file_lock.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <string>
#include <system_error>
#include <thread>
#include <utility>

namespace shoplore {
namespace {

tl::unexpected<Error> refused(const std::filesystem::path& path) {
  return fail(ErrorCode::kNoPermission, path.string(),
              "cannot be written: " + std::generic_category().message(errno));
}

bool write_all(int descriptor, const std::string& text) {
  return ::write(descriptor, text.data(), text.size()) == static_cast<ssize_t>(text.size()) &&
         ::fsync(descriptor) == 0;
}

}  // namespace

Result<FileLock> FileLock::acquire(const std::filesystem::path& path,
                                   std::chrono::milliseconds patience) {
  const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (descriptor < 0) return refused(path);
  const auto deadline = std::chrono::steady_clock::now() + patience;
  while (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
    if (std::chrono::steady_clock::now() >= deadline) {
      ::close(descriptor);
      return fail(ErrorCode::kBusy, path.string(), "held by another program");
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }
  return FileLock(descriptor);
}

FileLock::FileLock(FileLock&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

FileLock::~FileLock() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

Result<void> replace_file(const std::filesystem::path& path, const std::string& text) {
  // A name of its own: two writers at once must not write into each other's text.
  std::string temporary = path.string() + ".new-XXXXXX";
  const int file = ::mkostemp(temporary.data(), O_CLOEXEC);
  if (file < 0) return refused(path);
  const bool written = write_all(file, text);
  ::close(file);
  if (!written || std::rename(temporary.c_str(), path.c_str()) != 0) {
    auto why = refused(path);
    ::unlink(temporary.c_str());
    return why;
  }
  const int folder = ::open(path.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (folder >= 0) {
    ::fsync(folder);
    ::close(folder);
  }
  return {};
}

}  // namespace shoplore
