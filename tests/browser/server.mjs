// A small static web server: serves a folder under a sub-path, compressed, and keeps count of what was asked of it.
import { createServer } from "node:http";
import { readFile, realpath, stat } from "node:fs/promises";
import { extname, join, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const MIME_TYPES = {
  ".css": "text/css; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

const INCOMPRESSIBLE = new Set([".png", ".ico"]);

// The qualities a host that compresses ahead of time uses, so that measured sizes are the real ones.
const ENCODERS = {
  br: (body) => brotliCompressSync(body, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: body.length } }),
  gzip: (body) => gzipSync(body, { level: 9 }),
};

/**
 * Serves `root` at `base` on this machine only.
 *
 * Returns the page's `url`, the list of `requests` answered so far (method, path, status, bytes sent) and `close`.
 */
export async function startServer({ root, base = "/", port = 0 }) {
  const folder = await realpath(root);
  const requests = [];
  const compressed = new Map();
  const server = createServer(async (request, response) => {
    const answer = await answerTo(request, { folder, base, compressed });
    const body = answer.body ?? Buffer.from(`${answer.status}\n`);
    response.writeHead(answer.status, { "content-length": body.length, "cache-control": "no-cache", ...answer.headers });
    response.end(request.method === "HEAD" ? undefined : body);
    requests.push({ method: request.method, path: request.url, status: answer.status, bytes: body.length });
  });
  await new Promise((listening, failed) => server.once("error", failed).listen(port, "127.0.0.1", listening));
  const close = () =>
    new Promise((closed) => {
      server.close(closed);
      server.closeAllConnections();
    });
  return { url: `http://127.0.0.1:${server.address().port}${base}`, requests, close };
}

async function answerTo(request, { folder, base, compressed }) {
  if (!["GET", "HEAD"].includes(request.method)) return { status: 405, headers: { allow: "GET, HEAD" } };
  const path = decodedPath(request.url);
  if (path === undefined) return { status: 400 };
  if (`${path}/` === base) return { status: 301, headers: { location: base } };
  if (!path.startsWith(base)) return { status: 404 };

  const file = await fileWithin(folder, path.slice(base.length));
  if (file === undefined) return { status: 404 };
  const headers = { "content-type": MIME_TYPES[extname(file)] ?? "application/octet-stream", vary: "accept-encoding" };
  const encoding = INCOMPRESSIBLE.has(extname(file)) ? undefined : acceptedEncoding(request.headers["accept-encoding"]);
  if (encoding === undefined) return { status: 200, headers, body: await readFile(file) };
  const body = await compressedFile(file, encoding, compressed);
  return { status: 200, headers: { ...headers, "content-encoding": encoding }, body };
}

function decodedPath(url) {
  try {
    const path = decodeURIComponent(url.split(/[?#]/, 1)[0]);
    return path.includes("\0") ? undefined : path;
  } catch {
    return undefined;
  }
}

// Resolves links before comparing: neither ".." nor a symbolic link leads out of the folder.
async function fileWithin(folder, path) {
  const asked = path === "" || path.endsWith("/") ? join(path, "index.html") : path;
  try {
    const file = await realpath(resolve(folder, `.${sep}${asked}`));
    return file.startsWith(folder + sep) && (await stat(file)).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

function acceptedEncoding(header = "") {
  const accepted = header.split(",").map((entry) => entry.trim().split(";", 1)[0]);
  return Object.keys(ENCODERS).find((encoding) => accepted.includes(encoding));
}

async function compressedFile(file, encoding, compressed) {
  const { mtimeMs, size } = await stat(file);
  const key = `${encoding} ${mtimeMs} ${size} ${file}`;
  if (!compressed.has(key)) compressed.set(key, ENCODERS[encoding](await readFile(file)));
  return compressed.get(key);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [root = "dist", port = "8080", base = "/"] = process.argv.slice(2);
  const { url } = await startServer({ root, port: Number(port), base });
  console.log(`Serving ${root} at ${url}`);
}
