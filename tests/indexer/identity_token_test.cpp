#include "indexer/identity_token.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace shoplore {
namespace {

namespace fs = std::filesystem;

class IdentityTokenTest : public testing::Test {
 protected:
  IdentityTokenTest() {
    std::string pattern = (fs::temp_directory_path() / "shoplore-key-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
  }
  ~IdentityTokenTest() override { fs::remove_all(folder_); }

  void write(const std::string& bytes, fs::perms mode = fs::perms::owner_read) const {
    std::ofstream(path()) << bytes;
    fs::permissions(path(), mode);
  }
  [[nodiscard]] fs::path path() const { return folder_ / "key"; }

  // The bytes 0 to 31.
  [[nodiscard]] IdentityKey counting_key() const {
    std::string bytes;
    for (char c = 0; c < 32; ++c) bytes += c;
    write(bytes);
    return *IdentityKey::load(path());
  }

 private:
  fs::path folder_;
};

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

TEST_F(IdentityTokenTest, TokensAreKeyedBlake2b) {
  // Python 3.11, hashlib.blake2b(b"vin:1M8...", key=bytes(range(32)), digest_size=16).
  const IdentityKey key = counting_key();
  EXPECT_EQ(key.token_of_vin("1M8GDM9AXKP042788"), "571de01ed637110d5f9dc72d7c844c04");
  EXPECT_EQ(key.token_of_plate("AB12 CDE"), "2ffa88a2f58af3c6ba68c3e381882e4e");
  EXPECT_EQ(key.token_of_reference("AB12CDE"), "fc80bdcfca6e1362a9c17b55ab7cc5e6");
  EXPECT_EQ(key.token_of_request("AB12CDE"), "66120c88a304ccc8f0f9cbdb6e52475f");
}

TEST_F(IdentityTokenTest, SpellingMakesNoDifference) {
  const IdentityKey key = counting_key();
  for (const char* plate : {"AB12CDE", "ab12 cde", "Ab-12-Cde", " ab12\u00A0cde.", "áb12cde"}) {
    EXPECT_EQ(key.token_of_plate(plate), key.token_of_plate("AB12CDE")) << plate;
  }
  EXPECT_EQ(key.token_of_vin("1m8-gdm9ax kp042788"), key.token_of_vin("1M8GDM9AXKP042788"));
}

TEST_F(IdentityTokenTest, DifferentThingsGetDifferentTokens) {
  const IdentityKey key = counting_key();
  EXPECT_NE(key.token_of_plate("AB12CDE"), key.token_of_plate("AB12CDF"));
  EXPECT_NE(key.token_of_plate("AB12CDE"), key.token_of_vin("AB12CDE"));
  EXPECT_NE(key.token_of_plate("AB12CDE"), key.token_of_reference("AB12CDE"));
}

TEST_F(IdentityTokenTest, CreatedKeyIsPrivateAndLoadsTheSame) {
  const ::mode_t before = ::umask(0);
  const auto made = IdentityKey::create(path());
  ::umask(before);
  ASSERT_TRUE(made) << describe(made.error());
  EXPECT_EQ(fs::status(path()).permissions(), fs::perms::owner_read | fs::perms::owner_write);
  EXPECT_EQ(fs::file_size(path()), kIdentityKeyBytes);
  const auto loaded = IdentityKey::load(path());
  ASSERT_TRUE(loaded) << describe(loaded.error());
  EXPECT_EQ(loaded->token_of_plate("AB12CDE"), made->token_of_plate("AB12CDE"));
}

TEST_F(IdentityTokenTest, TwoShopsGiveDifferentTokens) {
  const auto one = IdentityKey::create(path());
  const auto two = IdentityKey::create(path().string() + "2");
  ASSERT_TRUE(one && two);
  EXPECT_NE(one->token_of_plate("AB12CDE"), two->token_of_plate("AB12CDE"));
}

TEST_F(IdentityTokenTest, KeyIsNeverOverwritten) {
  ASSERT_TRUE(IdentityKey::create(path()));
  const std::string bytes = read(path());
  const auto again = IdentityKey::create(path());
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, ErrorCode::kConflict);
  EXPECT_EQ(again.error().place, path().string());
  EXPECT_EQ(read(path()), bytes);
}

TEST_F(IdentityTokenTest, KeyOthersMayReadIsRefusedWithTheCure) {
  for (const fs::perms open : {fs::perms::group_read, fs::perms::others_read}) {
    write(std::string(32, 'k'), fs::perms::owner_read | open);
    const auto key = IdentityKey::load(path());
    ASSERT_FALSE(key);
    EXPECT_EQ(key.error().code, ErrorCode::kNoPermission);
    EXPECT_NE(key.error().message.find("chmod 600 " + path().string()), std::string::npos);
    fs::remove(path());
  }
}

TEST_F(IdentityTokenTest, WrongSizeIsRefused) {
  for (const std::size_t size : {0U, 31U, 33U, 64U}) {
    write(std::string(size, 'k'));
    const auto key = IdentityKey::load(path());
    ASSERT_FALSE(key) << size;
    EXPECT_EQ(key.error().code, ErrorCode::kInvalidInput);
    fs::remove(path());
  }
}

TEST_F(IdentityTokenTest, MissingFileIsNotFound) {
  const auto key = IdentityKey::load(path());
  ASSERT_FALSE(key);
  EXPECT_EQ(key.error().code, ErrorCode::kNotFound);
  EXPECT_EQ(IdentityKey::create(path() / "no" / "folder").error().code, ErrorCode::kNotFound);
}

TEST_F(IdentityTokenTest, FolderInItsPlaceIsRefused) {
  fs::create_directory(path());
  fs::permissions(path(), fs::perms::owner_all);
  EXPECT_EQ(IdentityKey::load(path()).error().code, ErrorCode::kInvalidInput);
}

}  // namespace
}  // namespace shoplore
