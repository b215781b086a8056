// Keyed pseudonyms: the same vehicle gives the same token, and the token gives nothing back to
// anyone without the shop's key.
//
// This is a pseudonym, not anonymity: whoever holds the key can compute the token of any plate or
// VIN and compare, and can try them all. The key therefore lives in a file of its own that only
// its owner can read, apart from records and backups of records. Losing it loses nothing but
// "this very vehicle was here before".
// Lifetime: the key's bytes are wiped when the IdentityKey dies. Threads: const calls from any.
//
// Token = BLAKE2b-128 (RFC 7693; libsodium's crypto_generichash) under the 32-byte key, over
// "vin:" or "plate:" and the normalised number (or "reference:", "request:" and the text), as 32
// lower-case hex digits.
#pragma once

#include <array>
#include <filesystem>
#include <string>
#include <string_view>

#include "indexer/result.hpp"

namespace shoplore {

inline constexpr std::size_t kIdentityKeyBytes = 32;

class IdentityKey {
 public:
  // Writes a new random key to a file of mode 0600, safely on disk before it returns. kConflict
  // when something is there already: a key is never overwritten.
  [[nodiscard]] static Result<IdentityKey> create(const std::filesystem::path& path);

  // kNotFound without the file; kNoPermission when it cannot be read, or when group or others
  // may read it (saying the chmod that helps); kInvalidInput when it is not a 32-byte file.
  [[nodiscard]] static Result<IdentityKey> load(const std::filesystem::path& path);

  IdentityKey(const IdentityKey&) = default;
  IdentityKey& operator=(const IdentityKey&) = default;
  ~IdentityKey();

  // Normal form: letters and digits only, upper case, accents dropped (folded_text.hpp), so that
  // spacing and hyphens make no difference.
  [[nodiscard]] std::string token_of_vin(std::string_view vin) const;
  [[nodiscard]] std::string token_of_plate(std::string_view plate) const;

  // For a reference number that had an identity in it: taken as written, so that every record
  // that refers by it still refers to the same case.
  [[nodiscard]] std::string token_of_reference(std::string_view reference) const;

  // For a request that may be sent again: recognised by it, with nothing of it kept.
  [[nodiscard]] std::string token_of_request(std::string_view request) const;

 private:
  IdentityKey() = default;
  [[nodiscard]] std::string token(std::string_view message) const;
  std::array<unsigned char, kIdentityKeyBytes> key_{};
};

}  // namespace shoplore
