#include "query/ranking/kept_knobs.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>

#include "indexer/file_lock.hpp"
#include "indexer/json_form.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<RankingKnobs> auto& k) {
  io.required("smoothing", k.smoothing);
  io.required("rho", k.rho);
  io.required("gamma", k.gamma);
  io.required("eta", k.eta);
  io.required("sureness", k.sureness);
  io.required("growth", k.growth);
  io.required("words", k.words);
  io.required("listing", k.listing);
  io.defaulted("scarcity", k.scarcity);  // came in later than the others
  io.required("strength", k.strength);
}

template <class Io>
void fields(Io& io, Of<KeptKnobs> auto& k) {
  io.required("knobs", k.knobs);
  io.required("revision", k.revision.value);
  io.required("cases", k.cases);
  io.required("questions", k.questions);
  io.required("log_loss", k.log_loss);
  io.required("start_log_loss", k.start_log_loss);
}

namespace {

constexpr std::size_t kMaxBytes = 64 * 1024;

}  // namespace

Result<std::optional<KeptKnobs>> read_knobs(const ShopFolder& folder) {
  std::error_code ignored;
  if (!std::filesystem::exists(folder.ranking(), ignored)) return std::optional<KeptKnobs>();
  std::ifstream file(folder.ranking());
  std::stringstream text;
  text << file.rdbuf();
  const auto json = parse_json(text.str(), kMaxBytes);
  auto kept =
      json ? struct_from_json<KeptKnobs>(*json, "the file") : Result<KeptKnobs>(fail(json.error()));
  if (!kept) {
    return fail(ErrorCode::kDamagedIndex, folder.ranking().string(),
                "is not as written: " + kept.error().message + "; shoplore fit writes it anew");
  }
  return std::optional(*kept);
}

Result<void> keep_knobs(const ShopFolder& folder, const KeptKnobs& kept) {
  return replace_file(folder.ranking(), json_of(kept).dump(2) + "\n");
}

bool is_fit_due(const std::optional<KeptKnobs>& kept, std::int64_t cases) {
  if (cases < static_cast<std::int64_t>(kFewestCasesToFit)) return false;
  return !kept || cases * 10 >= kept->cases * 11;
}

}  // namespace shoplore
