// The client's report, as it is opened, waited for, printed on both papers, and left again.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { after, before, test } from "node:test";
import { promisify } from "node:util";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { entry, lead, openGroup, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const GERMAN = { ...DESKTOP, locale: "de-DE" };
const NAME = "The long summer van of a family of four, with two large dogs";
const NOTE =
  "For the people who asked in June whether the roof unit would carry them through a week on the coast, parked in the sun beside the harbour with the dogs in it while everybody is out, and who wanted it in writing on two pages at the most, with prices. Second visit planned.";
// Days, a high, three windows, driving, shore, an inverter, opened windows, another load, people: as much to say as there can be.
const MUCH = `v=1&1=${encodeURIComponent(NAME)}&2=${encodeURIComponent(NOTE)}&80=5&81=41&65=people&145=1&150=600&110=mains_through_inverter&125=0.1&165=120&41=4&400=Ada%20and%20Bo%20of%20the%20house%20by%20the%20harbour&401=Cooling%20and%20Conversions,%20third%20street`;

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const opener = (page) => page.getByRole("button", { name: "Report", exact: true }).filter({ visible: true });
const sheets = (page) => page.locator(".sheet");
const open = async (page) => {
  // On a phone it is opened beside the code.
  if (!(await opener(page).isVisible())) await page.locator(".masthead .send").click();
  await opener(page).click();
  await sheets(page).first().waitFor();
};
const complete = (page) => page.getByText("Two pages, on A4 or Letter").waitFor({ timeout: 120_000 });
const focused = (page, text) => page.waitForFunction((text) => document.activeElement.textContent === text, text);
const plain = (text) => text.replaceAll("\u00a0", " ").replace(/\s+/g, " ");

/** The text of each page of what the browser prints. */
async function printed(page, format) {
  const paper = await page.pdf({ format, printBackground: true });
  const converting = promisify(execFile)("pdftotext", ["-layout", "-", "-"]);
  converting.child.stdin.end(paper);
  // A form feed ends each page.
  return (await converting).stdout.split("\f").slice(0, -1).map(plain);
}

test("it takes the place of the consult, in an entry of its own, and leaves the link in the address alone", async () => {
  const { page, assertClean, close } = await site.visit({ ...METRIC, address: "#v=1&81=38" });
  await ready(page);
  const [address, said] = [page.url(), await lead(page)];
  await open(page);
  assert.equal(page.url(), address);
  assert.ok(await page.locator("[data-answer=lead]").isHidden());
  assert.match(await page.title(), /report/);
  await focused(page, "Back to the consult");
  await page.reload();
  await sheets(page).first().waitFor();
  await page.goBack();
  await page.locator("[data-answer=lead]").waitFor();
  assert.equal(await sheets(page).count(), 0);
  assert.equal(page.url(), address);
  assert.equal(await lead(page), said);
  await page.goForward();
  await sheets(page).first().waitFor();
  await page.getByRole("button", { name: "Back to the consult" }).click();
  await page.locator("[data-answer=lead]").waitFor();
  await focused(page, "Example: two people and a dog");
  assertClean();
  await close();
});

test("a link that arrives while it is looked at opens the consult that the link holds", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await open(page);
  await page.evaluate(() => (location.hash = "v=1&1=Another"));
  await page.getByText("Opened from a link").waitFor();
  assert.equal(await page.locator("h1").innerText(), "Another");
  assertClean();
  await close();
});

test("it says how far the work is, and prints what is there", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await open(page);
  await page.getByText("joins the report as it comes").waitFor();
  const early = await printed(page, "A4");
  assert.equal(early.length, 2);
  assert.match(early[0], /Where the heat comes from/);
  await complete(page);
  const late = (await printed(page, "A4")).join(" ");
  assert.doesNotMatch(late, /Not worked out yet/);
  assert.match(late, /Instead: shade all day/);
  assertClean();
  await close();
});

for (const [name, screen, format, address] of [
  ["the example on Letter in US units", DESKTOP, "Letter", ""],
  ["the example on A4 in metric units, from the dark", { ...METRIC, colorScheme: "dark" }, "A4", ""],
  ["as much as there can be, on Letter in US units", DESKTOP, "Letter", `#${MUCH}`],
  ["as much as there can be, on A4 in German", GERMAN, "A4", `#${MUCH}`],
  ["no cooler and no hours, on Letter in metric units", METRIC, "Letter", "#v=1&93=0&55=nobody&60=nobody"],
  ["lead and little of it, from a phone", { ...PHONE, locale: "en-GB" }, "A4", "#v=1&128=flooded_lead&130=100"],
]) {
  test(`two pages at most, with all that belongs on them: ${name}`, async () => {
    const { page, assertClean, close } = await site.visit({ ...screen, address });
    await ready(page);
    const said = plain(await lead(page));
    await open(page);
    await complete(page);
    const pages = await printed(page, format);
    assert.equal(pages.length, 2);
    const [first, second] = pages;
    assert.ok(first.includes(said.slice(0, 40)), first.slice(0, 600));
    for (const part of ["The situation", "The day", "Where the heat comes from", "Charge of the bank", "1 of 2"]) {
      assert.ok(first.includes(part), `${part} is not on the first page`);
    }
    for (const part of ["What was considered", "What to expect", "What not to expect", "Heat kills children and animals", "batteries.", "High current.", "Local codes", "What it rests on", "other inputs that bear on it", "Open this scenario", "2 of 2"]) {
      assert.ok(second.includes(part), `${part} is not on the second page`);
    }
    if (address.includes(encodeURIComponent(NOTE))) {
      assert.ok(first.includes(NOTE.slice(-20)) && first.includes(NAME.slice(-20)), first.slice(0, 800));
    }
    assert.doesNotMatch(pages.join(" "), /Back to the consult|Copy link|Print, or save/);
    assert.equal(await page.locator("html").getAttribute("data-print"), null, "the page stays as printed");
    // What does not fit its sheet would be cut off by nothing, so it must not be wider than the sheet either.
    const wide = await page.locator(".paper").evaluate((paper) => [...paper.querySelectorAll("*")].filter((one) => one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0 && getComputedStyle(one).display !== "inline").map((one) => one.className || one.tagName));
    assert.deepEqual(wide, []);
    assertClean();
    await close();
  });
}

test("printed from the consult, it is the report, and the consult is as before", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const pages = await printed(page, "A4");
  assert.equal(pages.length, 2);
  assert.match(pages[1], /What not to expect/);
  assert.equal(await sheets(page).count(), 0);
  assert.ok(await page.locator("[data-answer=lead]").isVisible());
  assertClean();
  await close();
});

test("whom it is for and what was noted stand on it, and its link opens the same", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await openGroup(page, "Name and note");
  await entry(page, "Name").fill("Van <i>of</i> Ada & Bo");
  await entry(page, "For whom").fill("Ada");
  await entry(page, "From").fill("Bo");
  await entry(page, "From").blur();
  await open(page);
  assert.match(await page.locator(".paper .head").innerText(), /For Ada, from Bo/);
  assert.equal(await page.locator(".paper-code svg").count(), 1);
  assert.equal(await page.locator(".paper h1").innerText(), "Van <i>of</i> Ada & Bo");
  const said = await page.locator(".says").innerText();
  const link = await page.getByRole("link", { name: "Open this scenario" }).getAttribute("href");
  await page.goto("about:blank");
  await page.goto(link);
  await ready(page);
  assert.equal(await page.locator("h1").innerText(), "Van <i>of</i> Ada & Bo");
  assert.equal(await lead(page), said);
  assertClean();
  await close();
});

for (const [name, screen] of [
  ["a phone", PHONE],
  ["320 pixels in the dark", { viewport: { width: 320, height: 640 }, colorScheme: "dark" }],
  ["a desktop in the dark", { ...DESKTOP, colorScheme: "dark" }],
]) {
  test(`on the screen nothing hangs over and no accessibility rule is broken (${name})`, async () => {
    const { page, assertClean, close } = await site.visit({ ...screen, address: `#${MUCH}` });
    await ready(page);
    await open(page);
    await complete(page);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0);
    await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
    assertClean();
    await close();
  });
}
