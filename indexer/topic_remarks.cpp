#include "indexer/topic_remarks.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

enum class Topic { kGearbox, kClutch, kAirCon, kExhaust, kBlower, kSuspension, kSteering, kAbs };

struct Sign {
  std::string_view part;  // of the id of a symptom or a check
  Topic topic;
};
// The first that fits decides: "air_con_clutch_clicks" is of the air conditioning.
constexpr auto kSigns = std::to_array<Sign>({{"air_con", Topic::kAirCon},
                                             {"ac_", Topic::kAirCon},
                                             {"clutch", Topic::kClutch},
                                             {"gearbox", Topic::kGearbox},
                                             {"harsh_shift", Topic::kGearbox},
                                             {"kickdown", Topic::kGearbox},
                                             {"one_gear", Topic::kGearbox},
                                             {"delayed_engagement", Topic::kGearbox},
                                             {"lock_up", Topic::kGearbox},
                                             {"no_reverse", Topic::kGearbox},
                                             {"exhaust", Topic::kExhaust},
                                             {"blower", Topic::kBlower},
                                             {"suspension", Topic::kSuspension},
                                             {"air_spring", Topic::kSuspension},
                                             {"steering", Topic::kSteering},
                                             {"abs_", Topic::kAbs}});

struct Remark {
  std::string_view stem;
  Topic topic;
  std::string_view symptom;
};
constexpr auto kRemarks =
    std::to_array<Remark>({{"slip", Topic::kGearbox, "slipping_gearbox"},
                           {"slip", Topic::kClutch, "clutch_slips"},
                           {"whine", Topic::kGearbox, "gearbox_whine"},
                           {"smell", Topic::kAirCon, "air_con_smells"},
                           {"blow", Topic::kExhaust, "exhaust_blow"},
                           {"nois", Topic::kBlower, "blower_noise"},
                           {"noisi", Topic::kBlower, "blower_noise"},
                           {"knock", Topic::kSuspension, "knock_from_suspension"},
                           {"plai", Topic::kSteering, "steering_play"},
                           {"play", Topic::kSteering, "steering_play"},
                           {"lamp", Topic::kAbs, "abs_lamp_on"},
                           {"lamp", Topic::kSteering, "steering_lamp_on"},
                           {"lamp", Topic::kSuspension, "air_suspension_lamp_on"}});

std::optional<Topic> topic_of(const RecognisedItem& item) {
  if (item.kind != ItemKind::kSymptom && item.kind != ItemKind::kCheck) return std::nullopt;
  for (const Sign& sign : kSigns) {
    if (item.id.find(sign.part) != std::string::npos) return sign.topic;
  }
  return std::nullopt;
}

class TopicRemarks {
 public:
  TopicRemarks(NotePage& page, const Vocabulary& vocabulary)
      : page_(page), vocabulary_(vocabulary) {}

  void read() {
    for (std::size_t i = 0; i < page_.size();) {
      std::size_t end = i + 1;
      while (page_.same_clause(end, i)) ++end;
      read_clause({i, end});
      i = end;
    }
  }

 private:
  // What a clause says when it is no more than a remark.
  struct Said {
    std::size_t word = 0;
    bool denied = false, lit = false, any = false;
  };

  void read_clause(TokenRange clause) {
    const auto said = said_in(clause);
    if (!said) return;
    const bool is_lamp = page_.token(said->word).stem == "lamp";
    if (is_lamp ? !said->lit : !said->denied) return;
    const std::string_view symptom = meant(said->word);
    if (symptom.empty() || !is_offered(symptom) || is_read(symptom)) return;
    RecognisedItem item =
        recognised_item(ItemKind::kSymptom, std::string(symptom), page_.span_of(clause));
    if (said->denied) item.state = Presence::kAbsent;
    page_.claim(clause);
    page_.keep(std::move(item));
  }

  std::optional<Said> said_in(TokenRange clause) const {
    Said said;
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const std::string& word = page_.word(i);
      const bool is_word = is_remark(page_.token(i).stem);
      if (page_.is_claimed(i) || (is_word && said.any)) return std::nullopt;
      if (is_word) {
        said.word = i;
        said.any = true;
      } else if (is_negation(word)) {
        said.denied = true;
      } else if (word == "on" || word == "lit") {
        said.lit = true;
      } else if (!is_stop_word(word) && word != "all" && word != "though") {
        return std::nullopt;
      }
    }
    return said.any ? std::optional(said) : std::nullopt;
  }

  static bool is_remark(std::string_view stem) {
    return std::any_of(kRemarks.begin(), kRemarks.end(),
                       [&](const Remark& remark) { return remark.stem == stem; });
  }

  // By the topic spoken of nearest before of which this word can be said; empty when there is none.
  std::string_view meant(std::size_t at) const {
    const std::size_t begin = page_.token(at).begin;
    std::size_t nearest = 0;
    std::string_view symptom;
    for (const RecognisedItem& item : page_.items()) {
      const auto topic = topic_of(item);
      if (!topic || item.span.end > begin || item.span.end < nearest) continue;
      for (const Remark& remark : kRemarks) {
        if (remark.topic != *topic || remark.stem != page_.token(at).stem) continue;
        nearest = item.span.end;
        symptom = remark.symptom;
      }
    }
    return symptom;
  }

  bool is_offered(std::string_view symptom) const {
    const Entry* entry = vocabulary_.find(EntryKind::kSymptom, symptom);
    return entry != nullptr && entry->retired.empty();
  }

  bool is_read(std::string_view symptom) const {
    return std::any_of(page_.items().begin(), page_.items().end(), [&](const auto& item) {
      return item.kind == ItemKind::kSymptom && item.id == symptom;
    });
  }

  NotePage& page_;
  const Vocabulary& vocabulary_;
};

}  // namespace

void read_topic_remarks(NotePage& page, const Vocabulary& vocabulary) {
  TopicRemarks(page, vocabulary).read();
}

}  // namespace shoplore
