#include "query/patterns/case_rows.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace shoplore {
namespace {

using Column = std::vector<std::uint32_t>;

constexpr std::array<std::string_view, 5> kVehicle{"make", "engine_family", "model", "fuel",
                                                   "transmission"};
constexpr std::string_view kSignPrefix = "work_sign:";

bool may_stand_in_a_pattern(const EvidenceItem& item) {
  const std::string& attribute = item.attribute;
  if (std::find(kVehicle.begin(), kVehicle.end(), attribute) != kVehicle.end()) return false;
  if (is_hindsight(attribute)) return false;
  return !attribute.starts_with("check:") || item.value == "pass" || item.value == "fail";
}

// Rows of cases by id: dense, in id order.
class RowNumbers {
 public:
  explicit RowNumbers(const std::vector<CaseCause>& cases) {
    std::uint32_t last = 0;
    for (const CaseCause& each : cases) last = std::max(last, each.id.value);
    by_id_.resize(last + std::size_t{1});
    for (std::uint32_t row = 0; row < cases.size(); ++row) by_id_[cases[row].id.value] = row;
  }

  [[nodiscard]] Column rows(const std::vector<CaseCause>& cases) const {
    Column rows;
    rows.reserve(cases.size());
    for (const CaseCause& each : cases) rows.push_back(by_id_[each.id.value]);
    return rows;
  }

 private:
  std::vector<std::uint32_t> by_id_;
};

class Reader {
 public:
  Reader(const CaseCounter& counter, const std::vector<CaseCause>& cases)
      : counter_(counter), numbers_(cases) {
    out_.cases = static_cast<std::uint32_t>(cases.size());
    std::vector<Column> causes(counter.causes().size());
    for (std::uint32_t row = 0; row < cases.size(); ++row) causes[cases[row].cause].push_back(row);
    out_.row_cause = {causes, cases.size()};
  }

  [[nodiscard]] Result<CaseRows> read(const std::vector<EvidenceItem>& stored) {
    if (auto read = items(stored); !read) return fail(read.error());
    if (auto read = groups(); !read) return fail(read.error());
    if (auto read = scopes(stored); !read) return fail(read.error());
    for (const auto& [attribute, column] :
         {std::pair("make", &out_.make_known), std::pair("engine_family", &out_.family_known)}) {
      auto written = known(attribute);
      if (!written) return fail(written.error());
      *column = std::move(*written);
    }
    if (!out_.signs.empty()) {
      auto looked = known(out_.signs.front());
      if (!looked) return fail(looked.error());
      out_.looked = std::move(*looked);
    }
    return std::move(out_);
  }

 private:
  [[nodiscard]] Result<Column> rows(const CountQuestion& question) const {
    const auto found = counter_.cases(question);
    if (!found) return fail(found.error());
    return numbers_.rows(*found);
  }

  [[nodiscard]] Result<Column> known(const std::string& attribute) const {
    return rows({{}, {}, {attribute}});
  }

  [[nodiscard]] Result<void> items(const std::vector<EvidenceItem>& stored) {
    std::vector<Column> columns, signs;
    for (const EvidenceItem& item : stored) {
      if (!may_stand_in_a_pattern(item)) continue;
      auto column = rows({{item}, {}, {}});
      if (!column) return fail(column.error());
      // A verdict stays however rare: a check's passes are counted against its fails.
      const bool is_verdict = item.attribute.starts_with("check:");
      if (column->size() < kFewestCases && !is_verdict) continue;
      out_.items.push_back(item);
      if (item.attribute.starts_with(kSignPrefix)) {
        out_.signs.push_back(item.attribute);
        signs.push_back(*column);
      }
      columns.push_back(std::move(*column));
    }
    out_.row_items = {columns, out_.cases};
    out_.row_signs = {signs, out_.cases};
    return {};
  }

  [[nodiscard]] Result<void> groups() {
    std::map<std::string, std::uint32_t> numbers;
    std::vector<Column> columns;
    for (const EvidenceItem& item : out_.items) {
      if (known_by(item.attribute) == KnownBy::kMention) {
        out_.group_of.push_back(kAlwaysKnown);
        continue;
      }
      const auto [group, is_new] = numbers.emplace(known_group(item.attribute), numbers.size());
      out_.group_of.push_back(group->second);
      if (!is_new) continue;
      auto column = known(item.attribute);
      if (!column) return fail(column.error());
      columns.push_back(std::move(*column));
    }
    out_.row_groups = {columns, out_.cases};
    return {};
  }

  [[nodiscard]] Result<void> scopes(const std::vector<EvidenceItem>& stored) {
    auto everything = rows({});
    if (!everything) return fail(everything.error());
    out_.scopes.push_back({{}, std::move(*everything), {}});
    for (const std::string_view attribute : {"make", "engine_family"}) {
      for (const EvidenceItem& item : stored) {
        if (item.attribute != attribute) continue;
        auto inside = rows({{item}, {}, {}});
        if (!inside) return fail(inside.error());
        if (inside->size() < kFewestInScope) continue;
        out_.scopes.push_back({item, std::move(*inside), {}});
      }
    }
    // A scope is narrower than those before it, so wider ones have lower numbers.
    for (std::size_t i = 1; i < out_.scopes.size(); ++i) {
      const Column& inside = out_.scopes[i].rows;
      for (std::size_t wider = 0; wider < i; ++wider) {
        const Column& all = out_.scopes[wider].rows;
        if (std::includes(all.begin(), all.end(), inside.begin(), inside.end())) {
          out_.scopes[i].wider.push_back(wider);
        }
      }
    }
    return {};
  }

  const CaseCounter& counter_;
  RowNumbers numbers_;
  CaseRows out_;
};

}  // namespace

Result<CaseRows> CaseRows::of(const CaseCounter& counter) {
  const auto stored = counter.stored_items();
  if (!stored) return fail(stored.error());
  const auto cases = counter.cases({});
  if (!cases) return fail(cases.error());
  return Reader(counter, *cases).read(*stored);
}

}  // namespace shoplore
