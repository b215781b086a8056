// ask_bench SHOP: medians of asking, of the warnings in it, of counting and of a bare Xapian top-10
// in one run, as ratios.
//
// Not a test: timings are noisy, so nothing here passes or fails.
#include <fmt/format.h>
#include <xapian.h>

#include <algorithm>
#include <chrono>
#include <functional>
#include <vector>

#include "indexer/records.hpp"
#include "indexer/text.hpp"
#include "query/ask.hpp"
#include "query/watch_out/watch_out.hpp"

namespace shoplore {
namespace {

double median_ms(const std::function<void()>& work) {
  std::vector<double> times;
  for (int i = 0; i < 31; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - begin;
    times.push_back(taken.count());
  }
  std::nth_element(times.begin(), times.begin() + 15, times.end());
  return times[15];
}

int run(const std::string& shop) {
  auto records = Records::open({shop});
  if (!records || !records->follow(std::chrono::seconds(60))) return 2;
  const auto load = std::chrono::steady_clock::now();
  const auto snapshot = Snapshot::open(records->folder());
  if (!snapshot) return 2;
  const std::chrono::duration<double, std::milli> loaded = std::chrono::steady_clock::now() - load;
  const Ledger& ledger = (*snapshot)->ledger();
  fmt::print("{} cases, ledger loaded in {:.0f} ms\n", ledger.case_count(), loaded.count());
  const char* questions[] = {
      "2016 Brackwater Tidal BW16D 142k km P0299 flat uphill, no whistle, turbo already replaced "
      "elsewhere",
      "Cormont misfire cylinder 3, coil replaced here four months ago", "lack of power"};
  fmt::print("{:>10} {:>10} {:>10} {:>10} {:>8} {:>8}  question\n", "top-10 ms", "ask ms",
             "watch ms", "counts ms", "ask/top", "cnt/top");
  for (const char* text : questions) {
    const double top = median_ms([&] {
      (void)(*snapshot)->with_index([&](Xapian::Database& index) -> Result<void> {
        const auto words = index_words(text);
        Xapian::Enquire enquire(index);
        enquire.set_query(Xapian::Query(Xapian::Query::OP_OR, words.begin(), words.end()));
        (void)enquire.get_mset(0, 10);
        return {};
      });
    });
    Question question;
    question.text = text;
    question.similar_cases = 0;
    const double whole = median_ms([&] {
      (void)ask(question, **snapshot, records->store(), records->vocabulary(),
                records->recogniser());
    });
    const auto answer = ask(question, **snapshot, records->store(), records->vocabulary(),
                            records->recogniser());
    if (!answer) return 2;
    const Filter everything;
    const WatchQuestion watched{answer->understood.evidence,
                                answer->understood.known,
                                answer->likely_causes,
                                everything,
                                ledger,
                                records->vocabulary(),
                                (*snapshot)->watch_basis(records->vocabulary()),
                                (*snapshot)->figures()};
    const double watch = median_ms([&] { (void)watch_out(watched, {}, records->store()); });
    const std::vector<EvidenceItem> items{{"symptom:lack_of_power", "present"}};
    const double counts = median_ms([&] { (void)ledger.tally({items, {}}); });
    fmt::print("{:>10.3f} {:>10.3f} {:>10.3f} {:>10.3f} {:>8.2f} {:>8.2f}  {}\n", top, whole,
               watch, counts, whole / top, counts / top, std::string(text).substr(0, 40));
  }
  return 0;
}

}  // namespace
}  // namespace shoplore

int main(int argc, char** argv) {
  return argc == 2 ? shoplore::run(argv[1]) : 2;
}
