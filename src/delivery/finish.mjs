// Finishes a build, as Trunk's last step (see Trunk.toml): puts the example's answer into the page and takes comments out of it,
// lets it run no inline script but its own, and lists the files that the service worker keeps, by their contents.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";

const WORKER = "service-worker.js";
// The browser fetches icons itself when the page is installed, and hardly anybody the licences; the page never shows them.
const NOT_KEPT = /^(icons\/|licences\.txt$)/;

const folder = process.env.TRUNK_STAGING_DIR;
const isRelease = process.env.TRUNK_PROFILE === "release";

const integrity = (content) => `sha256-${createHash("sha256").update(content).digest("base64")}`;

/** Without comments that fill their lines: they are for whoever works on the page, not for whoever waits for it. */
const lean = (text) => text.replace(/^\s*(\/\/.*|\/\*((?!\*\/)[^])*\*\/|<!--((?!-->)[^])*-->)\n/gm, "");

/** The policy names the hash of each inline script instead of allowing any. */
function allowOwnScriptsOnly(page) {
  const scripts = [...page.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([^]*?)<\/script>/g)].map(([, script]) => `'${integrity(script)}'`);
  const allowed = /(script-src 'self') [^;"]*('wasm-unsafe-eval')/;
  if (scripts.length === 0 || !allowed.test(page)) throw new Error("index.html has no inline script, or a policy of another form");
  return page.replace(allowed, `$1 ${scripts.join(" ")} $2`);
}

function keptFiles() {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = entries.map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)).replaceAll(sep, "/"));
  const kept = paths.filter((path) => path !== WORKER && !NOT_KEPT.test(path)).sort();
  // The page is asked for by its folder: some hosts redirect from its file, and a redirect cannot be kept.
  return Object.fromEntries(kept.map((path) => [path === "index.html" ? "./" : path, integrity(readFileSync(join(folder, path)))]));
}

const path = join(folder, "index.html");
const example = readFileSync(new URL("opening.html", import.meta.url), "utf8");
const page = readFileSync(path, "utf8").replace("<!-- opening -->", () => example);
writeFileSync(path, isRelease ? allowOwnScriptsOnly(lean(page)) : page);
// While the page is worked on it must show the last change: then the worker keeps nothing and lets everything through.
const files = isRelease ? keptFiles() : {};
const worker = lean(readFileSync(new URL(WORKER, import.meta.url), "utf8"));
const version = createHash("sha256").update(JSON.stringify(files)).update(worker).digest("hex").slice(0, 16);
writeFileSync(join(folder, WORKER), `const FILES = ${JSON.stringify(files, null, 1)};\nconst VERSION = "${version}";\n\n${worker}`);
