#include "query/checks/work_figures.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "indexer/case_json.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/evidence_item.hpp"
#include "indexer/file_lock.hpp"
#include "indexer/json_form.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<CheckFigures> auto& f) {
  io.required("minutes", f.minutes);
  io.required("cases", f.cases);
}

template <class Io>
void fields(Io& io, Of<RepairFigures> auto& f) {
  io.required("minutes", f.minutes);
  io.required("parts", f.parts);
  io.optional("removals", f.removals);
  io.required("cases", f.cases);
}

namespace {

// The rest of the file; its lists are longer than those of a request may be.
struct Money {
  std::optional<double> hour_costs;
  std::string currency;
};

template <class Io>
void fields(Io& io, Of<Money> auto& m) {
  io.optional("hour_costs", m.hour_costs);
  io.optional("currency", m.currency);
}

constexpr std::size_t kMaxBytes = 4 * 1024 * 1024;
constexpr double kMinutesAnHour = 60;

// Of what is there; 0 of nothing. The lower of the middle two.
double median(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>((values.size() - 1) / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

template <class T>
T most_frequent(const std::map<T, std::int64_t>& counts) {
  const auto most =
      std::max_element(counts.begin(), counts.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == counts.end() ? T{} : most->first;
}

double parts_cost(const Correction& correction) {
  double sum = 0;
  for (const Part& part : correction.parts) sum += part.quantity * part.cost.value_or(0);
  return sum;
}

class Gathering {
 public:
  explicit Gathering(const Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

  void add(const Case& record) {
    for (const Check& check : record.checks) {
      if (!check.minutes) continue;
      checks_[vocabulary_.canonical(EntryKind::kCheck, check.id)].push_back(check.minutes->value);
    }
    if (record.state != CaseState::kClosed || !record.cause || !record.correction) return;
    const Correction& correction = *record.correction;
    Repairs& repairs = repairs_[cause_key(*record.cause, vocabulary_)];
    ++repairs.removals[correction.removals];
    if (!correction.currency.empty()) ++currencies_[correction.currency];
    if (!correction.parts.empty())
      repairs.parts[correction.currency].push_back(parts_cost(correction));
    if (!correction.hours) return;
    const Hours& hours = *correction.hours;
    if (hours.clocked) repairs.minutes.push_back(*hours.clocked * kMinutesAnHour);
    if (!correction.cost_total || !hours.charged || *hours.charged <= 0) return;
    const double labour = *correction.cost_total - parts_cost(correction);
    if (labour > 0) hour_costs_[correction.currency].push_back(labour / *hours.charged);
  }

  WorkFigures figures() const {
    WorkFigures out;
    out.currency = most_frequent(currencies_);
    for (const auto& [check, minutes] : checks_) {
      out.checks[check] = {median(minutes), static_cast<std::int64_t>(minutes.size())};
    }
    for (const auto& [cause, repairs] : repairs_) {
      const auto parts = repairs.parts.find(out.currency);
      out.repairs[cause] = {
          median(repairs.minutes), parts == repairs.parts.end() ? 0 : median(parts->second),
          most_frequent(repairs.removals), static_cast<std::int64_t>(repairs.minutes.size())};
    }
    const auto costs = hour_costs_.find(out.currency);
    if (costs != hour_costs_.end()) out.hour_costs = median(costs->second);
    return out;
  }

 private:
  using ByCurrency = std::map<std::string, std::vector<double>>;
  struct Repairs {
    std::vector<double> minutes;
    ByCurrency parts;
    std::map<std::vector<std::string>, std::int64_t> removals;
  };

  const Vocabulary& vocabulary_;
  std::map<std::string, std::vector<double>> checks_;
  std::map<std::string, Repairs> repairs_;
  std::map<std::string, std::int64_t> currencies_;
  ByCurrency hour_costs_;
};

template <class T>
Json form_of(const std::map<std::string, T, std::less<>>& figures) {
  Json json = Json::object();
  for (const auto& [id, each] : figures) json[id] = json_of(each);
  return json;
}

template <class T>
Result<void> read_into(std::map<std::string, T, std::less<>>& figures, const Json& file,
                       const std::string& key) {
  if (!file.is_object() || !file.contains(key) || !file.at(key).is_object()) {
    return fail(ErrorCode::kInvalidInput, "/" + key, "expected an object");
  }
  for (const auto& [id, json] : file.at(key).items()) {
    auto each = struct_from_json<T>(json, "/" + key + "/" + pointer_token(id));
    if (!each) return fail(each.error());
    figures[id] = std::move(*each);
  }
  return {};
}

Result<WorkFigures> figures_from(std::string_view text) {
  const auto file = parse_json(text, kMaxBytes);
  if (!file) return fail(file.error());
  WorkFigures figures;
  if (auto read = read_into(figures.checks, *file, "checks"); !read) return fail(read.error());
  if (auto read = read_into(figures.repairs, *file, "repairs"); !read) return fail(read.error());
  Json rest = *file;
  rest.erase("checks");
  rest.erase("repairs");
  const auto money = struct_from_json<Money>(rest, "");
  if (!money) return fail(money.error());
  figures.hour_costs = money->hour_costs;
  figures.currency = money->currency;
  return figures;
}

}  // namespace

double WorkFigures::check_minutes(std::string_view check, const Vocabulary& vocabulary) const {
  const auto own = checks.find(check);
  if (own != checks.end() && own->second.cases >= kFewestTimed) return own->second.minutes;
  const Entry* entry = vocabulary.find(EntryKind::kCheck, check);
  return entry == nullptr ? kUsualMinutes : entry->minutes.value_or(kUsualMinutes);
}

Result<WorkFigures> work_figures(const Store& store, const Vocabulary& vocabulary) {
  Gathering gathering(vocabulary);
  const auto read = store.for_each_latest([&](const Change& change) -> Result<void> {
    const auto record = case_from_json(change.body);
    if (!record) return fail(record.error());
    gathering.add(*record);
    return {};
  });
  if (!read) return fail(read.error());
  return gathering.figures();
}

Result<WorkFigures> read_figures(const ShopFolder& folder) {
  std::error_code ignored;
  if (!std::filesystem::exists(folder.figures(), ignored)) return WorkFigures{};
  std::ifstream file(folder.figures());
  std::stringstream text;
  text << file.rdbuf();
  auto figures = figures_from(text.str());
  if (!figures) {
    return fail(ErrorCode::kDamagedIndex, folder.figures().string(),
                "is not as written: " + figures.error().message + "; shoplore fit writes it anew");
  }
  return figures;
}

Result<void> keep_figures(const ShopFolder& folder, const WorkFigures& figures) {
  Json file = json_of(Money{figures.hour_costs, figures.currency});
  file["checks"] = form_of(figures.checks);
  file["repairs"] = form_of(figures.repairs);
  return replace_file(folder.figures(), file.dump(1) + "\n");
}

}  // namespace shoplore
