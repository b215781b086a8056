// The fields of each struct, once, for reading and writing alike (json_form.hpp).
#include "indexer/case_json.hpp"

#include <fmt/format.h>

#include "indexer/json_form.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<Vehicle> auto& v) {
  io.optional("make", v.make);
  io.optional("model", v.model);
  io.optional("model_year", v.model_year);
  io.optional("engine_family", v.engine_family);
  io.optional("fuel", v.fuel);
  io.optional("transmission", v.transmission);
  io.optional("mileage_km", v.mileage_km);
  io.optional("token", v.token);
}

template <class Io>
void fields(Io& io, Of<Visit> auto& v) {
  io.required("kind", v.kind);
  io.optional("ref", v.ref);
}

template <class Io>
void fields(Io& io, Of<Symptom> auto& s) {
  io.required("id", s.id);
  io.defaulted("state", s.state);
  io.optional("when", s.when);
  io.optional("how_often", s.how_often);
  io.optional("reproduced", s.reproduced);
}

template <class Io>
void fields(Io& io, Of<FreezeFrameValue> auto& f) {
  io.required("name", f.name);
  io.required("value", f.value);
  io.optional("unit", f.unit);
}

template <class Io>
void fields(Io& io, Of<Code> auto& c) {
  io.required("code", c.code);
  io.defaulted("status", c.status);
  io.defaulted("seen", c.seen);
  io.optional("failure_type", c.failure_type);
  io.optional("module", c.module);
  io.optional("freeze_frame", c.freeze_frame);
}

template <class Io>
void fields(Io& io, Of<ExpectedRange> auto& e) {
  io.optional("low", e.low);
  io.optional("high", e.high);
}

void read_form(const Json& json, const std::string& place, Reading& reading,
               std::vector<Problem>& problems) {
  if (json.is_number()) {
    reading.number = json.get<double>();
  } else if (json == "OL" || json == "out_of_range") {
    reading.word = json.get<std::string>();
  } else {
    problems.push_back({place, "expected a number, \"OL\" or \"out_of_range\""});
  }
}

Json written_form(const Reading& reading) {
  return reading.number ? Json(*reading.number) : Json(reading.word);
}

template <class Io>
void fields(Io& io, Of<Check> auto& c) {
  io.required("id", c.id);
  io.optional("reading", c.reading);
  io.optional("unit", c.unit);
  io.optional("expected", c.expected);
  io.optional("where", c.where);
  io.optional("conditions", c.conditions);
  io.required("verdict", c.verdict);
  io.optional("minutes", c.minutes);
  io.optional("later", c.later);
  io.text("note", c.note);
}

template <class Io>
void fields(Io& io, Of<Fix> auto& f) {
  io.required("action", f.action);
  io.required("component", f.component);
}

template <class Io>
void fields(Io& io, Of<EarlierRepair> auto& e) {
  io.required("fix", e.fix);
  io.defaulted("by", e.by);
  io.optional("helped_for_a_while", e.helped_for_a_while);
  io.optional("when", e.when);
  io.optional("distance_km", e.distance_km);
}

template <class Io>
void fields(Io& io, Of<WorkSign> auto& w) {
  io.required("id", w.id);
  io.optional("component", w.component);
  io.text("note", w.note);
}

template <class Io>
void fields(Io& io, Of<Cause> auto& c) {
  io.required("component", c.component);
  io.required("failure", c.failure);
  io.defaulted("proof", c.proof);
}

template <class Io>
void fields(Io& io, Of<Part> auto& p) {
  io.required("part", p.part);
  io.defaulted("quantity", p.quantity);
  io.defaulted("grade", p.grade);
  io.optional("brand", p.brand);
  io.optional("cost", p.cost);
}

template <class Io>
void fields(Io& io, Of<Hours> auto& h) {
  io.optional("diagnosis", h.diagnosis);
  io.optional("clocked", h.clocked);
  io.optional("charged", h.charged);
}

template <class Io>
void fields(Io& io, Of<Correction> auto& c) {
  io.optional("fixes", c.fixes);
  io.optional("parts", c.parts);
  io.optional("hours", c.hours);
  io.optional("cost_total", c.cost_total);
  io.optional("currency", c.currency);
  io.optional("removals", c.removals);
  io.text("traps", c.traps);
}

template <class Io>
void fields(Io& io, Of<Declined> auto& d) {
  io.text("work", d.work);
  io.defaulted("safety", d.safety);
  io.optional("warned_on", d.warned_on);
}

template <class Io>
void fields(Io& io, Of<Verification> auto& v) {
  io.required("id", v.id);
  io.required("verdict", v.verdict);
}

template <class Io>
void fields(Io& io, Of<Outcome> auto& o) {
  io.required("status", o.status);
  io.optional("as_of", o.as_of);
  io.optional("mileage_km", o.mileage_km);
  io.optional("reason", o.reason);
}

template <class Io>
void fields(Io& io, Of<Case> auto& c) {
  io.optional("ref", c.ref);
  io.required("state", c.state);
  io.optional("source", c.source);
  io.optional("visit", c.visit);
  io.optional("job_number", c.job_number);
  io.required("opened", c.opened);
  io.optional("closed", c.closed);
  io.optional("ended", c.ended);
  io.optional("vehicle", c.vehicle);
  io.text("complaint", c.complaint);
  io.text("notes", c.notes);
  io.optional("facts", c.facts);
  io.optional("symptoms", c.symptoms);
  io.optional("scanned", c.scanned);
  io.optional("codes", c.codes);
  io.optional("checks", c.checks);
  io.optional("earlier_repairs", c.earlier_repairs);
  io.optional("work_looked_for", c.work_looked_for);
  io.optional("work_signs", c.work_signs);
  io.optional("cause", c.cause);
  io.optional("contributing", c.contributing);
  io.optional("also_found", c.also_found);
  io.optional("correction", c.correction);
  io.optional("declined", c.declined);
  io.optional("verification", c.verification);
  io.optional("outcome", c.outcome);
  io.optional("follows", c.follows);
}

template <class Io>
void fields(Io& io, Of<Identity> auto& i) {
  io.optional("vin", i.vin);
  io.optional("plate", i.plate);
  io.optional("customer", i.customer);
}

namespace {

// The stored form: schema first, then the record.
struct Body {
  int schema = kCaseSchema;
  Case record;
};

template <class Io>
void fields(Io& io, Of<Body> auto& b) {
  io.defaulted("schema", b.schema);
  shoplore::fields(io, b.record);
}

struct Arrival {
  Body body;
  Identity identity;
};

template <class Io>
void fields(Io& io, Of<Arrival> auto& a) {
  fields(io, a.body);
  io.optional("identity", a.identity);
}

tl::unexpected<Error> wrong_schema(int schema) {
  return fail(ErrorCode::kInvalidInput, "/schema",
              fmt::format("schema {} is not known here, expected {}", schema, kCaseSchema));
}

Result<Intake> intake_from_parsed(const Json& json) {
  auto arrival = struct_from_json<Arrival>(json, "the case");
  if (!arrival) return fail(std::move(arrival.error()));
  if (arrival->body.schema != kCaseSchema) return wrong_schema(arrival->body.schema);
  return Intake{std::move(arrival->body.record), std::move(arrival->identity)};
}

}  // namespace

std::string case_to_json(const Case& record) {
  return json_of(Body{kCaseSchema, record}).dump();
}

Result<Case> case_from_json(std::string_view text) {
  const auto json = parse_json(text, kMaxCaseBytes);
  if (!json) return fail(json.error());
  auto body = struct_from_json<Body>(*json, "the case");
  if (!body) return fail(std::move(body.error()));
  if (body->schema != kCaseSchema) return wrong_schema(body->schema);
  return std::move(body->record);
}

Result<Intake> intake_from_json(std::string_view text) {
  const auto json = parse_json(text, kMaxCaseBytes);
  if (!json) return fail(json.error());
  return intake_from_parsed(*json);
}

Result<Intake> patch_case(const Case& record, std::string_view patch) {
  const auto changes = parse_json(patch, kMaxCaseBytes);
  if (!changes) return fail(changes.error());
  if (!changes->is_object()) {
    return fail(ErrorCode::kInvalidInput, "", "expected an object of changed fields");
  }
  Json json = json_of(Body{kCaseSchema, record});
  json.merge_patch(*changes);
  return intake_from_parsed(json);
}

}  // namespace shoplore
