// Scenarios side by side, as a person compares them: chosen from a list, over each other with letters at their lines, opened by one press.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { entry, lead, openGroup, ready, workedOut } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const SAVED = [
  ["noonday.saved.1", { name: "Half the bank", saved_at: "2026-05-01T00:00:00Z", form: "v=1" }],
  ["noonday.saved.2", { name: "A name <b>that</b> is as long as a name may be in all of it", saved_at: "2026-05-02T00:00:00Z", form: "v=1" }],
  ["noonday.saved.3", { name: "Damaged", saved_at: "2026-05-03T00:00:00Z", form: "v=1&18=x" }],
];

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const section = (page) => page.locator("#compare");
const box = (page, name) => section(page).getByRole("checkbox", { name });
const row = (page, name) => section(page).getByRole("row").filter({ has: page.getByRole("rowheader", { name, exact: true }) });
const cells = async (page, name) => (await row(page, name).getByRole("cell").allInnerTexts()).map((text) => text.replace(/\s+/g, " ").trim());

/** Opens the page with two scenarios saved, one of half the bank and one long of name, and a damaged entry. */
async function comparing(screen) {
  const visit = await site.visit(screen);
  const { page } = visit;
  await ready(page);
  await openGroup(page, "The bank");
  await entry(page, "Capacity of the bank").fill("300");
  await entry(page, "Capacity of the bank").blur();
  await page.getByRole("button", { name: "Save", exact: true }).click();
  const half = await page.evaluate(() => JSON.parse(Object.entries(localStorage).find(([key]) => key.startsWith("noonday.saved."))[1]).form);
  await page.evaluate(() => localStorage.clear());
  SAVED[0][1].form = half;
  await page.evaluate((all) => all.forEach(([key, value]) => localStorage.setItem(key, JSON.stringify(value))), SAVED);
  await page.goto(site.url);
  await page.evaluate(() => localStorage.removeItem("noonday.working"));
  await page.reload();
  await ready(page);
  await section(page).getByText("Compare scenarios").click();
  await settled(page);
  return visit;
}

test("what is chosen stands over each other, with its answers and only the inputs that differ", async () => {
  const { page, assertClean, close } = await comparing(METRIC);
  assert.equal(await section(page).locator(".overlay svg").count(), 3);
  // What is shown and the newest two stand there to begin with.
  assert.equal(await section(page).getByRole("checkbox", { checked: true }).count(), 3);
  await box(page, /the example/).check();
  for (const svg of await section(page).locator(".overlay svg").all()) {
    const names = await svg.locator("text.name").allTextContents();
    assert.ok(names.length >= 2 && names.every((name) => /^[A-D] · /.test(name)), names.join("; "));
  }
  const dashes = await section(page).locator(".overlay").first().locator(".strand").evaluateAll((lines) => lines.map((line) => getComputedStyle(line).strokeDasharray));
  assert.equal(new Set(dashes).size, dashes.length, "lines of one look");
  const capacity = await cells(page, "Capacity of the bank");
  assert.ok(capacity.includes("600 Ah") && capacity.includes("300 Ah"), capacity.join("; "));
  assert.equal(await row(page, "Insulation of the roof").count(), 0, "an input that is the same is listed");
  const weights = (await cells(page, "Weight")).map((text) => text.match(/[\d.,]+ kg|–/)?.[0]);
  // By hand: 300 Ah of 12.8 V at 105 Wh/kg are 36.6 kg.
  const [whole, half] = [weights[capacity.indexOf("600 Ah")], weights[capacity.indexOf("300 Ah")]].map(parseFloat);
  assert.ok(Math.abs(whole - half - 36.6) <= 1, weights.join("; "));
  assertClean();
  await close();
});

test("an entry that cannot be read says so in its column, and no fifth can be chosen", async () => {
  const { page, assertClean, close } = await comparing(METRIC);
  await box(page, /Half the bank/).check();
  if (!(await box(page, /Damaged/).isChecked())) await box(page, /Damaged/).check();
  assert.match(await section(page).locator(".heads li").filter({ hasText: "Damaged" }).innerText(), /Cannot be compared: .*Insulation/);
  assert.ok((await cells(page, "Weight")).includes("–"));
  assert.match(await section(page).innerText(), /Four are chosen/);
  const open = section(page).getByRole("checkbox", { checked: false });
  for (const other of await open.all()) assert.ok(await other.isDisabled());
  await box(page, /Damaged/).uncheck();
  await open.last().check();
  assertClean();
  await close();
});

test("one press opens what is compared, and back returns", async () => {
  const { page, assertClean, close } = await comparing(METRIC);
  await box(page, /Half the bank/).check();
  const before = await lead(page);
  await section(page).getByRole("button", { name: "Open “Half the bank”" }).click();
  await settled(page);
  assert.notEqual(await lead(page), before);
  assert.equal(await page.evaluate(() => scrollY), 0);
  await page.goBack();
  await settled(page);
  assert.equal(await lead(page), before);
  assertClean();
  await close();
});

test("the working of the weight names what has no source", async () => {
  const { page, assertClean, close } = await comparing(METRIC);
  await section(page).getByText("How the weight is reckoned").click();
  await section(page).getByText(/7,680\sWh over 105\sWh\/kg/).first().waitFor();
  const said = await section(page).innerText();
  assert.match(said, /Common practice, no source/);
  assert.match(said, /weigh the vehicle/);
  assertClean();
  await close();
});

for (const [name, screen] of [
  ["a phone", PHONE],
  ["320 pixels in the dark, in German", { viewport: { width: 320, height: 640 }, colorScheme: "dark", locale: "de-DE" }],
  ["a desktop", DESKTOP],
]) {
  test(`nothing hangs over and no accessibility rule is broken (${name})`, async () => {
    const { page, assertClean, close } = await comparing(screen);
    await box(page, /Half the bank/).check();
    await section(page).getByText("How the weight is reckoned").click();
    await workedOut(page);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0);
    // Screen readers still find rows and cells where the table is laid out as stacks.
    assert.ok((await cells(page, "Lowest charge")).length >= 3);
    await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
    assertClean();
    await close();
  });
}
