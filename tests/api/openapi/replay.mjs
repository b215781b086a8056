// node replay.mjs openapi.json SHOPLORE shop.jsonl: every example request of the document goes to
// the built server, and every reply must be one the document describes: status, headers, body.
// Then every refusal it describes is provoked. Says what does not fit and ends with 1.
import { Document } from "./document.mjs";
import { TestServer } from "./server.mjs";

const [path, program, cases] = process.argv.slice(2);
const document = new Document(path);
const server = await TestServer.start(program, cases);
const problems = [];
const statusesSeen = new Map(document.operations().map((o) => [`${o.method} ${o.path}`, new Set()]));
let sent = 0;

function checkHeaders(place, response, reply) {
  for (const [name, reference] of Object.entries(response.headers ?? {})) {
    const header = document.resolved(reference);
    const value = reply.headers[name.toLowerCase()];
    if (value === undefined) {
      if (header.required) problems.push(`${place}: no ${name}`);
      continue;
    }
    for (const fault of document.faults(header.schema, value)) {
      problems.push(`${place}: ${name}: ${fault}`);
    }
  }
  const documented = Object.keys(response.headers ?? {}).map((name) => name.toLowerCase());
  for (const name of ["etag", "location", "shoplore-repeated", "allow"]) {
    if (reply.headers[name] !== undefined && !documented.includes(name)) {
      problems.push(`${place}: ${name} is not documented`);
    }
  }
}

function checkBody(place, response, reply) {
  if (!response.content) {
    if (reply.body !== "") problems.push(`${place}: a body where none is documented`);
    return;
  }
  const type = reply.headers["content-type"];
  const content = response.content[type];
  if (!content) return problems.push(`${place}: ${type} is not documented`);
  const body = type.endsWith("json") ? JSON.parse(reply.body) : reply.body;
  for (const fault of document.faults(content.schema, body)) {
    problems.push(`${place}: body ${fault}`);
  }
}

// Sends and holds the reply against the document.
async function check(route, method, target, { headers = {}, body, expected, why = "" } = {}) {
  ++sent;
  const reply = await server.send(method, target, headers, body);
  const place = `${method} ${target} ${why} -> ${reply.status}`;
  const operation = document.json.paths[route]?.[method.toLowerCase()];
  const isOdd = reply.status === 405 || !operation;
  const response = isOdd
    ? document.json.components.responses[reply.status === 405 ? "MethodNotAllowed" : "NotFound"]
    : document.response(operation, reply.status);
  if (!isOdd) statusesSeen.get(`${method} ${route}`).add(String(reply.status));
  if (expected !== undefined && reply.status !== expected) {
    problems.push(`${place}: expected ${expected}: ${reply.body.slice(0, 300)}`);
  }
  if (!response) {
    problems.push(`${place}: the status is not documented: ${reply.body.slice(0, 300)}`);
    return reply;
  }
  checkHeaders(place, response, reply);
  checkBody(place, response, reply);
  return reply;
}

function queryPair(parameter) {
  const value = Array.isArray(parameter.example) ? parameter.example.join(",") : parameter.example;
  return `${parameter.name}=${encodeURIComponent(value)}`;
}

function targetOf(route, parameters, query) {
  let target = route;
  for (const parameter of parameters.filter((p) => p.in === "path")) {
    target = target.replace(`{${parameter.name}}`, encodeURIComponent(parameter.example));
  }
  return query.length === 0 ? target : `${target}?${query.map(queryPair).join("&")}`;
}

const json = { "Content-Type": "application/json" };

// Without any optional parameter, with each alone, with all together. A cursor belongs to one
// list and is followed below.
function queriesOf(parameters) {
  const query = parameters.filter((p) => p.in === "query" && p.name !== "cursor");
  const required = query.filter((p) => p.required);
  const optional = query.filter((p) => !p.required);
  return [required, ...optional.map((p) => [...required, p]), ...(optional.length > 1 ? [query] : [])];
}

// Practice: a round of its own for every example, as far on as the example needs it.
async function practiceRound(kind = "cause") {
  const body = JSON.stringify({ apprentice: "a1", kind, seed: 1 });
  const reply = await check("/v1/practice/rounds", "POST", "/v1/practice/rounds", { headers: json, body, expected: 201 });
  return reply.headers.location;
}
const belief = '{"beliefs":[{"cause":"turbocharger worn","percent":60}]}';
const commitment = '{"cause":"turbocharger worn"}';
async function practiceStep(round, step, body, expected = 200) {
  return check(`/v1/practice/rounds/{id}/${step}`, "POST", `${round}/${step}`, { headers: json, body, expected });
}
async function withRound(route, parameters) {
  if (!route.includes("/rounds/{id}")) return parameters;
  const round = await practiceRound();
  if (/commit|feedback/.test(route)) await practiceStep(round, "belief", belief);
  if (route.endsWith("/feedback")) await practiceStep(round, "commit", commitment);
  return parameters.map((p) => (p.in === "path" ? { ...p, example: round.split("/").pop() } : p));
}

async function replayExamples() {
  for (const { path: route, method, operation, parameters: documented } of document.operations()) {
    if (method === "DELETE") continue; // drivePractice deletes, once everything else is done
    if (!operation.requestBody) {
      const parameters = await withRound(route, documented);
      for (const query of queriesOf(parameters)) {
        const target = targetOf(route, parameters, query);
        const reply = await check(route, method, target, { expected: 200 });
        const head = await server.send("HEAD", target);
        const same = ["content-type", "content-length", "etag"].every(
          (name) => head.headers[name] === reply.headers[name],
        );
        if (head.status !== 200 || head.body !== "" || !same) problems.push(`HEAD ${target} differs`);
      }
      continue;
    }
    for (const [type, content] of Object.entries(operation.requestBody.content)) {
      for (const [name, example] of Object.entries(content.examples)) {
        const parameters = await withRound(route, documented);
        await check(route, method, targetOf(route, parameters, []), {
          headers: { "Content-Type": type },
          body: JSON.stringify(example.value),
          expected: example["x-status"],
          why: name,
        });
      }
    }
  }
}

async function followCursors() {
  const lists = [
    ["/v1/cases", "/v1/cases", "cases"],
    ["/v1/cases", "/v1/cases?state=closed", "cases"],
    ["/v1/find", "/v1/find?q=flat", "cases"],
    ["/v1/vocabulary", "/v1/vocabulary?kind=verification", "entries"],
    ["/v1/cases/{ref}/history", "/v1/cases/job-1003/history", "changes"],
  ];
  for (const [route, start, list] of lists) {
    const seen = [];
    let cursor = "";
    do {
      const first = start.includes("?") ? "&" : "?";
      const target = `${start}${first}limit=1${cursor && `&cursor=${encodeURIComponent(cursor)}`}`;
      const reply = await check(route, "GET", target, { expected: 200 });
      const page = JSON.parse(reply.body);
      seen.push(...page[list].map((each) => JSON.stringify(each)));
      cursor = page.next_cursor;
    } while (cursor);
    const whole = JSON.parse((await server.send("GET", `${start}${start.includes("?") ? "&" : "?"}limit=100`)).body);
    const expected = whole[list].map((each) => JSON.stringify(each));
    if (expected.length < 2 || JSON.stringify(seen) !== JSON.stringify(expected)) {
      problems.push(`${start}: pages of one give ${seen.length}, one page gives ${expected.length}`);
    }
    const foreign = start.includes("?") ? "&" : "?";
    await check(route, "GET", `${start}${foreign}cursor=1-0123456789abcdef`, { expected: 400 });
  }
}

const patch = { "Content-Type": "application/merge-patch+json" };

async function driveConditions() {
  const one = "/v1/cases/{ref}";
  const target = "/v1/cases/job-1003";
  const tag = (await check(one, "GET", target)).headers.etag;
  await check(one, "GET", target, { headers: { "If-None-Match": tag }, expected: 304 });
  await check(one, "GET", target, { headers: { "If-None-Match": '"0"' }, expected: 200 });
  const entry = ["/v1/vocabulary/{kind}/{id}", "GET", "/v1/vocabulary/check/wastegate_linkage_by_hand"];
  const entryTag = (await check(...entry)).headers.etag;
  await check(...entry, { headers: { "If-None-Match": `"x", W/${entryTag}` }, expected: 304 });
  const body = '{"facts":{"duty":"taxi"}}';
  await check(one, "PATCH", target, { headers: { ...patch, "If-Match": '"0"' }, body, expected: 412 });
  await check(one, "PATCH", target, { headers: { ...patch, "If-Match": tag }, body, expected: 200 });
}

// The first and the repeated reply must be equal; returns the first.
async function sendTwice(route, method, target, headers, body, expected) {
  const first = await check(route, method, target, { headers, body, expected });
  const again = await check(route, method, target, { headers, body, expected });
  const same = first.body === again.body && first.headers.etag === again.headers.etag &&
    first.headers.location === again.headers.location;
  if (!same) problems.push(`${method} ${target}: sent again it gets another reply`);
  if (again.headers["shoplore-repeated"] !== "true") problems.push(`${target}: not marked repeated`);
  if (first.headers["shoplore-repeated"]) problems.push(`${target}: the first is marked repeated`);
  return first;
}

async function driveKeys() {
  const all = "/v1/cases";
  const key = (name) => ({ "Idempotency-Key": `"${name}"` });
  const body = JSON.stringify({ state: "open", opened: "2026-03-12", identity: { plate: "QX19 ZZT" } });
  const made = await sendTwice(all, "POST", all, { ...json, ...key("a") }, body, 201);
  await check(all, "POST", all, { headers: { ...json, ...key("a") }, body: body + " ", expected: 422 });
  await check(all, "POST", all, { headers: { ...json, "Idempotency-Key": "bare" }, body, expected: 400 });
  const target = made.headers.location;
  const change = [`${all}/{ref}`, "PATCH", target];
  await sendTwice(...change, { ...patch, ...key("b") }, '{"notes":"x"}', 200);
  await check(...change, { headers: { ...patch, ...key("a") }, body: "{}", expected: 422 });
  const closing = JSON.stringify({ cause: { component: "turbocharger", failure: "worn" } });
  const close = [`${all}/{ref}/close`, "POST", `${target}/close`];
  await check(...close, { headers: { ...json, "If-Match": '"1"' }, body: closing, expected: 412 });
  await sendTwice(...close, { ...json, ...key("c") }, closing, 200);
  await check(...close, { headers: { ...json, ...key("c") }, body: "{}", expected: 422 });
  const outcome = [`${all}/{ref}/outcome`, "POST", `${target}/outcome`];
  await check(...outcome, { headers: { ...json, "If-Match": '"1"' }, body: '{"status":"unknown"}', expected: 412 });
  await sendTwice(...outcome, { ...json, ...key("d") }, '{"status":"unknown"}', 200);
  await check(...outcome, { headers: { ...json, ...key("d") }, body: "{}", expected: 422 });
}

async function drivePractice() {
  const feedback = "/v1/practice/rounds/{id}/feedback";
  const round = await practiceRound();
  await check(feedback, "GET", `${round}/feedback`, { expected: 409 });
  await practiceStep(round, "commit", commitment, 409); // no belief yet
  await practiceStep(round, "belief", belief);
  await practiceStep(round, "check", '{"check":"wastegate_linkage_by_hand"}');
  await practiceStep(round, "commit", commitment);
  await practiceStep(round, "belief", belief, 409);
  await practiceStep(round, "check", '{"check":"wastegate_linkage_by_hand"}', 409);
  const code = await practiceRound("code");
  await check("/v1/practice/rounds/{id}", "GET", code, { expected: 200 });
  await practiceStep(code, "commit", '{"choice":1}');
  await check(feedback, "GET", `${code}/feedback`, { expected: 200 });
  const progress = "/v1/practice/progress";
  await check(progress, "GET", `${progress}?apprentice=q9`, { expected: 404 });
  await check(progress, "DELETE", `${progress}?apprentice=a1`, { expected: 204 });
  await check(progress, "DELETE", `${progress}?apprentice=a1`, { expected: 404 });
}

// What a request needs to be well-formed, where "{}" is not.
const validBodies = [
  ["/close", '{"cause":{"component":"a","failure":"b"}}'],
  ["/outcome", '{"status":"unknown"}'],
  ["/belief", belief],
  ["/check", '{"check":"wastegate_linkage_by_hand"}'],
  ["/commit", commitment],
];

async function driveRefusals() {
  for (const { path: route, method, operation, parameters } of document.operations()) {
    const target = targetOf(route, parameters, parameters.filter((p) => p.in === "query" && p.required));
    const mark = target.includes("?") ? "&" : "?";
    const types = Object.keys(operation.requestBody?.content ?? {});
    const headers = types.length > 0 ? { "Content-Type": types[0] } : {};
    const body = types.length > 0 ? "{}" : undefined;
    await check(route, method, `${target}${mark}colour=red`, { headers, body, expected: 400 });
    await check(route, method, target, { headers: { ...headers, Host: "shop.example" }, body, expected: 421 });
    await check(route, "PUT", target, { headers, body, expected: 405 });
    for (const parameter of parameters.filter((p) => p.in === "query")) {
      const wrong = parameter.name === "q" ? "%ff" : "%00";
      await check(route, method, `${route.includes("{") ? target : route}?${parameter.name}=${wrong}`,
        { expected: 400 });
    }
    if (operation.responses["404"] && parameters.some((p) => p.in === "path")) {
      const missing = target.replace("job-1003", "job-9").replace("wastegate_linkage_by_hand", "none");
      const valid = validBodies.find(([end]) => route.endsWith(end))?.[1] ?? body;
      await check(route, method, missing, { headers, body: valid, expected: 404 });
    }
    if (types.length === 0) continue;
    await check(route, method, target, { headers: { "Content-Type": "text/plain" }, body, expected: 415 });
    await check(route, method, target, { headers: { ...headers, "Content-Encoding": "gzip" }, body, expected: 415 });
    await check(route, method, target, { headers: { ...headers, "Transfer-Encoding": "chunked" }, body, expected: 411 });
    await check(route, method, target, { headers, body: "[]", expected: 400 });
    await check(route, method, target, { headers, body: "{", expected: 400 });
    await check(route, method, target, { headers, body: `{"a":"${"x".repeat(1 << 20)}"}`, expected: 413 });
  }
  await check("/v1/nothing", "GET", "/v1/nothing", { expected: 404 });
  await check("/v1/cases", "GET", "/v1/cases?cause=none", { expected: 400 });
  await check("/v1/watch-out", "GET", "/v1/watch-out?q=flat&case=none", { expected: 404 });
  await check("/v1/watch-out", "GET", "/v1/watch-out?q=flat&case=job-1001", { expected: 400 });
  await check("/v1/cases", "GET", "/v1/cases?vehicle=none", { expected: 400 });
  await check("/v1/mileage", "GET", "/v1/mileage?cause=flux+capacitor", { expected: 400 });
  const cause = "cause=wastegate_linkage:seized_open";
  await check("/v1/plan", "GET", `/v1/plan?${cause}&case=job-9`, { expected: 404 });
  await check("/v1/plan", "GET", `/v1/plan?${cause}&make=None`, { expected: 400 });
  const closed = "/v1/cases/job-1001/approval";
  await check("/v1/cases/{ref}/approval", "GET", `${closed}?${cause}`, { expected: 409 });
  await check("/v1/patterns", "GET", "/v1/patterns?engine_family=XX99", { expected: 400 });
}

// A cursor of find is of one revision of the records: 409 when they have moved on.
async function driveOldCursor() {
  const first = JSON.parse((await server.send("GET", "/v1/find?q=flat&limit=1")).body);
  await check("/v1/cases/{ref}", "PATCH", "/v1/cases/job-1001", { headers: patch, body: '{"notes":"seen again"}' });
  for (let tries = 0; tries < 100; ++tries) {
    const health = JSON.parse((await server.send("GET", "/healthz")).body);
    if (health.answering_as_of === health.revision) break;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  await check("/v1/find", "GET", `/v1/find?q=flat&limit=1&cursor=${first.next_cursor}`, { expected: 409 });
}

// A case sent with a key is there, once, for the next server too.
async function driveRestart() {
  const headers = { ...json, "Idempotency-Key": '"before the restart"' };
  const body = '{"state":"open","opened":"2026-03-12"}';
  const first = await check("/v1/cases", "POST", "/v1/cases", { headers, body, expected: 201 });
  await server.stop();
  await server.listen();
  const again = await check("/v1/cases", "POST", "/v1/cases", { headers, body, expected: 201 });
  if (first.body !== again.body) problems.push("a restart forgot an Idempotency-Key");
}

// What only a broken machine answers cannot be provoked here.
function checkAllStatusesSeen() {
  const elsewhere = new Set(["500", "503"]);
  for (const { path: route, method, operation } of document.operations()) {
    for (const status of Object.keys(operation.responses)) {
      if (elsewhere.has(status) || statusesSeen.get(`${method} ${route}`).has(status)) continue;
      // A change without If-Match is of the case as it is: 409 needs two changes at one moment.
      if ((method === "PATCH" || route.endsWith("/outcome")) && status === "409") continue;
      problems.push(`${method} ${route}: ${status} is documented and never came`);
    }
  }
}

try {
  await replayExamples();
  await followCursors();
  await driveConditions();
  await driveKeys();
  await drivePractice();
  await driveRefusals();
  await driveOldCursor();
  await driveRestart();
  checkAllStatusesSeen();
} finally {
  await server.end();
}
for (const problem of problems) console.error(problem);
console.log(`${sent} requests, ${problems.length} problems`);
process.exit(problems.length === 0 ? 0 : 1);
