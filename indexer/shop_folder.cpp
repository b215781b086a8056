#include "indexer/shop_folder.hpp"

#include <cstdlib>
#include <system_error>
#include <vector>

#include "indexer/identity_token.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

Result<void> make_folder(const fs::path& path) {
  std::error_code error;
  fs::create_directories(path, error);
  if (!error) fs::permissions(path, fs::perms::owner_all, error);
  if (error)
    return fail(ErrorCode::kNoPermission, path.string(), "cannot be made: " + error.message());
  return {};
}

}  // namespace

ShopFolder choose_shop_folder(const std::string& option) {
  if (!option.empty()) return {option};
  if (const std::string shop = environment("SHOPLORE_SHOP"); !shop.empty()) return {shop};
  if (const std::string data = environment("XDG_DATA_HOME"); !data.empty()) {
    return {fs::path(data) / "shoplore"};
  }
  return {fs::path(environment("HOME")) / ".local" / "share" / "shoplore"};
}

Result<void> make_shop_folder(const ShopFolder& folder) {
  std::error_code ignored;
  if (fs::exists(folder.records(), ignored) || fs::exists(folder.key(), ignored)) {
    return fail(ErrorCode::kConflict, folder.root.string(), "there is a shop here already");
  }
  for (const fs::path& path :
       {folder.root, folder.index(), folder.vocabulary(), folder.backups()}) {
    if (auto made = make_folder(path); !made) return made;
  }
  if (auto key = IdentityKey::create(folder.key()); !key) return fail(key.error());
  return {};
}

Result<void> require_shop_folder(const ShopFolder& folder) {
  std::error_code error;
  std::vector<fs::path> missing;
  for (const fs::path& needed : {folder.records(), folder.key()}) {
    if (fs::exists(needed, error)) continue;
    if (error && error != std::errc::no_such_file_or_directory) {
      return fail(ErrorCode::kNoPermission, needed.string(), error.message());
    }
    missing.push_back(needed);
  }
  if (missing.empty()) return {};
  if (missing.size() == 1) {
    // Half a shop is no place for a new one: what is there would be lost to it.
    return fail(ErrorCode::kNotFound, missing[0].string(), "is missing; put back its copy");
  }
  return fail(ErrorCode::kNotFound, folder.root.string(),
              "no workshop records here; make a new shop with: shoplore init --shop " +
                  folder.root.string());
}

}  // namespace shoplore
