// How it is built in, as a person uses it: a longer cable gets thicker, one too long is told what would do, the parts are saved.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { atHand, entry, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const PARTS = ["Cable and fuses", "12, 24 or 48 volts, direct or through an inverter", "What the bank allows, and what trips first", "Parts, price and order of work"];

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const building = (page) => page.locator("#building");
const part = (page, title) => building(page).locator("details.building-part").filter({ has: page.getByText(title, { exact: true }) });
const circuit = (page, name) => building(page).locator(".circuits li").filter({ has: page.getByText(name, { exact: true }) });
const plain = (text) => text.replace(/\s+/g, " ");

async function open(page, ...titles) {
  for (const title of titles) await part(page, title).locator("> summary").click();
  await settled(page);
}

async function visit(screen, ...titles) {
  const visit = await site.visit(screen);
  await ready(visit.page);
  await open(visit.page, ...titles);
  return visit;
}

/** The cross-section that a circuit's line names, mm². */
async function crossSection(page, name) {
  const said = plain(await circuit(page, name).locator("summary").innerText());
  return Number(said.match(/([\d.]+) mm²/)[1]);
}

/** Opens a circuit and types a length into its box. */
async function setLength(page, name, text) {
  const line = circuit(page, name);
  if (!(await line.locator("details").evaluate((details) => details.open))) await line.locator("summary").click();
  const box = line.getByRole("textbox", { name: /^Length one way/ });
  await box.fill(text);
  await settled(page);
  return box;
}

/** Rows of comma-separated values (RFC 4180). */
function readCsv(text) {
  const rows = text.split("\r\n").filter((line) => line !== "");
  return rows.map((line) => [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, field]) => field).slice(0, 4).map((field) => (field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field)));
}

test("a longer way gets a thicker cable, while the box keeps the keyboard, and one step takes it back", async () => {
  const { page, assertClean, close } = await visit(METRIC, PARTS[0]);
  const before = await crossSection(page, "Bus to cooler");
  const box = await setLength(page, "Bus to cooler", "7");
  assert.ok((await crossSection(page, "Bus to cooler")) > before);
  assert.ok(await box.evaluate((element) => element === document.activeElement));
  await page.keyboard.type("5");
  await settled(page);
  assert.equal(await box.inputValue(), "75");
  await box.blur();
  await page.getByText("Allowed is").or(circuit(page, "Bus to cooler").locator(".trouble")).first().waitFor();
  assert.equal(await box.getAttribute("aria-invalid"), "true");
  await atHand(page, "Undo").click();
  await settled(page);
  assert.equal(await crossSection(page, "Bus to cooler"), before);
  assertClean();
  await close();
});

test("where no cable will do it says what would, and that does", async () => {
  const { page, assertClean, close } = await visit(METRIC, PARTS[0]);
  const summary = async () => plain(await circuit(page, "Bus to cooler").locator("summary").innerText());
  await setLength(page, "Bus to cooler", "25");
  const said = await summary();
  assert.match(said, /no single cable will do/);
  const [, longest] = said.match(/with ([\d.]+) m one way at most/);
  assert.match(said, /with a bank of 24 V, or with \d equal cables side by side/);
  await setLength(page, "Bus to cooler", longest);
  assert.match(await summary(), /120 mm².*fuse 90 A/);
  assertClean();
  await close();
});

test("the working adds up, and the run takes the cable's resistance as one step", async () => {
  const { page, assertClean, close } = await visit(METRIC, PARTS[0]);
  const line = circuit(page, "Bus to cooler");
  await line.locator("summary").click();
  await line.getByText("33 CFR 183.425").first().waitFor();
  const text = plain(await line.innerText());
  const [, current, ohm, drop] = text.match(/([\d.]+) A × ([\d.]+) mΩ = ([\d.]+) V/).map(Number);
  // The current is shown in whole amperes.
  assert.ok(Math.abs(current * ohm * 1e-3 - drop) < 0.01, text);
  assert.match(text, /33 CFR 183\.425/);
  assert.match(text, /above the cut-out at 11 V/);
  const of = Number(text.match(/this cable and the bus’s have ([\d.]+) mΩ/)[1]);
  await line.getByRole("button", { name: "Let the run reckon with it" }).click();
  await line.getByText("The run reckons with the resistance of this cable").waitFor();
  await atHand(page, "Undo").click();
  await line.getByText(`have ${of} mΩ`).waitFor();
  assertClean();
  await close();
});

test("what else a way is described by is an input, and a lesser drop thickens the cable", async () => {
  const { page, assertClean, close } = await visit(METRIC, PARTS[0]);
  const line = circuit(page, "Controller to bank");
  const before = await crossSection(page, "Controller to bank");
  await line.locator("summary").click();
  await line.getByRole("button", { name: "Drop allowed, heat, bundle" }).click();
  const drop = entry(page, "Drop allowed, Cable from controller to bank");
  await drop.fill("1");
  await drop.blur();
  await settled(page);
  assert.ok((await crossSection(page, "Controller to bank")) > before);
  assertClean();
  await close();
});

test("six ways to feed the cooler stand side by side, and the bank names what trips", async () => {
  const { page, assertClean, close } = await visit(METRIC, PARTS[1], PARTS[2]);
  const rows = await part(page, PARTS[1]).locator("tbody tr").allInnerTexts();
  assert.equal(rows.length, 6);
  const amps = rows.slice(0, 3).map((row) => Number(plain(row).match(/([\d.]+) A, start/)[1]));
  assert.ok(Math.abs(amps[0] / 4 - amps[2]) < 0.6, String(amps));
  assert.match(await part(page, PARTS[1]).innerText(), /licensed electrician/);
  assert.match(await part(page, PARTS[2]).innerText(), /Nothing trips/);
  await part(page, PARTS[2]).getByRole("button", { name: "Change packs and limits" }).click();
  const packs = entry(page, "Packs in parallel");
  await packs.fill("1");
  await packs.blur();
  const limit = entry(page, "Highest discharge current");
  if (!(await limit.count())) await page.locator("#battery > summary").click();
  await page.locator("#battery .finer > summary").click();
  await limit.fill("50");
  await limit.blur();
  await settled(page);
  assert.match(await part(page, PARTS[2]).innerText(), /Trips: the bank’s protection, for good/);
  assertClean();
  await close();
});

test("the list of parts is saved as CSV and adds up", async () => {
  const { page, assertClean, close } = await visit(DESKTOP, PARTS[3]);
  const saving = page.waitForEvent("download");
  await part(page, PARTS[3]).getByRole("button", { name: "Save the parts as CSV" }).click();
  const download = await saving;
  assert.equal(download.suggestedFilename(), "noonday-parts.csv");
  const rows = readCsv(await readFile(await download.path(), "utf8"));
  assert.deepEqual(rows[0], ["Part", "How much", "Price", "Currency"]);
  const prices = rows.slice(1, -1).map(([, , price]) => Number(price));
  const sum = prices.reduce((total, price) => total + price, 0);
  assert.ok(Math.abs(sum - Number(rows.at(-1)[2])) < 0.01 * rows.length, `${sum}`);
  assert.ok(rows.some(([part]) => /^Cable 1 AWG, Bus to cooler$/.test(part)));
  const shown = await part(page, PARTS[3]).locator("tbody tr").count();
  assert.equal(rows.length - 1, shown);
  const order = plain(await part(page, PARTS[3]).locator("ol").innerText());
  assert.ok(order.indexOf("both sides of the skin before cutting") < order.indexOf("cut between ribs"));
  assert.match(order, /Hold: set the fuse at the bank first, within 7 in/);
  assertClean();
  await close();
});

for (const [name, screen] of [
  ["on a phone", PHONE],
  ["in the dark at 320 pixels", { viewport: { width: 320, height: 640 }, colorScheme: "dark" }],
  ["on a wide screen", METRIC],
]) {
  test(`all of it open breaks no accessibility rule ${name}, and nothing hangs over`, async () => {
    const { page, assertClean, close } = await visit(screen, ...PARTS);
    await circuit(page, "Bus to cooler").locator("summary").click();
    await settled(page);
    assert.match(await part(page, PARTS[0]).innerText(), /within 7 in/);
    await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0);
    assertClean();
    await close();
  });
}

test("closed parts hold nothing", async () => {
  const { page, close } = await visit(METRIC, PARTS[0]);
  await open(page, PARTS[0]);
  assert.equal(await building(page).locator("table, .circuits, ol").count(), 0);
  await close();
});
