#include "api/cli/print_mileage.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "api/cli/print_filter.hpp"
#include "api/cli/text_plot.hpp"
#include "api/wire/mileage_plot.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/evidence_item.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kMostFamilies = 8;
constexpr std::size_t kNarrowTable = 60;  // wider, the eye loses the row
// A lead in log-likelihood below this hardly tells two forms apart (lognormal_fit.hpp).
constexpr double kTellingLead = 2;
constexpr const char* kNotSeen = "not seen";
constexpr double kSameLead = .05;         // would be shown as 0.0
constexpr double kMostShown = 1'000'000;  // km or miles: a bound beyond it only says "far away"

double rounded(double value) {
  if (value < 1) return 0;
  const double step = std::pow(10, std::floor(std::log10(value)) - 2);
  return std::round(value / step) * step;
}

std::string figure(double value) {
  return thousands(std::llround(rounded(value)));
}

std::string in_both(double km) {
  return fmt::format("{} km ({} mi)", figure(km), figure(km / kKilometresPerMile));
}

std::string exact(Kilometres km) {
  return fmt::format("{} km ({} mi)", thousands(km.value),
                     figure(static_cast<double>(km.value) / kKilometresPerMile));
}

std::string bound(double value) {
  return value > kMostShown ? thousands(std::llround(kMostShown)) + "+" : figure(value);
}

std::string range(const Estimate& estimate, double divisor) {
  return bound(estimate.low / divisor) + "-" + bound(estimate.high / divisor);
}

std::string counted(std::uint64_t count) {
  return thousands(static_cast<std::int64_t>(count));
}

std::string none_or(std::uint64_t count) {
  return count == 0 ? "none" : counted(count);
}

std::string counted(std::uint64_t count, const char* one, const char* several) {
  return counted(count) + " " + (count == 1 ? one : several);
}

class MileagePrinter {
 public:
  MileagePrinter(const FailureMileage& answer, const Vocabulary& vocabulary, const Page& page)
      : answer_(answer), vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string print() {
    name_ = display_cause_key(answer_.cause, vocabulary_);
    Filter filter;
    filter.make = answer_.scope.make;
    filter.engine_family = answer_.scope.engine_family;
    scope_ = filter_text(filter);
    if (answer_.cases.cases == 0) {
      nothing();
      return std::move(out_);
    }
    out_ += ink_.bold(name_) + (scope_.empty() ? "" : " (" + scope_ + ")") + "\n\n";
    cases();
    first_lives();
    replaced();
    caveats();
    return std::move(out_);
  }

 private:
  void paragraph(const std::string& text) { out_ += hang("  ", text, page_.width); }
  void heading(const std::string& text) { out_ += ink_.heading(text) + "\n"; }

  void nothing() {
    const std::string of = scope_.empty() ? "" : " (" + scope_ + ")";
    out_ += answer_.vehicles.in_scope == 0
                ? hang("", "No vehicle" + of + " is on record.", page_.width)
                : hang("",
                       fmt::format("No case of {}{} is on record, so there is nothing to tell. "
                                   "Looked through {}.",
                                   name_, of,
                                   counted(answer_.vehicles.in_scope, "vehicle", "vehicles")),
                       page_.width);
  }

  void cases() {
    const CaseMileages& cases = answer_.cases;
    heading("At what mileage it came in");
    std::string text = counted(cases.cases, "case", "cases");
    if (cases.beside_main > 0) text += fmt::format(" ({} beside another cause)", cases.beside_main);
    if (cases.km.size() < cases.cases) {
      text += fmt::format(", {} with the mileage", counted(cases.km.size()));
    }
    if (cases.km.empty()) {
      paragraph(text + ".");
    } else if (cases.km.size() < kFewestToFit) {
      text += ": at " + exact(cases.km.front());
      if (cases.km.size() > 1) text += " and " + exact(cases.km.back());
      paragraph(text + ".");
    } else {
      const MileageQuartiles q = *cases.quartiles();
      paragraph(text + ".");
      out_ += table({{"a quarter of them by", {in_both(q.quarter)}},
                     {"half of them by", {in_both(q.half)}},
                     {"three quarters by", {in_both(q.three_quarters)}},
                     {"the first and the last at",
                      {fmt::format("{} and {} km", thousands(std::llround(q.least)),
                                   thousands(std::llround(q.greatest)))}}},
                    2, std::min(page_.width, kNarrowTable));
    }
    out_ += "\n";
  }

  std::string population() const {
    if (answer_.families.empty()) return "vehicles";
    std::string names;
    for (std::size_t i = 0; i < std::min(kMostFamilies, answer_.families.size()); ++i) {
      const std::string shown = display_vehicle_item({"engine_family", answer_.families[i]});
      names += (i == 0 ? "" : ", ") + shown.substr(shown.rfind(' ') + 1);
    }
    const std::size_t more =
        answer_.families.size() - std::min(kMostFamilies, answer_.families.size());
    if (more > 0) names += fmt::format(" and {} more", more);
    return fmt::format("vehicles of engine famil{} {}", answer_.families.size() == 1 ? "y" : "ies",
                       names);
  }

  void first_lives() {
    const LifeAnswer& life = answer_.first;
    heading("How long the part lives");
    if (life.lives == 0) {
      paragraph("No vehicle was seen with the part whole and again later, so nothing can be said.");
    } else {
      paragraph(fmt::format(
          "{} {}, followed from the first visit here to the last: {} failed in {} driven.",
          counted(life.lives), population(), none_or(life.failures), in_both(life.km_at_risk)));
    }
    not_followed();
    if (life.curve) {
      out_ += "\n";
      const Plot plot = mileage_plot(answer_, vocabulary_);
      paragraph("Share still whole, " + plot.y.label + ":");
      out_ += text_of(plot, page_.width);
    }
    estimates(life);
    out_ += "\n";
  }

  void not_followed() {
    const VehicleCounts& v = answer_.vehicles;
    std::string apart;
    const auto add = [&](std::uint32_t count, const std::string& why) {
      if (count > 0) apart += (apart.empty() ? "" : "; ") + counted(count) + " " + why;
    };
    add(v.failed_at_first,
        "came in with it at the first visit (they tell when it goes, not how many last longer)");
    add(v.no_distance, "with nothing driven between visits");
    add(v.no_km, "without mileage");
    add(v.backwards, "whose mileage runs backwards");
    add(v.family_unknown, "of an engine family not written down");
    if (!apart.empty()) paragraph("Not among them: " + apart + ".");
  }

  template <class Fit>
  static void add_rows(std::vector<TableRow>& rows, const Fit& fit, const std::string& form,
                       const LifeAnswer& life) {
    for (const auto& [name, share] : {std::pair("B10", .1), std::pair("B50", .5)}) {
      const Estimate age = failed_by(fit, share);
      TableRow row{fmt::format("{}, {}", name, form), {}};
      for (const double unit : {1.0, kKilometresPerMile}) {
        const auto [value, interval] = age_cells(life, age, unit);
        row.cells.insert(row.cells.end(), {value, interval});
      }
      rows.push_back(std::move(row));
    }
  }

  static std::pair<std::string, std::string> age_cells(const LifeAnswer& life, const Estimate& age,
                                                       double unit) {
    switch (age_told(life, age)) {
      case AgeTold::kTooFew:
        return {"-", "too few to tell"};
      case AgeTold::kBeforeSeen:
        return {"< " + figure(life.starts / unit), kNotSeen};
      case AgeTold::kBeyondSeen:
        return {"> " + figure(life.longest / unit), kNotSeen};
      case AgeTold::kTold:
        break;
    }
    return {figure(age.value / unit), range(age, unit)};
  }

  void estimates(const LifeAnswer& life) {
    if (!life.fit) {
      if (life.failures > 0) {
        paragraph(
            life.failures < kFewestToFit
                ? fmt::format("Nothing is estimated from fewer than {} failures.", kFewestToFit)
                : "No life could be fitted: " + life.not_fitted + ".");
      }
      return;
    }
    const FittedLife& fit = *life.fit;
    std::vector<TableRow> rows{{"failed by", {"km", "90 % interval", "mi", "90 % interval"}}};
    add_rows(rows, fit.weibull, "Weibull", life);
    if (fit.lognormal) add_rows(rows, *fit.lognormal, "lognormal", life);
    out_ += "\n" + table(rows, 2, std::min(page_.width, kDefaultWidth));
    paragraph("B10, B50: the mileage by which 10 % and 50 % have failed.");
    const bool unseen = std::any_of(rows.begin(), rows.end(),
                                    [](const TableRow& row) { return row.cells[1] == kNotSeen; });
    if (unseen) paragraph("Not seen: at ages at which too few were followed only the form speaks.");
    paragraph(trend(fit));
    paragraph(comparison(fit));
  }

  static std::string trend(const FittedLife& fit) {
    const Estimate shape = shape_of(fit.weibull);
    if (!tells(shape)) return "Whether it wears out cannot be told from so few.";
    const std::string figures =
        fmt::format(" (Weibull shape {:.1f}, 90 % interval {:.1f} to {:.1f}; scale {} km)",
                    shape.value, shape.low, shape.high, bound(fit.weibull.scale));
    switch (fit.trend) {
      case HazardTrend::kRising:
        return "It wears out: the further it has gone, the likelier it fails in the next km" +
               figures + ".";
      case HazardTrend::kFalling:
        return "Early failures: a part that has lasted so far fails less in the next km" + figures +
               ".";
      case HazardTrend::kUndecided:
        break;
    }
    return "By chance, as far as these can tell: neither wear nor early failures stand out" +
           figures + ".";
  }

  static std::string comparison(const FittedLife& fit) {
    if (!fit.lognormal) return "A lognormal life could not be fitted beside it.";
    const bool weibull = fit.comparison->better == LifeForm::kWeibull;
    if (fit.comparison->lead < kSameLead) return "Weibull and lognormal fit equally well.";
    return fmt::format(
        "Better fit: {}, by {:.1f} in log-likelihood{}.", weibull ? "Weibull" : "lognormal",
        fit.comparison->lead,
        fit.comparison->lead < kTellingLead ? ", which hardly tells them apart" : "");
  }

  void replaced() {
    if (!answer_.since_replaced) return;
    const LifeAnswer& life = *answer_.since_replaced;
    heading("After it was replaced here");
    paragraph(fmt::format(
        "{} of {} fitted were seen again and followed from that km: {} failed in {} driven, the "
        "longest went {}. A part that holds brings nobody in, so those not seen again are likelier "
        "whole.",
        counted(life.lives), counted(answer_.replaced_here, "part", "parts"),
        none_or(life.failures), in_both(life.km_at_risk), in_both(life.longest)));
    estimates(life);
    out_ += "\n";
  }

  void caveats() {
    out_ += hang("",
                 "A workshop sees only what comes in. Vehicles mended elsewhere, sold or scrapped "
                 "are not in it; one that drove on without coming again adds nothing, so parts may "
                 "well last longer than this; a part replaced elsewhere is taken for the first.",
                 page_.width);
    out_ += hang("", "Counts are evidence, not a forecast for one vehicle.", page_.width);
  }

  const FailureMileage& answer_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string name_, scope_, out_;
};

}  // namespace

std::string print_mileage(const FailureMileage& answer, const Vocabulary& vocabulary,
                          const Page& page) {
  return MileagePrinter(answer, vocabulary, page).print();
}

}  // namespace shoplore
