#include "tests/query/soybean.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

namespace shoplore::testing {
namespace {

struct Table {
  std::vector<std::string> attributes;         // the last is the class
  std::vector<std::vector<std::string>> rows;  // "?" is unknown
};

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t\r");
  if (first == text.npos) return "";
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

// Attribute-relation file format: @ATTRIBUTE name {values}, then comma-separated rows.
Table read_table(const std::string& path) {
  std::ifstream file(path);
  EXPECT_TRUE(file) << path << " is missing: tests/run fetches it";
  Table table;
  for (std::string line; std::getline(file, line);) {
    line = trimmed(line);
    if (line.empty() || line.front() == '%') continue;
    if (line.front() == '@') {
      std::istringstream words(line);
      std::string key, name;
      words >> key >> name;
      if (key == "@ATTRIBUTE") table.attributes.push_back(name);
      continue;
    }
    std::vector<std::string> row;
    std::istringstream cells(line);
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(trimmed(cell));
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::string id_of(std::string name) {
  for (char& c : name) {
    if (!std::isalnum(static_cast<unsigned char>(c))) c = '_';
  }
  return name;
}

void write_vocabulary(const Table& table, const std::filesystem::path& folder) {
  std::set<std::string> ids;
  for (const auto& row : table.rows) ids.insert(id_of(row.back()));
  nlohmann::json entries = nlohmann::json::array();
  for (const std::string& id : ids) entries.push_back({{"id", id}, {"name", "soybean " + id}});
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "component.json")
      << nlohmann::json{{"kind", "component"}, {"entries", entries}};
}

std::string lines_of(const Table& table) {
  std::string lines;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const auto& row = table.rows[i];
    nlohmann::json facts = nlohmann::json::object();
    for (std::size_t a = 0; a + 1 < row.size(); ++a) {
      if (row[a] != "?") facts[fmt::format("{:02} {}", a, table.attributes[a])] = row[a];
    }
    const nlohmann::json record{
        {"schema", 1},
        {"ref", fmt::format("soybean-{}", i)},
        {"state", "closed"},
        {"opened", "2020-01-01"},
        {"closed", "2020-01-02"},
        {"vehicle", nlohmann::json::object()},
        {"complaint", ""},
        {"facts", facts},
        {"cause",
         {{"component", id_of(row.back())}, {"failure", "degraded"}, {"proof", "measured"}}}};
    lines += record.dump() + "\n";
  }
  return lines;
}

}  // namespace

SoybeanShop::SoybeanShop() {
  const Table table = read_table(SHOPLORE_SOYBEAN);
  std::string pattern = (std::filesystem::temp_directory_path() / "shoplore-soy-XXXXXX").string();
  home_ = mkdtemp(pattern.data());
  const ShopFolder folder{home_ / "shop"};
  {
    const auto made = Records::create(folder);
    EXPECT_TRUE(made) << made.error().message;
  }
  write_vocabulary(table, folder.vocabulary());
  auto opened = Records::open(folder);
  EXPECT_TRUE(opened) << opened.error().message;
  records_ = std::make_unique<Records>(std::move(*opened));
  std::istringstream lines(lines_of(table));
  const auto imported = records_->import(lines, [](std::int64_t) {});
  EXPECT_TRUE(imported) << imported.error().place << ": " << imported.error().message;
  EXPECT_TRUE(records_->follow(std::chrono::seconds(10)));
  snapshot_ = *Snapshot::open(records_->folder());
  cases_ = *past_cases(records_->store(), records_->vocabulary(), ledger());
}

SoybeanShop::~SoybeanShop() {
  std::filesystem::remove_all(home_);
}

std::string SoybeanShop::disease(CauseNumber cause) const {
  const std::string& key = ledger().causes().key(cause);
  return key.substr(0, key.find(':'));
}

}  // namespace shoplore::testing
