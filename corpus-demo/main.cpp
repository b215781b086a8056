// shoplore-demo-workshop: writes an invented workshop's cases as JSON Lines, and what really
// failed in another file.
//   shoplore-demo-workshop --cases 2400 --seed 1 --out cases.jsonl [--truth FILE] [--rates FILE]
// Exit 0 written, 2 error.
#include <fmt/core.h>

#include <charconv>
#include <cstdio>
#include <fstream>
#include <optional>
#include <string>
#include <string_view>

#include "corpus-demo/generator.hpp"
#include "corpus-demo/truth.hpp"
#include "indexer/case_json.hpp"

namespace shoplore {
namespace {

struct Arguments {
  DemoSettings settings;
  std::string out, truth, rates;
};

template <class Number>
bool read_number(std::string_view text, Number& number) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc{} && end == text.data() + text.size();
}

std::optional<Arguments> parse(int count, char** words) {
  Arguments arguments;
  for (int i = 1; i < count; i += 2) {
    const std::string_view name = words[i];
    if (i + 1 >= count) return {};
    const std::string_view value = words[i + 1];
    if (name == "--cases") {
      if (!read_number(value, arguments.settings.closed_cases)) return {};
    } else if (name == "--seed") {
      if (!read_number(value, arguments.settings.seed)) return {};
    } else if (name == "--out") {
      arguments.out = value;
    } else if (name == "--truth") {
      arguments.truth = value;
    } else if (name == "--rates") {
      arguments.rates = value;
    } else {
      return {};
    }
  }
  const auto cases = arguments.settings.closed_cases;
  if (arguments.out.empty() || cases < 1 || cases > 1'000'000) return {};
  return arguments;
}

int complain(std::string_view what) {
  fmt::print(stderr, "shoplore-demo-workshop: {}\n", what);
  return 2;
}

bool write_rates(const World& world, const std::string& path) {
  if (path.empty()) return true;
  std::ofstream file(path, std::ios::binary);
  file << rates_lines(world);
  return file.flush().good();
}

int write_workshop(const Arguments& arguments) {
  const auto vocabulary = Vocabulary::built_in();
  if (!vocabulary) return complain(describe(vocabulary.error()));
  const World world = demo_world();
  if (!write_rates(world, arguments.rates)) return complain("cannot write " + arguments.rates);
  std::ofstream cases(arguments.out, std::ios::binary);
  std::ofstream truth;
  if (!arguments.truth.empty()) truth.open(arguments.truth, std::ios::binary);
  generate_workshop(world, *vocabulary, arguments.settings, [&](const DemoCase& drawn) {
    cases << case_to_json(drawn.record) << '\n';
    if (truth.is_open() && drawn.pattern) {
      truth << truth_line(world, drawn.record.ref, *drawn.pattern) << '\n';
    }
  });
  if (!cases.flush()) return complain("cannot write " + arguments.out);
  if (!arguments.truth.empty() && !truth.flush()) {
    return complain("cannot write " + arguments.truth);
  }
  return 0;
}

}  // namespace
}  // namespace shoplore

int main(int count, char** words) {
  const auto arguments = shoplore::parse(count, words);
  if (!arguments) {
    return shoplore::complain(
        "usage: --cases 1..1000000 --seed N --out FILE.jsonl [--truth FILE.jsonl] "
        "[--rates FILE.jsonl]");
  }
  return shoplore::write_workshop(*arguments);
}
