#include "query/watch_out/cleared_codes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

const EvidenceItem kAtArrival{"codes:at_arrival", "present"}, kLater{"codes:later", "present"};

constexpr std::array<std::string_view, 11> kLampsWithCodes{
    "engine_lamp_on",     "filter_lamp_on",         "abs_lamp_on",       "stability_lamp_on",
    "nox_lamp_on",        "airbag_lamp_on",         "steering_lamp_on",  "hybrid_lamp_on",
    "gear_lamp_flashing", "air_suspension_lamp_on", "glow_lamp_flashing"};

bool is_lamp_with_codes(const EvidenceItem& item) {
  return item.value == "present" &&
         std::any_of(kLampsWithCodes.begin(), kLampsWithCodes.end(), [&](std::string_view id) {
           return item.attribute == "symptom:" + std::string(id);
         });
}

// What makes the absence of codes worthless, as the question states it.
struct Reason {
  EvidenceItem item;
  std::string said, cases;  // how the warning begins; what such cases are called
};

std::vector<Reason> reasons(const WatchQuestion& question) {
  std::vector<Reason> out;
  const auto name = [&](const EvidenceItem& item) {
    return display_item(item, question.vocabulary);
  };
  for (const char* id : {"codes_recently_cleared", "battery_disconnected_lately"}) {
    const EvidenceItem sign{"work_sign:" + std::string(id), "present"};
    if (states(question, sign)) out.push_back({sign, name(sign), "with that sign"});
  }
  const bool scanned =
      std::find(question.known.begin(), question.known.end(), "scanned") != question.known.end();
  const bool has_code =
      std::any_of(question.items.begin(), question.items.end(), [](const EvidenceItem& item) {
        return item.attribute.starts_with("code:") && item.value == "present";
      });
  if (!scanned || has_code) return out;
  for (const EvidenceItem& item : question.items) {
    if (!is_lamp_with_codes(item)) continue;
    out.push_back({item, "no codes although: " + name(item), "like that"});
  }
  return out;
}

// Cases of that kind, and those of them that had codes later.
Result<Share> had_codes_later(const Reason& reason, const WatchQuestion& question) {
  const auto count = [&](std::vector<EvidenceItem> items) -> Result<std::uint32_t> {
    items.push_back(reason.item);
    const auto cases = question.counter.by_cause({std::move(items), question.filter, {"code:"}});
    if (!cases) return fail(cases.error());
    return total(*cases);
  };
  const auto all = count({}), at_arrival = count({kAtArrival}), later = count({kLater}),
             both = count({kAtArrival, kLater});
  for (const auto* each : {&all, &at_arrival, &later, &both}) {
    if (!*each) return fail(each->error());
  }
  return share_of(*later - *both, *all - *at_arrival);
}

Result<std::vector<CaseId>> cases_with_codes_later(const Reason& reason,
                                                   const WatchQuestion& question) {
  const std::vector<EvidenceItem> later{reason.item, kLater};
  const auto found = question.counter.cases({later, question.filter, {"code:"}});
  if (!found) return fail(found.error());
  const auto before =
      question.counter.cases({{reason.item, kLater, kAtArrival}, question.filter, {"code:"}});
  if (!before) return fail(before.error());
  std::vector<CaseId> ids;
  for (auto it = found->rbegin(); it != found->rend() && ids.size() < kCasesBehind; ++it) {
    const bool had_before = std::any_of(before->begin(), before->end(),
                                        [&](const CaseCause& each) { return each.id == it->id; });
    if (!had_before) ids.push_back(it->id);
  }
  return ids;
}

}  // namespace

Result<std::vector<Warning>> warn_of_cleared_codes(const WatchQuestion& question) {
  std::vector<Warning> warnings;
  for (const Reason& reason : reasons(question)) {
    const auto share = had_codes_later(reason, question);
    if (!share) return fail(share.error());
    Warning warning;
    warning.kind = WarningKind::kCodesCleared;
    warning.stated = Stated::kYes;
    warning.about = id_of_attribute(reason.item.attribute);
    warning.minutes = kUsualMinutes;
    warning.how_often = 1;
    warning.text = reason.said +
                   ": a code that is not there now proves nothing, and counts against no cause. "
                   "Drive it and read the codes again";
    if (share->out_of >= kEnoughToWarn && share->count > 0) {
      warning.share = *share;
      warning.how_often = static_cast<double>(share->count) / share->out_of;
      warning.text += fmt::format(". Of {} cases {} and no code at first, {} had one later ({})",
                                  share->out_of, reason.cases, share->count, interval_text(*share));
      auto behind = cases_with_codes_later(reason, question);
      if (!behind) return fail(behind.error());
      warning.cases = std::move(*behind);
    }
    warnings.push_back(std::move(warning));
  }
  return warnings;
}

}  // namespace shoplore
