// A shop folder of its own for a black-box test, worked on by the built program only.
//
// Holds eight closed cases of two causes: of "P0299 flat", six were the wastegate linkage and two
// the charge-air hose. The folder goes with the object. One thread.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "tests/api/process.hpp"

namespace shoplore::testing {

// One closed case as JSON, the hose with a whistle, the linkage without.
[[nodiscard]] std::string closed_case(const std::string& ref, const std::string& component,
                                      const std::string& failure, const std::string& whistle);

class TestShop {
 public:
  TestShop();
  ~TestShop();
  TestShop(const TestShop&) = delete;
  TestShop& operator=(const TestShop&) = delete;

  // Runs `shoplore --shop <folder> arguments...`.
  [[nodiscard]] Ended run(const std::vector<std::string>& arguments,
                          const std::string& input = "") const;

  // The command line of run(), for Process.
  [[nodiscard]] std::vector<std::string> command(const std::vector<std::string>& arguments) const;

  // Every case as `export` writes it; fails the test when it does not work.
  [[nodiscard]] std::string exported() const;

  [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
  // The folder around it, also gone at the end.
  [[nodiscard]] const std::filesystem::path& around() const { return around_; }

 private:
  std::filesystem::path around_, folder_;
};

// What must be refused by every way in, with the place and a word of the reason.
struct BadCase {
  std::string name, json, place, reason;
  int status;  // over HTTP
};
[[nodiscard]] std::vector<BadCase> bad_cases();

struct BadQuestion {
  std::string name, text, reason;
};
[[nodiscard]] std::vector<BadQuestion> bad_questions();

}  // namespace shoplore::testing
