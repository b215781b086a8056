// patterns_bench [CASES...]: how long mining takes, of so many cases drawn by the demo's generator
// (2,400, 100,000, 300,000 and 1,000,000 if none are given), and what it tested and found.
//
// Counted from lists in memory, so reading the ledger is left out. Processor time, since other
// programs may run. Not a test: nothing here passes or fails.
#include <fmt/format.h>

#include <cstdio>
#include <ctime>
#include <string>

#include "query/patterns/pattern_book.hpp"
#include "tests/query/patterns/drawn_counter.hpp"

namespace shoplore {
namespace {

double seconds_since(std::clock_t begin) {
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

void measure(std::int64_t cases) {
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  const auto counter = testing::drawn_counter(demo_world(), vocabulary, cases, 1);
  std::clock_t begin = std::clock();
  const PatternBook book = PatternBook::mine(counter, vocabulary).value();
  fmt::print("{} cases: mined in {:.2f} s\n", cases, seconds_since(begin));
  std::fflush(stdout);  // choosing out of a million cases takes long, by lists
  begin = std::clock();
  const PatternList list = book.choose({}, counter, vocabulary).value();
  fmt::print("  chosen in {:.2f} s, {} found, {} say more\n", seconds_since(begin), list.found,
             list.patterns.size());
  for (const auto& [kind, name] : kEnumNames<PatternKind>) {
    fmt::print("  {}: {} tested, {} found\n", name, book.count(kind).tested,
               book.count(kind).found);
  }
}

}  // namespace
}  // namespace shoplore

int main(int count, char** arguments) {
  const std::vector<std::string> sizes(arguments + 1, arguments + count);
  if (sizes.empty()) {
    for (const std::int64_t cases : {2'400, 100'000, 300'000, 1'000'000}) shoplore::measure(cases);
  }
  for (const std::string& size : sizes) shoplore::measure(std::stoll(size));
}
