// Practising: rounds begun, played and judged, and an apprentice's progress. The one place behind
// the command line and HTTP.
//
// A round stays open until it is committed, over restarts, within the bounds of
// apprentice_record.hpp. Before that nothing handed out depends on the case's cause but the
// verdicts of checks asked for. A belief that was stated is kept and not scored until then.
// Lifetime: refers to what it is given. Threads: one object a thread; files are locked.
// Fails with kNotFound for a round that is not there (any more) and where these records have
// nothing to ask (at "records"); kConflict for a round that is committed already or of another kind
// than what is done to it, or not ready to be committed; kInvalidInput naming the place for all
// that is wrong with an answer; else as apprentice_record.hpp, the store and the counter.
#pragma once

#include "query/practice/exercise_draw.hpp"
#include "query/practice/practice_progress.hpp"

namespace shoplore {

// Steps of one round.
inline constexpr std::size_t kMostSteps = 40;

// A statement of belief as somebody typed it: causes by words.
struct StatedBelief {
  std::string cause;
  double percent = 0;
};

class PracticeDesk {
 public:
  PracticeDesk(const ShopFolder& folder, const PracticeGround& ground)
      : folder_(folder), ground_(ground) {}

  [[nodiscard]] Result<RoundView> start(const RoundWish& wish) const;
  [[nodiscard]] Result<RoundView> read(const std::string& id) const;

  // States a belief; the last one before committing is scored. `place` of the i-th part in errors
  // is "/beliefs/<i>".
  [[nodiscard]] Result<RoundView> believe(const std::string& id,
                                          const std::vector<StatedBelief>& beliefs) const;

  // Asks for a check, by id or words, as the case recorded it. Asked twice it answers the same.
  [[nodiscard]] Result<RoundView> check(const std::string& id, std::string_view words) const;

  struct Committed {
    RoundView round;
    PracticeFeedback feedback;
  };
  [[nodiscard]] Result<Committed> commit(const std::string& id, const Commitment& commitment) const;

  // Of a committed round, as the records are now.
  [[nodiscard]] Result<Committed> feedback(const std::string& id) const;

  // Names of causes of these records, and of checks, that fit the words; all without any.
  [[nodiscard]] Result<std::vector<std::string>> causes_like(std::string_view words) const;
  [[nodiscard]] std::vector<std::string> checks_like(std::string_view words) const;

 private:
  [[nodiscard]] Result<PracticeRound> kept_round(const std::string& id) const;
  [[nodiscard]] Result<PracticeRound> change_round(
      const std::string& id,
      const std::function<Result<void>(PracticeRound&, ApprenticeRecord&)>& change) const;
  [[nodiscard]] Result<RoundView> view(const PracticeRound& round) const;
  [[nodiscard]] Result<std::string> named_check(std::string_view words) const;
  [[nodiscard]] Result<std::string> choice_committed(const PracticeRound& round,
                                                     const Commitment& commitment) const;

  const ShopFolder& folder_;
  PracticeGround ground_;
};

}  // namespace shoplore
