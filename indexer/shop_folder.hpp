// The folder that holds one workshop's records, and how it is found.
//
// | path            | what                                                                 |
// |-----------------|----------------------------------------------------------------------|
// | records.db      | the truth (store.hpp)                                                |
// | index/<n>/      | one generation of the index; can always be thrown away                |
// | index/current   | the number of the generation in use                                  |
// | index/lock      | held by whoever writes the index                                     |
// | key             | 0600: the key of vehicle tokens; losing it loses "this very vehicle" |
// | vocabulary/     | the shop's own words, overriding the built-in ones                   |
// | ranking.json    | the ranking's knobs, fitted on these records; can be thrown away    |
// | figures.json    | what work takes here, out of these records; can be thrown away       |
// | lately.json     | what was seen more often lately; can be thrown away                  |
// | practice/       | one file an apprentice who practises (apprentice_record.hpp)         |
// | backups/        | copies                                                               |
#pragma once

#include <filesystem>
#include <string>

#include "indexer/result.hpp"

namespace shoplore {

struct ShopFolder {
  std::filesystem::path root;
  [[nodiscard]] std::filesystem::path records() const { return root / "records.db"; }
  [[nodiscard]] std::filesystem::path index() const { return root / "index"; }
  [[nodiscard]] std::filesystem::path key() const { return root / "key"; }
  [[nodiscard]] std::filesystem::path vocabulary() const { return root / "vocabulary"; }
  [[nodiscard]] std::filesystem::path ranking() const { return root / "ranking.json"; }
  [[nodiscard]] std::filesystem::path figures() const { return root / "figures.json"; }
  [[nodiscard]] std::filesystem::path lately() const { return root / "lately.json"; }
  [[nodiscard]] std::filesystem::path practice() const { return root / "practice"; }
  [[nodiscard]] std::filesystem::path backups() const { return root / "backups"; }
};

// The option if not empty, else the environment's SHOPLORE_SHOP, else shoplore/ in
// XDG_DATA_HOME (default ~/.local/share). Touches no file.
[[nodiscard]] ShopFolder choose_shop_folder(const std::string& option);

// Makes the folders (0700) and the key. kConflict when there is a shop already; kNoPermission
// names the path. The records are made by Store::create.
[[nodiscard]] Result<void> make_shop_folder(const ShopFolder& folder);

// kNotFound, with what to do, unless records.db and key are there: a new shop when both are
// missing, their copy when one is.
[[nodiscard]] Result<void> require_shop_folder(const ShopFolder& folder);

}  // namespace shoplore
