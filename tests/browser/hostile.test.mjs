// Links as somebody would write them who means harm: text stays text, nothing runs, nothing saved changes, and the page answers.
import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, openSite, settled } from "./harness.mjs";
import { entry, kept, lead, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const WALLS = "Insulation of the walls";
/** By then the page shows a link, or why not, and follows what is typed; on a machine of its own it takes a tenth of that. */
const ANSWERS_WITHIN_MS = 10_000;

const SCRIPTS = [
  "<script>globalThis.ran = 1; alert(1)</script>",
  '<img src=x onerror="globalThis.ran=1;alert(1)">',
  '"><svg/onload=alert(1)>',
  "javascript:alert(1)",
  "{{constructor.constructor('alert(1)')()}}",
  "</textarea></title><iframe srcdoc='<script>alert(1)</script>'>",
  "\u202egnp.exe\u0000\u2028\u2029",
];
const FIELDS_OF_TEXT = await idsOf("text(");

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

/** Numbers of fields whose row begins its kind so, from the engine's own table. */
async function idsOf(kind) {
  return (await rows()).filter((row) => row.kind.startsWith(kind)).map((row) => row.id);
}

async function rows() {
  const folder = new URL("../../src/engine/scenario/fields/", import.meta.url);
  const files = (await readdir(folder)).filter((name) => name.endsWith(".rs"));
  const texts = await Promise.all(files.map((name) => readFile(new URL(name, folder), "utf8")));
  const row = /id: (\d+),\s*key: "[^"]*",[^]*?kind: ([a-z_]+\([^]*?)basis:/g;
  return texts.flatMap((text) => [...text.matchAll(row)].map(([, id, kind]) => ({ id, kind })));
}

/** A link that puts every number to one end of its range: 0 the lowest, 1 the highest. */
async function atEnd(end) {
  const numbers = (await rows()).flatMap(({ id, kind }) => {
    const ends = /^number\(\s*Dimension::\w+,\s*(-?[\d._e]+),\s*(-?[\d._e]+),/.exec(kind);
    return ends ? [`${id}=${Number(ends[1 + end].replaceAll("_", ""))}`] : [];
  });
  assert.ok(numbers.length > 80, `only ${numbers.length} ranges were read off the table`);
  return `v=1&${numbers.join("&")}`;
}

function encodedDeeply(text, times) {
  let encoded = text;
  for (let time = 0; time < times; time += 1) encoded = encodeURIComponent(encoded);
  return encoded;
}

async function visitor() {
  const visit = await site.visit(METRIC);
  const { page } = visit;
  const happened = [];
  page.on("dialog", async (dialog) => {
    happened.push(`dialog: ${dialog.message()}`);
    await dialog.dismiss();
  });
  page.on("popup", (popup) => happened.push(`window: ${popup.url()}`));
  page.on("framenavigated", (frame) => frame !== page.mainFrame() && happened.push(`frame: ${frame.url()}`));
  await ready(page);
  await entry(page, WALLS).fill("61");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await kept(page);
  const ownKeys = await page.evaluate(() => Object.keys(globalThis).sort());
  const mine = await ownStorage(page);
  return { ...visit, happened, ownKeys, mine };
}

const ownStorage = (page) =>
  page.evaluate(() => Object.fromEntries(Object.entries(localStorage).filter(([key]) => key !== "noonday.visit")));

async function assertUnharmed({ page, happened, ownKeys, mine, assertClean }) {
  assert.deepEqual(happened, []);
  assert.deepEqual(await page.evaluate(() => Object.keys(globalThis).sort()), ownKeys);
  assert.deepEqual(await ownStorage(page), mine);
  assert.equal(await page.locator("#stopped, iframe, main script, header script").count(), 0);
  assertClean();
}

/** Opens a link in the open page and asks it something; gives how long both took. */
async function answers(page, link) {
  const begun = performance.now();
  await page.evaluate((link) => (location.hash = link), link);
  await page.locator(".notices").getByText(/Opened from a link|The link cannot be opened/).first().waitFor({ timeout: ANSWERS_WITHIN_MS });
  await page.getByRole("button", { name: "Scenarios", exact: true }).click({ timeout: ANSWERS_WITHIN_MS });
  await page.locator(".shelf").waitFor({ timeout: ANSWERS_WITHIN_MS });
  await page.getByRole("button", { name: "Scenarios", exact: true }).click();
  await settled(page);
  const took = performance.now() - begun;
  assert.ok(took < ANSWERS_WITHIN_MS, `it took ${took.toFixed(0)} ms`);
  return took;
}

test("script in every text of a link is shown as text and does not run", async () => {
  assert.ok(FIELDS_OF_TEXT.length >= 3, `texts: ${FIELDS_OF_TEXT}`);
  const visit = await visitor();
  for (const script of SCRIPTS) {
    for (const id of FIELDS_OF_TEXT) {
      await visit.page.evaluate((link) => (location.hash = link), `v=1&${id}=${encodeURIComponent(script)}`);
      await settled(visit.page);
    }
    const name = script.slice(0, 40);
    await answers(visit.page, `v=1&1=${encodeURIComponent(name)}&2=${encodeURIComponent(script)}`);
  }
  await visit.page.evaluate((link) => (location.hash = link), `v=1&1=${encodeURIComponent("<b>bold</b>")}`);
  await visit.page.locator("h1", { hasText: "<b>bold</b>" }).waitFor();
  assert.equal(await visit.page.title(), "<b>bold</b> · Noonday");
  await assertUnharmed(visit);
  await visit.close();
});

test("links that are huge, deep, repeated or at every limit are opened or refused within seconds", async (context) => {
  const visit = await visitor();
  const links = {
    "a megabyte": `v=1&2=${"a".repeat(1e6)}`,
    "a packed megabyte": `2${"A".repeat(1e6)}`,
    "16 KiB of percent signs": `v=1&2=${"%25".repeat(5400)}`,
    "encoded fifty times": `v=1&2=${encodedDeeply("<script>", 50)}`,
    "half a percent sign": "v=1&2=%&1=%f",
    "bytes that are no text": "v=1&1=%ff%fe%80",
    "a thousand repeated fields": `v=1${"&18=0.05".repeat(1000)}`,
    "a thousand unknown fields": `v=1${Array.from({ length: 1000 }, (_, at) => `&${60_000 + (at % 5000)}=1`).join("")}`,
    "numbers that are none": "v=1&18=NaN&17=inf",
    "numbers too great": "v=1&18=1e999",
    "a very long number": `v=1&18=0.0${"1".repeat(9000)}`,
    "another version": `v=${"9".repeat(5000)}`,
    "every number at its lowest": await atEnd(0),
    "every number at its highest, seven days": await atEnd(1),
    "seven days of the greatest heat": "v=1&80=7&81=55&82=40&18=0&17=0",
    "names of a script's own": "v=1&__proto__=1&constructor=2",
  };
  for (const [name, link] of Object.entries(links)) {
    const took = await answers(visit.page, link);
    const told = await visit.page.locator(".notices").innerText();
    // This one has to be run, and not only refused.
    if (name.startsWith("seven days")) assert.doesNotMatch(told, /cannot be opened/);
    context.diagnostic(`${name}: ${took.toFixed(0)} ms, ${told.slice(0, 150).replaceAll("\n", " ")}`);
    // The next is told of anew.
    await visit.page.evaluate(() => (location.hash = "v=1&18=0.012"));
    await visit.page.getByText("Opened from a link").waitFor();
    await settled(visit.page);
  }
  await assertUnharmed(visit);
  await visit.close();
});

test("links that change without end neither stop the page nor fill its storage", async (context) => {
  const visit = await visitor();
  const { page } = visit;
  const begun = performance.now();
  await page.evaluate(async () => {
    for (let at = 0; at < 2000; at += 1) {
      // A browser refuses so many navigations of its own; this is what reaches the page of them all.
      dispatchEvent(new HashChangeEvent("hashchange", { oldURL: location.href, newURL: location.href }));
      if (at % 20 === 0) location.hash = `v=1&18=${0.01 + (at % 100) / 1000}&1=n${at}`;
      if (at % 200 === 0) await new Promise((done) => setTimeout(done));
    }
  });
  await page.getByText("Opened from a link").waitFor({ timeout: ANSWERS_WITHIN_MS });
  const said = await lead(page);
  await page.getByRole("button", { name: "Back to mine", exact: true }).click({ timeout: ANSWERS_WITHIN_MS });
  await settled(page);
  assert.equal(await entry(page, WALLS).inputValue(), "61");
  const took = performance.now() - begun;
  context.diagnostic(`${took.toFixed(0)} ms, and it said: ${said.slice(0, 60)}`);
  assert.ok(took < ANSWERS_WITHIN_MS, `it took ${took.toFixed(0)} ms`);
  await assertUnharmed(visit);
  await visit.close();
});

test("the policy allows no script but the page's own, no evaluation, and no foreign place", async () => {
  const { page, close } = await site.visit(METRIC);
  const policy = await page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content");
  const rules = Object.fromEntries(policy.split(";").map((rule) => rule.trim().split(/\s+(.*)/).slice(0, 2)));
  assert.equal(rules["default-src"], "'none'");
  const scripts = rules["script-src"].split(" ");
  assert.ok(scripts.every((source) => /^'(self|wasm-unsafe-eval|sha256-[\w+/]{43}=)'$/.test(source)), rules["script-src"]);
  assert.doesNotMatch(policy, /https?:|\*|'unsafe-eval'/);
  for (const rule of ["base-uri", "form-action"]) assert.equal(rules[rule], "'none'");
  const refused = await page.evaluate(() => {
    const attempts = [() => (0, eval)("1"), () => new Function("return 1")()];
    const button = document.createElement("button");
    button.setAttribute("onclick", "globalThis.ran = 1");
    button.click();
    const outcome = (attempt) => {
      try {
        return attempt();
      } catch (error) {
        return error.name;
      }
    };
    // In a later turn: in this one, the browser lets the test evaluate what it likes.
    return new Promise((done) => setTimeout(() => done([...attempts.map(outcome), globalThis.ran ?? "nothing ran"])));
  });
  assert.deepEqual(refused, ["EvalError", "EvalError", "nothing ran"]);
  await close();
});
