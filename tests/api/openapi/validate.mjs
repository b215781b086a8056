// node validate.mjs openapi.json: is it OpenAPI 3.1, do its schemas compile, do its examples fit,
// has every operation what a reader needs? Says what is wrong and ends with 1.
import { Validator } from "@seriousme/openapi-schema-validator";
import { Document } from "./document.mjs";

const problems = [];
const path = process.argv[2];
const document = new Document(path);

const validator = new Validator();
const result = await validator.validate(JSON.parse(document.text));
if (!result.valid) problems.push(`not valid OpenAPI: ${JSON.stringify(result.errors, null, 1)}`);
if (validator.version !== "3.1") problems.push(`version ${validator.version}, expected 3.1`);

function checkExample(place, schema, value) {
  for (const fault of document.faults(schema, value)) problems.push(`${place}: ${fault}`);
}

const used = new Set(document.text.match(/#\/components\/[^"]+/g));
for (const [sort, entries] of Object.entries(document.json.components)) {
  for (const name of Object.keys(entries)) {
    const unusedOnPurpose = name === "MethodNotAllowed" || name === "Allow";
    if (!unusedOnPurpose && !used.has(`#/components/${sort}/${name}`)) {
      problems.push(`components/${sort}/${name} is used nowhere`);
    }
  }
}

const ids = new Set();
let examples = 0;
for (const { path: route, method, operation, parameters } of document.operations()) {
  const place = `${method} ${route}`;
  if (!operation.operationId || ids.has(operation.operationId)) problems.push(`${place}: operationId`);
  ids.add(operation.operationId);
  if (!operation.summary) problems.push(`${place}: no summary`);
  for (const parameter of parameters) {
    if (parameter.example === undefined) problems.push(`${place}: ${parameter.name} has no example`);
    checkExample(`${place} ${parameter.name}`, parameter.schema, parameter.example);
    ++examples;
  }
  for (const [type, content] of Object.entries(operation.requestBody?.content ?? {})) {
    const entries = Object.entries(content.examples ?? {});
    if (entries.length === 0) problems.push(`${place}: no example of ${type}`);
    for (const [name, example] of entries) {
      ++examples;
      if (example["x-status"] >= 400) continue;
      checkExample(`${place} example ${name}`, content.schema, example.value);
    }
  }
  for (const status of Object.keys(operation.responses)) {
    const response = document.response(operation, status);
    for (const content of Object.values(response.content ?? {})) {
      if (content.example === undefined) problems.push(`${place} ${status}: no example`);
      checkExample(`${place} ${status}`, content.schema, content.example);
      ++examples;
    }
  }
}

for (const problem of problems) console.error(problem);
console.log(`${ids.size} operations, ${examples} examples, ${problems.length} problems`);
process.exit(problems.length === 0 ? 0 : 1);
