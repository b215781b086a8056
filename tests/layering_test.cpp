// Reads the include lines of the sources: which way dependencies flow, and who may use which
// library. Linking PRIVATE does not stop a folder from including a system header; this does.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace shoplore {
namespace {

namespace fs = std::filesystem;

struct Include {
  std::string file, target;  // relative to the root; what stands between the quotes or brackets
};

std::vector<Include> includes_of(const std::string& folder) {
  static const std::regex line_form(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
  std::vector<Include> includes;
  const fs::path root = SHOPLORE_SOURCE;
  for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
    const std::string extension = entry.path().extension().string();
    if (extension != ".cpp" && extension != ".hpp") continue;
    std::ifstream file(entry.path());
    for (std::string line; std::getline(file, line);) {
      std::smatch match;
      if (!std::regex_search(line, match, line_form)) continue;
      includes.push_back({fs::relative(entry.path(), root).string(), match[1]});
    }
  }
  return includes;
}

const std::vector<std::string> kFolders{"indexer", "query", "api", "corpus-demo"};

TEST(Layering, DependenciesFlowOneWay) {
  const std::map<std::string, std::set<std::string>> may_include{
      {"indexer", {"indexer"}},
      {"query", {"indexer", "query"}},
      {"api", {"indexer", "query", "api"}},
      {"corpus-demo", {"indexer", "corpus-demo"}}};
  std::size_t seen = 0;
  for (const std::string& folder : kFolders) {
    for (const Include& include : includes_of(folder)) {
      const std::string target = include.target.substr(0, include.target.find('/'));
      if (!may_include.contains(target)) continue;
      ++seen;
      EXPECT_TRUE(may_include.at(folder).contains(target))
          << include.file << " includes " << include.target;
    }
  }
  EXPECT_GT(seen, 100U) << "the include lines were not found";
}

TEST(Layering, EveryLibraryStaysInItsFolders) {
  struct Rule {
    std::string pattern;
    std::set<std::string> folders;
  };
  const std::vector<Rule> rules{{"^SQLiteCpp/|^sqlite3", {"indexer"}},
                                {"^sodium", {"indexer"}},
                                {"^csv[.]h", {"indexer"}},
                                {"^xapian", {"indexer", "query"}},
                                {"^roaring/", {"query"}},
                                {"^boost/math", {"query"}},
                                {"^httplib", {"api"}},
                                {"^CLI/", {"api"}}};
  for (const std::string& folder : kFolders) {
    for (const Include& include : includes_of(folder)) {
      for (const Rule& rule : rules) {
        const bool used = std::regex_search(include.target, std::regex(rule.pattern));
        EXPECT_TRUE(!used || rule.folders.contains(folder))
            << include.file << " includes " << include.target;
      }
    }
  }
}

TEST(Layering, OnlyOwnersOfAJsonFormKnowTheJsonLibrary) {
  for (const std::string& folder : kFolders) {
    for (const Include& include : includes_of(folder)) {
      const bool json =
          include.target.starts_with("nlohmann/") || include.target == "indexer/json_form.hpp";
      // A *_form.hpp is a JSON form shared by the sources that own one.
      const bool is_header = include.file.ends_with(".hpp") && !include.file.ends_with("_form.hpp");
      EXPECT_FALSE(json && is_header && !include.target.ends_with("json_fwd.hpp"))
          << include.file << " includes " << include.target;
    }
  }
}

}  // namespace
}  // namespace shoplore
