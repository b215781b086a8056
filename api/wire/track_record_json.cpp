#include "api/wire/track_record_json.hpp"

#include "indexer/json_form.hpp"

namespace shoplore {
namespace {

Json bins_json(const std::vector<ReliabilityBin>& bins) {
  Json list = Json::array();
  for (std::size_t i = 0; i < bins.size(); ++i) {
    const auto width = 1.0 / static_cast<double>(bins.size());
    list.push_back({{"above", static_cast<double>(i) * width},
                    {"questions", bins[i].count},
                    {"said", bins[i].said},
                    {"right", bins[i].right}});
  }
  return list;
}

Json scores_json(const Scores& scores, double hidden) {
  return {{"hidden", hidden},
          {"questions", scores.questions},
          {"first", scores.first},
          {"first_three", scores.first_three},
          {"mean_reciprocal_rank", scores.mean_reciprocal_rank},
          {"log_loss", scores.log_loss},
          {"brier", scores.brier},
          {"calibration_error", scores.calibration_error},
          {"reliability", bins_json(scores.bins)}};
}

Json row_json(const TrackRecordRow& row) {
  Json levels = Json::array();
  for (std::size_t i = 0; i < row.levels.size(); ++i) {
    levels.push_back(scores_json(row.levels[i], kHiddenLevels[i]));
  }
  return {{"name", row.name}, {"levels", levels}};
}

Json rows_json(const std::vector<TrackRecordRow>& rows) {
  Json list = Json::array();
  for (const TrackRecordRow& row : rows) list.push_back(row_json(row));
  return list;
}

}  // namespace

std::string track_record_json(const TrackRecord& record) {
  return Json{{"cases", record.cases},
              {"only_of_their_cause", record.only_of_their_cause},
              {"enough_to_tell", record.cases >= kFewestToTell},
              {"all", row_json(record.all)},
              {"by_cases_of_the_cause", rows_json(record.by_seen)},
              {"by_engine_family", rows_json(record.by_family)},
              {"by_year", rows_json(record.by_year)}}
      .dump();
}

std::string fit_json(const KeptKnobs& kept) {
  return Json{{"cases", kept.cases},
              {"questions", kept.questions},
              {"revision", kept.revision.value},
              {"log_loss", kept.log_loss},
              {"start_log_loss", kept.start_log_loss},
              {"smoothing", kept.knobs.smoothing},
              {"rho", kept.knobs.rho},
              {"gamma", kept.knobs.gamma},
              {"eta", kept.knobs.eta},
              {"growth", kept.knobs.growth},
              {"strength", kept.knobs.strength},
              {"listing", kept.knobs.listing},
              {"words", kept.knobs.words},
              {"scarcity", kept.knobs.scarcity},
              {"sureness", kept.knobs.sureness}}
      .dump();
}

}  // namespace shoplore
