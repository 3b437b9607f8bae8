// Whether it does what was promised, as a person asks it: readings of a unit, and a logged day.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { atHand, entry, kept, openGroup, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const PATIENCE = { timeout: 60_000 };
const READINGS = "What was read off the finished unit";

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const proving = (page) => page.locator("#proving");
const check = (page) => page.locator("[data-proving=readings]");
const choose = (page, label) => proving(page).getByRole("checkbox", { name: label }).or(proving(page).getByRole("switch", { name: label })).first();
const log = (page) => page.getByRole("textbox", { name: "The log", exact: true });
const fit = (page) => proving(page).getByRole("button", { name: "Fit the scenario to the log" });

async function type(page, label, text) {
  const box = entry(page, label);
  await box.fill(text);
  await box.blur();
  await settled(page);
}

async function withReadings(page) {
  await openGroup(page, READINGS);
  await choose(page, "There are readings").check();
  await settled(page);
}

async function openLesson(page) {
  await proving(page).getByText("Learn from a logged day", { exact: true }).click();
  await log(page).waitFor();
}

/** A day as a logger writes it, see its first line. */
const DAY = await readFile(new URL("logged-day.csv", import.meta.url), "utf8");

test("a sound unit is as expected, and too little air comes first where the air out is too cold", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await proving(page).scrollIntoViewIfNeeded();
  await withReadings(page);
  assert.match(await check(page).innerText(), /^As expected[\s\S]*Current[\s\S]*within/);
  await type(page, "Air out of the cooler", "8");
  const told = await check(page).innerText();
  assert.match(told, /^(Not as expected|Doubtful)/);
  assert.match(await check(page).locator(".causes li").first().innerText(), /^Too little air over the coil[\s\S]*Clean filter/);
  await type(page, "Air out of the cooler", "25");
  assert.match(await check(page).innerText(), /Too little refrigerant[\s\S]*do not open the circuit/);
  assertClean();
  await close();
});

test("a reading out of its range is kept as typed and says why", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await withReadings(page);
  await type(page, "Current drawn for the cooler", "9999");
  assert.equal(await entry(page, "Current drawn for the cooler").inputValue(), "9999");
  assert.match(await proving(page).locator(".trouble:not(:empty)").first().innerText(), /500/);
  assertClean();
  await close();
});

test("a log is fitted, taken over, and taken back in one step", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await openLesson(page);
  await log(page).fill(DAY);
  await page.locator("[data-proving=facts]").getByText("144 points").waitFor();
  await fit(page).click();
  await proving(page).getByRole("button", { name: "Put these values into the scenario" }).waitFor(PATIENCE);
  const table = await proving(page).locator(".learn table").first().innerText();
  assert.match(await proving(page).locator(".learn .said").first().innerText(), /^What was wrong: share of roof and walls filled/);
  assert.match(table, /Share of roof and walls filled[\s\S]*Leakage area[\s\S]*Heat capacity/);
  assert.equal(await proving(page).locator(".fit svg .line").count(), 4);
  await openGroup(page, "Its shell");
  const filled = entry(page, "Share really filled").or(page.locator("#field-20")).first();
  const before = await filled.inputValue();
  await proving(page).getByRole("button", { name: "Put these values into the scenario" }).click();
  await proving(page).getByText("The scenario now has the fitted values.").waitFor();
  assert.notEqual(await filled.inputValue(), before);
  await atHand(page, "Undo").click();
  assert.equal(await filled.inputValue(), before);
  // The log is kept on the device and in no address.
  await kept(page);
  assert.doesNotMatch(page.url(), /Cabin/);
  await page.reload();
  await ready(page);
  await openLesson(page);
  assert.equal(await log(page).inputValue(), DAY);
  assertClean();
  await close();
});

test("a broken log keeps its text and names the line", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await openLesson(page);
  const broken = "time,cabin\n06:00,21\n06:10,warm\n06:20,22";
  await log(page).fill(broken);
  await page.locator("#log-trouble").getByText("Line 3, cabin temperature: “warm” cannot be read.").waitFor();
  assert.equal(await log(page).inputValue(), broken);
  assert.equal(await fit(page).getAttribute("aria-disabled"), "true");
  await page.locator(".log-tools input[type=file]").setInputFiles({ name: "day.csv", mimeType: "text/csv", buffer: Buffer.from(DAY) });
  await page.locator("[data-proving=facts]").getByText("144 points").waitFor();
  await page.locator(".log-tools input[type=file]").setInputFiles({ name: "long.csv", mimeType: "text/csv", buffer: Buffer.alloc(1_200_000, "1") });
  await page.locator("#log-trouble").getByText("1200 kB").waitFor();
  assert.equal(await log(page).inputValue(), DAY);
  assertClean();
  await close();
});

for (const [name, screen] of [
  ["on a phone", PHONE],
  ["at 320 pixels", { viewport: { width: 320, height: 640 } }],
  ["on a desk, in the dark", { ...DESKTOP, colorScheme: "dark" }],
]) {
  test(`it breaks no accessibility rule ${name}, and nothing hangs over`, async () => {
    const { page, assertClean, close } = await site.visit(screen);
    await ready(page);
    await withReadings(page);
    await type(page, "Air out of the cooler", "70");
    await openLesson(page);
    await log(page).fill(DAY);
    await choose(page, "Temperatures are in °F").waitFor();
    await fit(page).click();
    await proving(page).getByRole("button", { name: "Put these values into the scenario" }).waitFor(PATIENCE);
    await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0);
    assertClean();
    await close();
  });
}
