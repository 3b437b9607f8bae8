import assert from "node:assert/strict";
import { mkdtemp, rm, symlink, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { startServer } from "./server.mjs";

const PAGE = `<!doctype html><title>page</title>${"<p>words</p>".repeat(200)}`;
const BASE = "/deep/folder/";

let root;
let server;
before(async () => {
  root = await mkdtemp(join(tmpdir(), "noonday-server-"));
  await writeFile(join(root, "index.html"), PAGE);
  await writeFile(join(root, "code.wasm"), Buffer.from([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]));
  await symlink("/etc/hostname", join(root, "leak.txt"));
  server = await startServer({ root, base: BASE });
});
after(async () => {
  await server.close();
  await rm(root, { recursive: true });
});

// Sends the path as written: fetch would tidy ".." away before the server sees it.
function get(path, { method = "GET", encoding = "identity" } = {}) {
  const { hostname, port } = new URL(server.url);
  return new Promise((done, failed) => {
    const asking = request({ hostname, port, path, method, headers: { "accept-encoding": encoding } }, (response) => {
      const parts = [];
      response.on("data", (part) => parts.push(part));
      response.on("end", () => done({ status: response.statusCode, headers: response.headers, body: Buffer.concat(parts) }));
    });
    asking.on("error", failed).end();
  });
}

test("the folder's index is served at the base, and nothing above the base", async () => {
  const page = await get(BASE);
  assert.equal(page.status, 200);
  assert.equal(page.body.toString(), PAGE);
  assert.equal((await get("/")).status, 404);
  assert.equal((await get("/index.html")).status, 404);
  const bare = await get(BASE.slice(0, -1));
  assert.deepEqual([bare.status, bare.headers.location], [301, BASE]);
});

// RFC 9110 section 8.3 and the WebAssembly Web API: streaming compilation refuses any other type.
test("wasm and html carry their media types", async () => {
  assert.equal((await get(`${BASE}code.wasm`)).headers["content-type"], "application/wasm");
  assert.equal((await get(`${BASE}index.html`)).headers["content-type"], "text/html; charset=utf-8");
});

test("bodies are compressed as the client accepts", async () => {
  const brotli = await get(BASE, { encoding: "gzip, deflate, br" });
  assert.equal(brotli.headers["content-encoding"], "br");
  assert.equal(brotliDecompressSync(brotli.body).toString(), PAGE);
  const gzip = await get(BASE, { encoding: "gzip" });
  assert.equal(gzip.headers["content-encoding"], "gzip");
  assert.equal(gunzipSync(gzip.body).toString(), PAGE);
  assert.ok(brotli.body.length < gzip.body.length && gzip.body.length < PAGE.length / 4);
});

test("no path leads out of the folder", async () => {
  const ways = ["../../../etc/hostname", "..%2f..%2f..%2fetc%2fhostname", "%2e%2e/%2e%2e/etc/hostname", "/etc/hostname", "leak.txt", "..%5c..%5cetc"];
  for (const way of ways) assert.equal((await get(BASE + way)).status, 404, way);
  assert.equal((await get(`${BASE}%00`)).status, 400);
  assert.equal((await get(`${BASE}%zz`)).status, 400);
});

test("only reading is allowed, and a HEAD has no body", async () => {
  assert.equal((await get(BASE, { method: "POST" })).status, 405);
  const head = await get(BASE, { method: "HEAD" });
  assert.deepEqual([head.status, head.body.length, Number(head.headers["content-length"])], [200, 0, PAGE.length]);
});

test("every request is counted with what was sent", async () => {
  const before = server.requests.length;
  await get(`${BASE}code.wasm`);
  await get(`${BASE}missing`);
  const counted = server.requests.slice(before);
  assert.deepEqual(
    counted.map(({ path, status }) => [path, status]),
    [[`${BASE}code.wasm`, 200], [`${BASE}missing`, 404]],
  );
  assert.equal(counted[0].bytes, 8);
});
