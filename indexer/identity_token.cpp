#include "indexer/identity_token.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>

#include "indexer/folded_text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kTokenBytes = 16;
static_assert(kTokenBytes >= crypto_generichash_BYTES_MIN);

// Closes on every way out.
class FileDescriptor {
 public:
  explicit FileDescriptor(int value) : value_(value) {}
  ~FileDescriptor() {
    if (value_ >= 0) ::close(value_);
  }
  FileDescriptor(const FileDescriptor&) = delete;
  FileDescriptor& operator=(const FileDescriptor&) = delete;
  [[nodiscard]] int value() const { return value_; }

 private:
  int value_;
};

tl::unexpected<Error> system_failure(int error, const std::filesystem::path& path,
                                     std::string_view doing) {
  ErrorCode code = ErrorCode::kInternal;
  if (error == EEXIST) code = ErrorCode::kConflict;
  if (error == ENOENT) code = ErrorCode::kNotFound;
  if (error == EACCES || error == EPERM || error == EROFS) code = ErrorCode::kNoPermission;
  return fail(code, path.string(), fmt::format("cannot {} the key: {}", doing, strerror(error)));
}

Result<void> start_sodium() {
  if (sodium_init() < 0) return fail(ErrorCode::kInternal, "", "libsodium cannot start");
  return {};
}

// Short reads and writes of 32 bytes mean a failing disk; errno may then be 0.
int write_all(int file, const unsigned char* data, std::size_t size) {
  errno = 0;
  if (::write(file, data, size) != static_cast<ssize_t>(size)) return errno == 0 ? EIO : errno;
  return ::fsync(file) == 0 ? 0 : errno;
}

// The new name must survive a power cut too.
int sync_folder_of(const std::filesystem::path& path) {
  const auto folder = path.has_parent_path() ? path.parent_path() : std::filesystem::path(".");
  const FileDescriptor file(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (file.value() < 0) return errno;
  return ::fsync(file.value()) == 0 ? 0 : errno;
}

}  // namespace

Result<IdentityKey> IdentityKey::create(const std::filesystem::path& path) {
  if (auto started = start_sodium(); !started) return fail(started.error());
  const FileDescriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600));
  if (file.value() < 0) return system_failure(errno, path, "make");
  IdentityKey key;
  randombytes_buf(key.key_.data(), key.key_.size());
  int error = write_all(file.value(), key.key_.data(), key.key_.size());
  if (error == 0) error = sync_folder_of(path);
  if (error != 0) {
    ::unlink(path.c_str());
    return system_failure(error, path, "write");
  }
  return key;
}

Result<IdentityKey> IdentityKey::load(const std::filesystem::path& path) {
  if (auto started = start_sodium(); !started) return fail(started.error());
  // Non-blocking, so that a FIFO put in its place cannot hang us; it is no regular file below.
  const FileDescriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.value() < 0) return system_failure(errno, path, "read");
  struct stat status {};
  if (::fstat(file.value(), &status) != 0) return system_failure(errno, path, "read");
  if ((status.st_mode & (S_IRWXG | S_IRWXO)) != 0) {
    return fail(ErrorCode::kNoPermission, path.string(),
                fmt::format("others may read the key; run: chmod 600 {}", path.string()));
  }
  if (!S_ISREG(status.st_mode) || status.st_size != static_cast<off_t>(kIdentityKeyBytes)) {
    return fail(ErrorCode::kInvalidInput, path.string(), "is not a key: expected a 32-byte file");
  }
  IdentityKey key;
  errno = 0;
  if (::read(file.value(), key.key_.data(), key.key_.size()) !=
      static_cast<ssize_t>(key.key_.size())) {
    return system_failure(errno == 0 ? EIO : errno, path, "read");
  }
  return key;
}

IdentityKey::~IdentityKey() {
  sodium_memzero(key_.data(), key_.size());
}

std::string IdentityKey::token(std::string_view message) const {
  std::array<unsigned char, kTokenBytes> hash{};
  crypto_generichash(hash.data(), hash.size(),
                     reinterpret_cast<const unsigned char*>(message.data()), message.size(),
                     key_.data(), key_.size());
  std::string hex;
  for (const unsigned char byte : hash) hex += fmt::format("{:02x}", byte);
  return hex;
}

std::string IdentityKey::token_of_vin(std::string_view vin) const {
  return token("vin:" + letters_and_digits(vin));
}

std::string IdentityKey::token_of_plate(std::string_view plate) const {
  return token("plate:" + letters_and_digits(plate));
}

std::string IdentityKey::token_of_reference(std::string_view reference) const {
  return token(std::string("reference:").append(reference));
}

std::string IdentityKey::token_of_request(std::string_view request) const {
  return token(std::string("request:").append(request));
}

}  // namespace shoplore
