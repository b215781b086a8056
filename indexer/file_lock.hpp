// A lock between processes: flock on a file, released when the holder lets go or dies.
//
// Lifetime: held as long as the object lives. Threads: one. Fails with kBusy when the patience
// runs out, kNoPermission when the file cannot be made.
#pragma once

#include <chrono>
#include <filesystem>

#include "indexer/result.hpp"

namespace shoplore {

class FileLock {
 public:
  // Tries every few milliseconds until the patience is used up; at least once.
  [[nodiscard]] static Result<FileLock> acquire(const std::filesystem::path& path,
                                                std::chrono::milliseconds patience);
  ~FileLock();
  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&&) = delete;

 private:
  explicit FileLock(int descriptor) : descriptor_(descriptor) {}
  int descriptor_;
};

// Replaces the file's content at once: readers see the old text or the new, never a part; the new
// one survives a crash of the machine.
[[nodiscard]] Result<void> replace_file(const std::filesystem::path& path, const std::string& text);

}  // namespace shoplore
