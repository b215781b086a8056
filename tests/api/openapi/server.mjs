// A shop of its own with the built server on it, and requests to it.
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";

export class TestServer {
  static async start(program, cases) {
    const server = new TestServer();
    server.around = mkdtempSync(join(tmpdir(), "shoplore-openapi-"));
    server.program = program;
    server.shop = join(server.around, "shop");
    execFileSync(program, ["--shop", server.shop, "init"]);
    execFileSync(program, ["--shop", server.shop, "import", "-"], { input: readFileSync(cases) });
    await server.listen();
    return server;
  }

  async listen() {
    const command = ["--shop", this.shop, "serve", "--port", "0"];
    this.child = spawn(this.program, command, { stdio: ["ignore", "pipe", "inherit"] });
    const lines = createInterface({ input: this.child.stdout });
    const line = await new Promise((resolve, reject) => {
      lines.once("line", resolve);
      this.child.once("exit", () => reject(new Error("the server did not start")));
    });
    this.port = Number(line.split(":").pop());
  }

  stop() {
    return new Promise((resolve) => {
      this.child.once("exit", resolve);
      this.child.kill("SIGTERM");
    });
  }

  async end() {
    await this.stop();
    rmSync(this.around, { recursive: true, force: true });
  }

  // The path goes out as it is; headers come back with lower-case names.
  send(method, path, headers = {}, body = undefined) {
    return new Promise((resolve, reject) => {
      const options = { host: "127.0.0.1", port: this.port, method, path, headers };
      const sent = request(options, (reply) => {
        const pieces = [];
        reply.on("data", (piece) => pieces.push(piece));
        reply.on("end", () => {
          const text = Buffer.concat(pieces).toString("utf8");
          resolve({ status: reply.statusCode, headers: reply.headers, body: text });
        });
      });
      sent.on("error", reject);
      if (body !== undefined && headers["Transfer-Encoding"] === undefined) {
        sent.setHeader("Content-Length", Buffer.byteLength(body));
      }
      sent.end(body);
    });
  }
}
