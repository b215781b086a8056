// openapi.json as the checks need it: read once, references followed, schemas compiled strictly.
import { readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import addFormats from "ajv-formats";

// Everything in one schema of schemas, so that a keyword nobody knows is an error and not a wish.
export class Document {
  constructor(path) {
    this.text = readFileSync(path, "utf8");
    this.json = JSON.parse(this.text);
    this.ajv = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false, allErrors: true });
    addFormats.default(this.ajv);
    const schemas = this.rebased(this.json.components.schemas);
    this.ajv.addSchema({ $id: "shoplore", $defs: schemas });
    for (const name of Object.keys(schemas)) this.ajv.getSchema(`shoplore#/$defs/${name}`);
    this.compiled = new Map();
  }

  rebased(value) {
    const text = JSON.stringify(value);
    return JSON.parse(text.replaceAll('"#/components/schemas/', '"shoplore#/$defs/'));
  }

  // A parameter, header or response, wherever it stands.
  resolved(value) {
    if (!value || !value.$ref) return value;
    const steps = value.$ref.replace("#/", "").split("/");
    return steps.reduce((at, step) => at[step], this.json);
  }

  // What is wrong with the value by the schema; empty when nothing is.
  faults(schema, value) {
    const key = JSON.stringify(schema);
    if (!this.compiled.has(key)) this.compiled.set(key, this.ajv.compile(this.rebased(schema)));
    const check = this.compiled.get(key);
    if (check(value)) return [];
    return check.errors.map((e) => `${e.instancePath || "/"} ${e.message} ${JSON.stringify(e.params)}`);
  }

  // Every operation with its path, method, parameters of path and operation, and responses.
  operations() {
    const found = [];
    for (const [path, item] of Object.entries(this.json.paths)) {
      for (const [method, operation] of Object.entries(item)) {
        if (!["get", "post", "patch", "put", "delete"].includes(method)) continue;
        const parameters = [...(item.parameters ?? []), ...(operation.parameters ?? [])];
        found.push({
          path,
          method: method.toUpperCase(),
          operation,
          parameters: parameters.map((each) => this.resolved(each)),
        });
      }
    }
    return found;
  }

  response(operation, status) {
    return this.resolved(operation.responses[String(status)]);
  }
}
