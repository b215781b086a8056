// recognise_bench: medians of loading the vocabulary, of making a recogniser, and of recognising a
// scan report of 200 lines, of one in which no word comes twice, and of a short note.
//
// Processor time, since other programs may run. Not a test: nothing here passes or fails.
#include <fmt/format.h>

#include <algorithm>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

#include "indexer/recogniser.hpp"

namespace shoplore {
namespace {

double median_ms(const std::function<void()>& work) {
  std::vector<double> times;
  for (int i = 0; i < 31; ++i) {
    const std::clock_t begin = std::clock();
    work();
    times.push_back(1'000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
  }
  std::nth_element(times.begin(), times.begin() + 15, times.end());
  return times[15];
}

// A number in letters, so that a word with it is a word of its own.
std::string letters(std::size_t number) {
  std::string text;
  for (; number > 0; number /= 26) text += static_cast<char>('a' + number % 26);
  return text;
}

// Headings, codes with descriptions in many different words, and freeze frames.
enum class Words { kUsual, kAllDifferent };

std::string report(int lines, Words words) {
  constexpr const char* kModules[] = {"Engine control unit", "ABS", "Airbag module", "BCM"};
  constexpr const char* kWords[] = {
      "turbocharger", "underboost",  "implausible",  "circuit",  "sensor",      "reference",
      "voltage",      "intermitent", "correlation",  "actuator", "performance", "monitoring",
      "signal",       "range",       "plausibility", "supply",   "controller",  "deactivated"};
  std::string text = "Tool: handheld\nOdometer: 142000 km\n";
  std::size_t word = 0;
  for (int i = 2; i < lines; ++i) {
    if (i % 20 == 2) {
      text += fmt::format("{}\n", kModules[static_cast<std::size_t>(i / 20) % 4]);
    } else if (i % 5 == 0) {
      text += fmt::format("    RPM {} Coolant 88 C Load 64 %\n", 800 + i);
    } else {
      text += fmt::format("  P{:04X}-16", 0x100 + i);
      for (int k = 0; k < 6; ++k) {
        text += fmt::format(" {}", kWords[word++ * 7 % 18]);
        if (words == Words::kAllDifferent) text += letters(word);
      }
      text += "  stored\n";
    }
  }
  return text;
}

int run() {
  const double load = median_ms([] { (void)Vocabulary::built_in(); });
  const auto vocabulary = Vocabulary::built_in();
  if (!vocabulary) return 2;
  const double make = median_ms([&] { Recogniser made(*vocabulary); });
  const Recogniser recogniser(*vocabulary);
  const std::string long_text = report(200, Words::kUsual);
  const std::string odd_text = report(200, Words::kAllDifferent);
  std::size_t items = 0;
  const double whole = median_ms([&] { items = recogniser.recognise(long_text).items.size(); });
  const double odd = median_ms([&] { (void)recogniser.recognise(odd_text); });
  const double note = median_ms([&] {
    (void)recogniser.recognise(
        "2016 Brackwater Tidal BW16D 142k km P0299 flat uphill, no whistle, turbo already "
        "replaced elsewhere");
  });
  fmt::print("vocabulary loaded in {:.2f} ms, recogniser made in {:.2f} ms\n", load, make);
  fmt::print("200-line report of {} bytes, {} items: {:.2f} ms; no word twice: {:.2f} ms\n",
             long_text.size(), items, whole, odd);
  fmt::print("short note: {:.3f} ms\n", note);
  return 0;
}

}  // namespace
}  // namespace shoplore

int main() {
  return shoplore::run();
}
