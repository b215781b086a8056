#include "query/watch_out/watch_basis.hpp"

#include "query/checks/check_trust.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

Result<std::vector<ItemByCause>> items_by_cause(const CaseCounter& counter,
                                                std::string_view attribute) {
  const auto items = counter.items_beginning(attribute);
  if (!items) return fail(items.error());
  std::vector<ItemByCause> out;
  for (const EvidenceItem& item : *items) {
    auto cases = counter.by_cause({{item}, {}});
    if (!cases) return fail(cases.error());
    const std::uint32_t all = total(*cases);
    out.push_back({item, std::move(*cases), all});
  }
  return out;
}

Result<void> add_misled_rates(WatchBasis& basis, const CaseCounter& counter,
                              const Vocabulary& vocabulary) {
  const auto checks = trust_in_checks(counter, vocabulary);
  if (!checks) return fail(checks.error());
  Others passes, fails;
  for (const CheckTrust& check : *checks) {
    fails.count += check.fail.misled_us.count;
    fails.out_of += check.fail.misled_us.out_of;
    for (const CauseTrust& cause : check.by_cause) {
      if (!cause.told_about) continue;
      passes.count += cause.misled;
      passes.out_of += cause.pass + cause.fail;
    }
  }
  basis.pass_misled = passes.rate();
  basis.fail_misled = fails.rate();
  return {};
}

}  // namespace

Result<WatchBasis> watch_basis(const CaseCounter& counter, const Vocabulary& vocabulary) {
  WatchBasis basis;
  const struct {
    std::vector<std::uint32_t>& into;
    CountQuestion question;
  } counts[] = {{basis.seen, {}},
                {basis.asked, {{}, {}, {"earlier_repair:"}}},
                {basis.looked, {{}, {}, {"work_sign:"}}}};
  for (const auto& each : counts) {
    auto cases = counter.by_cause(each.question);
    if (!cases) return fail(cases.error());
    each.into = std::move(*cases);
  }
  const struct {
    std::vector<ItemByCause>& into;
    const char* attribute;
  } lists[] = {{basis.earlier_repairs, "earlier_repair:"},
               {basis.work_signs, "work_sign:"},
               {basis.contributing, "contributing:"},
               {basis.brands, "brand:"}};
  for (const auto& each : lists) {
    auto items = items_by_cause(counter, each.attribute);
    if (!items) return fail(items.error());
    each.into = std::move(*items);
  }
  auto added = add_misled_rates(basis, counter, vocabulary);
  if (!added) return fail(added.error());
  return basis;
}

}  // namespace shoplore
