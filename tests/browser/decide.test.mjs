// What to decide, as a person uses it: it is worked out beside the page, can be stopped, and taken over with a way back.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, dragSlider, openSite, settled } from "./harness.mjs";
import { chartPixels, entry, lead, openGroup, ready, slider, temperatureChart, workedOut as complete } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const PATIENCE = { timeout: 60_000 };
const WALLS = "Insulation of the walls";

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const decide = (page) => page.locator("#decide");
const status = (page) => page.locator("[data-decide=status]");
const part = (page, heading) => decide(page).locator(".decision").filter({ has: page.getByRole("heading", { name: heading, exact: true }) });
const stop = (page) => decide(page).getByRole("button", { name: "Stop", exact: true });
const packages = (page) => decide(page).locator(".packages button");

/** Opens the page and waits until everything is worked out. */
async function decided(screen, address = "") {
  const visit = await site.visit({ ...screen, address });
  await ready(visit.page);
  await complete(visit.page);
  return visit;
}

test("everything is worked out, with a caution where it is about failure, and the charts get their band", async () => {
  const visit = await site.visit(PHONE);
  const { page } = visit;
  await ready(page);
  const bare = await chartPixels(temperatureChart(page));
  await complete(page);
  assert.notEqual(await chartPixels(temperatureChart(page)), bare, "no band is drawn");
  assert.match(await part(page, "Is cooling needed at all?").innerText(), /With the cooler[\s\S]*No cooler[\s\S]*shade all day/);
  assert.match(await part(page, "How big does it have to be?").innerText(), /BTU\/h, the smallest that will do[\s\S]*Ah, the smallest that will do/);
  assert.match(await part(page, "How sure is it?").innerText(), /Of 400 such days[\s\S]*\d+\s%/);
  assert.match(await part(page, "Why not just divide?").innerText(), /600\sAh by 67\sA[\s\S]*The run/);
  const fails = await part(page, "If it fails").innerText();
  assert.match(fails, /kills children and animals/);
  assert.match(fails, /does not mean safe/);
  // Whatever the wording becomes: nothing here may be called safe.
  assert.doesNotMatch(fails.replace("does not mean safe", "").replace("no safe limit", ""), /safe/i);
  await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
  visit.assertClean();
  await visit.close();
});

test("in the dark it breaks no accessibility rule either, and at 320 pixels nothing hangs over", async () => {
  const { page, close } = await decided({ viewport: { width: 320, height: 640 }, colorScheme: "dark" });
  await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0);
  await close();
});

test("a package becomes the scenario by keyboard, is one step back, and is worked on anew", async () => {
  const { page, assertClean, close } = await decided(METRIC);
  const said = await lead(page);
  const dot = decide(page).locator(".dot:not([disabled])").first();
  await dot.focus();
  assert.match(await dot.getAttribute("aria-label"), /\$/);
  await page.keyboard.press("Enter");
  await decide(page).getByText("The scenario now has").waitFor();
  await stop(page).waitFor(PATIENCE);
  await complete(page);
  // The scenario as it is stands in the drawing at no cost.
  assert.match(await decide(page).locator(".dot.as-it-is").getAttribute("aria-label"), /^no cost/);
  await decide(page).getByRole("button", { name: "Undo", exact: true }).click();
  await settled(page);
  assert.equal(await lead(page), said);
  await stop(page).waitFor(PATIENCE);
  await complete(page);
  assertClean();
  await close();
});

test("a line of the list does the same, and what is unticked is in no package", async () => {
  const { page, assertClean, close } = await decided(METRIC);
  assert.match((await packages(page).allInnerTexts()).join("\n"), /shade all day/);
  await decide(page).getByRole("checkbox", { name: "shade all day" }).uncheck();
  await complete(page);
  await decide(page).getByRole("checkbox", { name: "shade", exact: true }).waitFor();
  assert.doesNotMatch((await packages(page).allInnerTexts()).join("\n"), /shade/);
  const last = packages(page).last();
  const name = await last.locator(".package-name").innerText();
  await last.click();
  await decide(page).getByText(`The scenario now has ${name}.`).waitFor();
  assertClean();
  await close();
});

test("a change cancels the work on the state before, and nothing of it is shown as current", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await stop(page).waitFor(PATIENCE);
  await dragSlider(page, slider(page, WALLS), 0.9);
  await page.waitForFunction(() => document.querySelector("[data-decide=status]").textContent.includes("as soon as the inputs rest"));
  await complete(page);
  assert.equal(await decide(page).locator(".packages button[disabled]").count(), 0);
  await slider(page, WALLS).focus();
  await page.keyboard.press("ArrowLeft");
  await page.waitForFunction(() => document.querySelectorAll("#decide .packages button:not([disabled])").length === 0);
  assertClean();
  await close();
});

test("the work can be stopped and begun again, and the page moves meanwhile", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await stop(page).click(PATIENCE);
  await status(page).getByText("Stopped").waitFor();
  await page.waitForTimeout(500);
  assert.match(await status(page).innerText(), /^Stopped/);
  await decide(page).getByRole("button", { name: "Work it out", exact: true }).click();
  const worst = await page.evaluate(async () => {
    let [last, worst] = [performance.now(), 0];
    const until = last + 1500;
    while (last < until) {
      await new Promise(requestAnimationFrame);
      const now = performance.now();
      [worst, last] = [Math.max(worst, now - last), now];
    }
    return worst;
  });
  // Hundreds of days would hold the page up for longer than this; a busy machine only loses some frames.
  assert.ok(worst < 1000, `${worst.toFixed()} ms without a frame`);
  await complete(page);
  assertClean();
  await close();
});

test("prices and hours of work are inputs, and change what changes cost", async () => {
  const { page, assertClean, close } = await decided(METRIC);
  const costs = () => part(page, "Where does money go furthest?").locator("tr", { hasText: "a white roof" }).locator("td").first().innerText();
  const before = await costs();
  await decide(page).getByRole("button", { name: "Change prices and hours of work" }).click();
  const paint = entry(page, "Work: painting the roof white");
  await paint.fill("2");
  await paint.blur();
  await stop(page).waitFor(PATIENCE);
  await complete(page);
  assert.notEqual(await costs(), before);
  assertClean();
  await close();
});

test("a limit of the heat index is an input and decides", async () => {
  const { page, assertClean, close } = await site.visit({ ...METRIC, address: "#v=1&58=35&180=21" });
  await ready(page);
  assert.match(await lead(page), /heat index should stay below 21\s°C/);
  await openGroup(page, "When it must be cool");
  assertClean();
  await close();
});

test("where no worker is to be had the page says so and the rest works", async () => {
  const { page, close } = await site.visit({ ...METRIC, address: "worker.js" });
  await page.addInitScript(() => {
    globalThis.Worker = class {
      constructor() {
        throw new Error("none");
      }
    };
  });
  await page.goto(site.url);
  await ready(page);
  await status(page).getByText("does not let the page calculate them beside itself").waitFor(PATIENCE);
  const said = await lead(page);
  await dragSlider(page, slider(page, WALLS), 0);
  assert.notEqual(await lead(page), said);
  await close();
});
