#include "api/cli/declared_verbs.hpp"

#include "api/cli/option_values.hpp"

namespace shoplore {

CLI::App* verb(CLI::App& app, const std::string& name, const std::string& about) {
  CLI::App* sub = app.add_subcommand(name, about);
  sub->fallthrough();  // --shop may stand after the verb
  return sub;
}

void add_filter(CLI::App* sub, FilterText& f) {
  sub->add_option("--make", f.make, "Only cases of this make");
  sub->add_option("--engine-family", f.engine_family, "Only cases of this engine family");
  sub->add_option("--mileage", f.mileage, "LOW..HIGH km: from LOW to below HIGH");
  sub->add_option("--year", f.year, "LOW..HIGH model years, both included");
  sub->add_option("--closed-since", f.closed_since, "Only cases closed that day or later");
  sub->add_option("--proof", f.proof, "Only causes so proved: seen,measured,cured_by_fix,presumed");
}

void add_json(CLI::App* sub, bool& json) {
  sub->add_flag("--json", json, "One JSON object instead of text");
}

Output output_of(bool json) {
  return json ? Output::kJson : Output::kText;
}

std::string joined_words(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += ' ';
    text += word;
  }
  return text;
}

Result<Filter> read_filter(const FilterText& text) {
  Filter filter;
  filter.make = text.make;
  filter.engine_family = text.engine_family;
  if (!text.mileage.empty()) {
    const auto band = parse_mileage_band(text.mileage);
    if (!band) return fail(band.error());
    filter.mileage = *band;
  }
  if (!text.year.empty()) {
    const auto band = parse_year_band(text.year);
    if (!band) return fail(band.error());
    filter.model_year = *band;
  }
  if (!text.closed_since.empty()) {
    const auto day = parse_day(text.closed_since, "--closed-since");
    if (!day) return fail(day.error());
    filter.closed_since = *day;
  }
  if (!text.proof.empty()) {
    auto proofs = parse_proofs(text.proof);
    if (!proofs) return fail(proofs.error());
    filter.proofs = std::move(*proofs);
  }
  return filter;
}

}  // namespace shoplore
