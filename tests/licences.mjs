// Lists under which licence each library is that goes into the page, with its text, as most of them ask of whoever passes them on.
// Fails where one is under none of those allowed here, and where public/licences.txt is not what it should be; with `--write` it
// writes that file anew.
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const LIST = fileURLToPath(new URL("../public/licences.txt", import.meta.url));
const PAGE = "noonday";
const PLATFORM = "wasm32-unknown-unknown";
// In the order in which they are taken where a library offers a choice: all allow what is done here, the first asks least.
const ALLOWED = ["CC0-1.0", "Unlicense", "Zlib", "BSL-1.0", "MIT", "Unicode-3.0", "Apache-2.0"];
const TEXT_OF = { "Apache-2.0": /apache/i, MIT: /mit/i, Zlib: /zlib/i, Unlicense: /unlicen[cs]e/i, "Unicode-3.0": /unicode/i };
const IS_TEXT = /^(licen[cs]e|copying|unlicen[cs]e)/i;
const RULE = "-".repeat(100);

const HEAD = `Libraries in the page of Noonday, and their licences
${RULE}
Noonday itself is under the MIT licence. What it is built from is listed here with the licence taken where there is a choice, then the
texts. Written by \`make licences\` from what the libraries say of themselves.
`;

/** The packages that are compiled into the page: neither macros nor what only builds or tests. */
function packagesInPage() {
  const options = ["metadata", "--locked", "--format-version", "1", "--filter-platform", PLATFORM];
  const { packages, resolve } = JSON.parse(execFileSync("cargo", options, { encoding: "utf8", maxBuffer: 1 << 28 }));
  const byId = new Map(packages.map((one) => [one.id, one]));
  const nodes = new Map(resolve.nodes.map((node) => [node.id, node]));
  const isMacro = ({ targets }) => targets.some(({ kind }) => kind.includes("proc-macro"));
  const found = new Set();
  const visit = (id) => {
    if (found.has(id) || isMacro(byId.get(id))) return;
    found.add(id);
    nodes.get(id).deps.filter(({ dep_kinds: kinds }) => kinds.some(({ kind }) => kind === null)).forEach(({ pkg }) => visit(pkg));
  };
  visit(packages.find(({ name }) => name === PAGE).id);
  return [...found].map((id) => byId.get(id)).filter(({ source }) => source !== null);
}

/** The licence taken of an expression such as "MIT OR Apache-2.0"; none where nothing of it is allowed. */
function taken(expression) {
  const choices = expression.split(/ OR |\//).map((choice) => choice.replace(/[()]/g, "").split(" AND "));
  const allowed = choices.filter((parts) => parts.every((part) => ALLOWED.includes(part)));
  const rank = (parts) => Math.max(...parts.map((part) => ALLOWED.indexOf(part)));
  return allowed.sort((one, other) => rank(one) - rank(other))[0];
}

/** The text of a licence as a package has it, or none. */
function textOf({ manifest_path: manifest }, licence) {
  const folder = dirname(manifest);
  const names = readdirSync(folder).filter((name) => IS_TEXT.test(name)).sort();
  const name = names.find((name) => TEXT_OF[licence]?.test(name)) ?? (names.length === 1 ? names[0] : undefined);
  return name && readFileSync(join(folder, name), "utf8").replace(/\r/g, "").replace(/[ \t]+$/gm, "").trim();
}

const byName = (one, other) => (one.name + one.version < other.name + other.version ? -1 : 1);
const packages = packagesInPage().sort(byName);
const refused = packages.filter(({ license }) => !license || !taken(license));
if (refused.length > 0) {
  console.error("Under no licence that is allowed here:", refused.map(({ name, license }) => `${name} (${license})`).join(", "));
  process.exit(1);
}
const lines = packages.map(({ name, version, license }) => `${`${name} ${version}`.padEnd(40)} ${taken(license).join(" and ")}`);
const texts = new Map();
for (const one of packages) {
  for (const licence of taken(one.license)) {
    const people = one.authors.length > 0 ? `, by ${one.authors.map((author) => author.replace(/ <.*>/, "")).join(", ")}` : "";
    const text = textOf(one, licence) ?? `${licence}, without a text of its own${people}.`;
    texts.set(text, [...(texts.get(text) ?? []), one.name]);
  }
}
const blocks = [...texts].map(([text, names]) => `${RULE}\n${names.join(", ")}\n${RULE}\n${text}\n`);
const list = `${HEAD}\n${lines.join("\n")}\n\n${blocks.join("\n")}`;
if (process.argv.includes("--write")) writeFileSync(LIST, list);
if (readFileSync(LIST, "utf8") !== list) {
  console.error("public/licences.txt is stale: make licences");
  process.exit(1);
}
console.log(`${packages.length} libraries in the page, each under a licence that is allowed: ${ALLOWED.join(", ")}`);
