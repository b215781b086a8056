// Time runs in as many steps as there are closed cases, shorter where the calendar has more
// arrivals. Each step closes one case: the second fault of the vehicle before it, else a comeback
// that has fallen due, else a new arrival whose pattern is drawn by its share less its comebacks,
// so that comebacks included every pattern has its prior_of.
//
// A second fault is drawn from the patterns in proportion to how often each befalls just such a
// vehicle in that month, so its vehicle has the pattern's own distribution: with P(v) the chance of
// a vehicle, sum over first faults a of P(a) P(v|a) times P(b) P(v|b) / P(v) is P(b) P(v|b). It is
// left out when it would be the first fault again or the first comes back, which shifts no rate by
// more than its share of kSecondFault.
#include "corpus-demo/generator.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <queue>
#include <utility>
#include <vector>

#include "corpus-demo/calendar.hpp"
#include "corpus-demo/case_closing.hpp"
#include "corpus-demo/case_draw.hpp"
#include "corpus-demo/fleet.hpp"
#include "corpus-demo/mess.hpp"
#include "corpus-demo/narrative.hpp"
#include "corpus-demo/random.hpp"
#include "corpus-demo/showcases.hpp"

namespace shoplore {
namespace {

using std::chrono::days;

constexpr double kKnownVehicle = 0.6, kSecondFault = 0.04;
constexpr double kVisits = 0.26, kEndedShare = 0.015, kEnquiries = 0.015;

struct Comeback {
  Date due;
  std::size_t pattern = 0;
  const FixPlan* plan = nullptr;
  DemoVehicle vehicle;  // as it will be on that day
  std::string follows;
  FailedRepair failed;
  friend bool operator>(const Comeback& a, const Comeback& b) {
    return std::pair(a.due, a.follows) > std::pair(b.due, b.follows);
  }
};

// Another fault of a vehicle that is here already.
struct SecondFault {
  std::size_t pattern = 0;
  DemoVehicle vehicle;
  Date opened;
  std::string visit;
};

class Workshop {
 public:
  Workshop(const World& world, const Vocabulary& vocabulary, const DemoSettings& settings,
           const std::function<void(const DemoCase&)>& emit)
      : world_(world),
        vocabulary_(vocabulary),
        settings_(settings),
        emit_(emit),
        random_(settings.seed),
        calendar_(world),
        fleet_(world.families.size()) {}

  void run() {
    const auto steps = static_cast<double>(settings_.closed_cases);
    for (std::int64_t i = 0; i < settings_.closed_cases; ++i) {
      const Date day = calendar_.day_of(static_cast<double>(i) / steps);
      close_one(day);
      others(day);
    }
    const std::int64_t still_here = std::max<std::int64_t>(4, settings_.closed_cases / 300);
    for (std::int64_t i = 0; i < still_here; ++i) still_open();
    for (; !comebacks_.empty(); comebacks_.pop()) back_but_open(comebacks_.top());
    for (Case& each : showcases()) emit_({std::move(each), std::nullopt, Hand::kShowcase});
  }

 private:
  std::string next_ref() { return fmt::format("demo-{:06}", ++refs_); }

  // For texts: a vocabulary with another phrase changes words and nothing else.
  Random another_stream() { return Random(random_.next()); }

  std::size_t arriving_pattern(Date day) { return random_.pick(calendar_.arrivals(day)); }

  DemoVehicle arriving_vehicle(const FailurePattern& pattern, Date day) {
    DemoVehicle wanted = draw_vehicle(world_, pattern, day, random_);
    if (!random_.chance(kKnownVehicle)) return wanted;
    if (const auto known = fleet_.take_like(wanted)) {
      wanted.token = known->token;
      wanted.model_year = known->model_year;
    }
    return wanted;
  }

  void close_one(Date day) {
    if (second_) {
      const SecondFault second = *std::exchange(second_, std::nullopt);
      close_case(second.pattern, second.vehicle, second.opened, nullptr, &second);
      return;
    }
    if (!comebacks_.empty() && comebacks_.top().due <= day) {
      const Comeback comeback = comebacks_.top();
      comebacks_.pop();
      close_case(comeback.pattern, comeback.vehicle, comeback.due, &comeback);
      return;
    }
    const std::size_t pattern = arriving_pattern(day);
    close_case(pattern, arriving_vehicle(world_.patterns[pattern], day), day, nullptr);
  }

  // Everything up to the findings: the part that open, ended and closed cases share.
  Case begin_case(const FailurePattern& pattern, const DemoVehicle& vehicle, Date opened,
                  const Comeback* comeback, const Recording& recording) {
    Case record;
    record.ref = next_ref();
    record.opened = opened;
    const double way_in = random_.uniform();
    record.source = way_in < 0.80   ? Source::kCounter
                    : way_in < 0.92 ? Source::kPhone
                                    : Source::kTow;
    record.visit =
        Visit{record.source == Source::kTow ? VisitKind::kBreakdown : VisitKind::kComplaint, ""};
    write_vehicle(record, world_, vehicle, random_);
    if (comeback != nullptr) record.follows = comeback->follows;
    draw_complaint(record, world_, pattern, comeback ? &comeback->failed : nullptr, recording,
                   random_);
    return record;
  }

  void close_case(std::size_t number, const DemoVehicle& vehicle, Date opened,
                  const Comeback* comeback, const SecondFault* second = nullptr) {
    const FailurePattern& pattern = world_.patterns[number];
    const Recording& recording = draw_recording(random_);
    Case record = begin_case(pattern, vehicle, opened, comeback, recording);
    draw_findings(record, world_, pattern, world_.families[vehicle.family], vocabulary_, recording,
                  random_);
    record.state = CaseState::kClosed;
    record.closed = std::min(Date{opened.days + days(random_.integer(0, 4))}, kLastDay);
    const FixPlan& plan = draw_plan(pattern);
    write_closing(record, pattern, plan, vocabulary_, random_);
    const bool alone = comeback == nullptr && second == nullptr;
    if (alone) look_for_second_fault(record, number, vehicle);
    if (second != nullptr) record.visit->ref = second->visit;
    record.outcome = outcome(record, number, plan, vehicle);
    const bool messy = random_.chance(kMessyShare);
    const Care care = messy && random_.chance(0.5) ? Care::kTerse : Care::kOrdinary;
    Random words = another_stream();
    record.complaint = complaint_text(record, vocabulary_, care, words);
    record.notes = notes_text(record, pattern, vocabulary_, care, words);
    if (messy) spoil(record, random_);
    emit_({std::move(record), number, messy ? Hand::kMessy : Hand::kOrdinary});
  }

  void look_for_second_fault(Case& record, std::size_t first, const DemoVehicle& vehicle) {
    if (!random_.chance(kSecondFault)) return;
    const auto band = static_cast<std::size_t>(
        std::min<std::int64_t>(vehicle.mileage.value / kBandKm, kBandCount - 1));
    std::vector<double> weights = calendar_.arrivals(record.opened);
    for (std::size_t i = 0; i < weights.size(); ++i) {
      weights[i] *= vehicle_rate(world_, world_.patterns[i], vehicle.family, band, vehicle.facts);
    }
    const std::size_t pattern = random_.pick(weights);
    if (pattern == first) return;
    second_ = SecondFault{pattern, vehicle, record.opened, "visit-" + record.ref};
  }

  const FixPlan& draw_plan(const FailurePattern& pattern) {
    std::vector<double> weights;
    for (const FixPlan& plan : pattern.plans) weights.push_back(plan.share);
    return pattern.plans[random_.pick(weights)];
  }

  // Decides whether the vehicle comes back and, if so, when; the comeback then waits its turn.
  Outcome outcome(Case& record, std::size_t pattern, const FixPlan& plan,
                  const DemoVehicle& vehicle) {
    const Date closed = *record.closed;
    const bool comes_back = random_.chance(plan.comes_back);
    // Most comebacks show within half a year.
    const std::int64_t soon = random_.integer(12, 60);
    const Date due{closed.days + days(soon + random_.integer(0, 140))};
    DemoVehicle later = vehicle;
    later.seen = comes_back ? due : closed;
    if (comes_back) second_.reset();
    if (comes_back && due <= kLastDay) {
      later.mileage = driven(vehicle.mileage, (due.days - closed.days).count());
      const Kilometres since{later.mileage.value - vehicle.mileage.value};
      comebacks_.push({due, pattern, &plan, later, record.ref, {&plan, closed, since}});
      return {OutcomeStatus::kCameBack, due, later.mileage, plan.reason};
    }
    if (second_) {
      record.visit->ref = second_->visit;  // the vehicle stays for its other fault
    } else {
      fleet_.add(later);
    }
    const Date asked{closed.days + days(random_.integer(60, 420))};
    const bool too_early = closed.days + days(60) > kLastDay.days;
    if (comes_back || too_early || random_.chance(0.2))
      return {OutcomeStatus::kUnknown, {}, {}, {}};
    return {OutcomeStatus::kStayedFixed, std::min(asked, kLastDay), {}, {}};
  }

  // Stays inside the mileage band, so that a comeback's band has its pattern's true share.
  Kilometres driven(Kilometres from, std::int64_t day_count) {
    const std::int64_t to = from.value + day_count * random_.integer(20, 150);
    if (from.value >= 250'000) return {to};
    return {std::min(to, from.value / 50'000 * 50'000 + 49'999)};
  }

  void others(Date day) {
    if (random_.chance(kVisits)) visit(day);
    if (random_.chance(kEndedShare)) ended(day);
    if (random_.chance(kEnquiries)) enquiry(day);
  }

  void visit(Date day) {
    DemoVehicle vehicle;
    if (auto known = fleet_.take_any(day, random_)) {
      vehicle = *known;
      vehicle.mileage.value += (day.days - vehicle.seen.days).count() * random_.integer(15, 110);
      vehicle.seen = day;
    } else {
      vehicle = draw_vehicle(world_, world_.patterns[arriving_pattern(day)], day, random_);
    }
    Case record;
    record.ref = next_ref();
    record.state = CaseState::kNoComplaint;
    record.opened = day;
    record.source = Source::kCounter;
    const double kind = random_.uniform();
    record.visit = Visit{kind < 0.65   ? VisitKind::kService
                         : kind < 0.94 ? VisitKind::kInspection
                                       : VisitKind::kPrePurchase,
                         ""};
    write_vehicle(record, world_, vehicle, random_);
    record.notes = visit_text(record.visit->kind, random_);
    fleet_.add(vehicle);
    emit_({std::move(record), std::nullopt});
  }

  // Each way of ending in turn, so that even a small workshop has all of them.
  void ended(Date day) {
    static constexpr std::array kHow{EndedHow::kDeclined, EndedHow::kTemporary, EndedHow::kSentOut,
                                     EndedHow::kNotReproduced, EndedHow::kScrapped};
    const std::size_t pattern = arriving_pattern(day);
    const DemoVehicle vehicle = draw_vehicle(world_, world_.patterns[pattern], day, random_);
    const Recording& recording = draw_recording(random_);
    Case record = begin_case(world_.patterns[pattern], vehicle, day, nullptr, recording);
    record.state = CaseState::kEnded;
    record.ended = kHow[ended_++ % kHow.size()];
    record.closed = std::min(Date{day.days + days(random_.integer(0, 6))}, kLastDay);
    if (record.ended == EndedHow::kDeclined) {
      record.declined.push_back(draw_declined(*record.closed, random_));
    }
    Random words = another_stream();
    record.complaint = complaint_text(record, vocabulary_, Care::kOrdinary, words);
    record.notes = ended_text(*record.ended, random_);
    emit_({std::move(record), pattern});
  }

  void enquiry(Date day) {
    const std::size_t pattern = arriving_pattern(day);
    const DemoVehicle vehicle = draw_vehicle(world_, world_.patterns[pattern], day, random_);
    Case record =
        begin_case(world_.patterns[pattern], vehicle, day, nullptr, draw_recording(random_));
    record.state = CaseState::kEnquiry;
    record.source = Source::kPhone;
    record.visit.reset();
    record.vehicle.token.clear();
    record.scanned.reset();
    record.codes.clear();
    Random words = another_stream();
    record.complaint = complaint_text(record, vocabulary_, Care::kTerse, words);
    emit_({std::move(record), std::nullopt});
  }

  void still_open() {
    const Date day{kLastDay.days - days(random_.integer(0, 6))};
    const std::size_t pattern = arriving_pattern(day);
    const DemoVehicle vehicle = draw_vehicle(world_, world_.patterns[pattern], day, random_);
    leave_open(begin_case(world_.patterns[pattern], vehicle, day, nullptr, draw_recording(random_)),
               pattern);
  }

  void back_but_open(const Comeback& comeback) {
    leave_open(begin_case(world_.patterns[comeback.pattern], comeback.vehicle, comeback.due,
                          &comeback, draw_recording(random_)),
               comeback.pattern);
  }

  void leave_open(Case record, std::size_t pattern) {
    record.state = random_.chance(0.5) ? CaseState::kOpen : CaseState::kWaiting;
    Random words = another_stream();
    record.complaint = complaint_text(record, vocabulary_, Care::kOrdinary, words);
    emit_({std::move(record), pattern});
  }

  const World& world_;
  const Vocabulary& vocabulary_;
  const DemoSettings& settings_;
  const std::function<void(const DemoCase&)>& emit_;
  Random random_;
  Calendar calendar_;
  Fleet fleet_;
  std::optional<SecondFault> second_;
  std::priority_queue<Comeback, std::vector<Comeback>, std::greater<>> comebacks_;
  std::int64_t refs_ = 0;
  std::size_t ended_ = 0;
};

}  // namespace

void generate_workshop(const World& world, const Vocabulary& vocabulary,
                       const DemoSettings& settings,
                       const std::function<void(const DemoCase&)>& emit) {
  Workshop(world, vocabulary, settings, emit).run();
}

}  // namespace shoplore
