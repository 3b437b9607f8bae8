// Whether weather is entered as people know it: humidity, coordinates, a weather file, the sun, and a whole summer.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { atHand, entry, lead, numbersIn, openGroup, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const PATIENCE = { timeout: 60_000 };

// Eight measured days of July at Golden, Colorado (see tests/reference/thermal/README.md).
const EPW = await readFile(new URL("../reference/thermal/weather_GOL.epw", import.meta.url));

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const weather = (page) => page.locator("#weather");
const button = (page, name) => weather(page).getByRole("button", { name, exact: true }).first();
const status = (page, mark) => weather(page).locator(`[data-weather=${mark}]`);

async function openPart(page, title) {
  await ready(page);
  await weather(page).waitFor();
  const part = weather(page).locator("details", { has: page.locator("summary", { hasText: title }) });
  if (!(await part.evaluate((element) => element.open))) await part.locator("> summary").click();
  await settled(page);
}

async function chooseFile(page, name = "place.epw", buffer = EPW) {
  await weather(page).locator("input[type=file]").first().setInputFiles({ name, mimeType: "text/plain", buffer });
}

/** Drops a text on the middle of the page, as a hand with a file would. */
async function dropFile(page, name, text) {
  await page.evaluate(
    ([name, text]) => {
      const data = new DataTransfer();
      data.items.add(new File([text], name));
      const drop = (kind) => document.body.dispatchEvent(new DragEvent(kind, { dataTransfer: data, bubbles: true, cancelable: true }));
      drop("dragover");
      drop("drop");
    },
    [name, text],
  );
}

test("humidity is entered as either, and changing over changes nothing", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await openGroup(page, "The day");
  const before = await lead(page);
  assert.equal(await entry(page, "Humidity in the warmest hour").count(), 0);
  await page.getByRole("radio", { name: "Relative humidity" }).check();
  await entry(page, "Humidity in the warmest hour").waitFor();
  assert.equal(await entry(page, "Dew point").count(), 0);
  // 36 °C with a dew point of 17 °C: 1.938 kPa over 5.947 kPa, by ASHRAE Fundamentals.
  assert.deepEqual(numbersIn(await entry(page, "Humidity in the warmest hour").inputValue()), [32.6]);
  assert.equal(await lead(page), before);
  await entry(page, "Humidity in the warmest hour").fill("95");
  await entry(page, "Humidity in the warmest hour").blur();
  await page.locator("#trouble-351", { hasText: "most humid coasts" }).waitFor();
  await atHand(page, "Undo").click();
  await atHand(page, "Undo").click();
  assert.equal(await entry(page, "Dew point").inputValue(), "17");
  assertClean();
  await close();
});

test("a place is pasted as a map writes it, and set in one step", async () => {
  const { page, assertClean, close } = await site.visit({ ...METRIC, timezoneId: "America/Phoenix" });
  await openPart(page, "The place by its coordinates");
  const box = page.getByRole("textbox", { name: "Coordinates" });
  await box.fill("33°27′N 112°4′12″W");
  await button(page, "Set the place").click();
  const told = await status(page, "place").innerText();
  assert.match(told, /33\.45° north, 112\.07° west.*UTC−7 without summer time, as on this device/);
  await openGroup(page, "Where it stands");
  assert.equal(await entry(page, "Latitude").inputValue(), "33.45");
  await box.fill("Main Street 5");
  await box.press("Enter");
  await page.locator("#coordinates-trouble", { hasText: "two numbers" }).waitFor();
  await box.fill("80, 10");
  await box.press("Enter");
  await page.locator("#coordinates-trouble", { hasText: "polar circles" }).waitFor();
  assert.equal(await entry(page, "Latitude").inputValue(), "33.45");
  await atHand(page, "Undo").click();
  assert.equal(await entry(page, "Latitude").inputValue(), "38");
  assertClean();
  await close();
});

test("the device is asked for its place only when that is wished, and a refusal is told in words", async () => {
  const allowed = await site.visit({ ...METRIC, timezoneId: "Europe/Madrid", geolocation: { latitude: 40.4, longitude: -3.7 }, permissions: ["geolocation"] });
  await openPart(allowed.page, "The place by its coordinates");
  await button(allowed.page, "Use this device's place").click();
  await status(allowed.page, "place").getByText("40.4° north, 3.7° west").waitFor();
  // The scenario is in July, when Madrid keeps summer time.
  assert.match(await status(allowed.page, "place").innerText(), /UTC\+1 with summer time/);
  allowed.assertClean();
  await allowed.close();
  const refused = await site.visit(METRIC);
  await openPart(refused.page, "The place by its coordinates");
  await button(refused.page, "Use this device's place").click();
  await refused.page.locator("#coordinates-trouble", { hasText: "not allowed" }).waitFor();
  await refused.close();
});

test("the sky shows which side the sun is on, and the vehicle turns under it", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await openPart(page, "Where the sun stands");
  const told = () => status(page, "sky").innerText();
  const sky = page.locator(".sun-dome");
  assert.match(await sky.getAttribute("aria-label"), /nose to the south.*rises at 06:\d\d in the (north-)?east/);
  const hour = page.getByRole("slider", { name: /^Time of day/ });
  await hour.fill("132");
  assert.match(await told(), /^17:00 · .*the right side \d+\sW\/m²/s);
  const sides = (text) => [...text.matchAll(/the (roof|nose|rear|left side|right side)/g)].map((match) => match[1]);
  assert.ok(sides(await told()).indexOf("right side") < sides(await told()).indexOf("left side"));
  const before = await sky.innerHTML();
  await page.getByRole("slider", { name: /^The nose points to/ }).fill("0");
  await settled(page);
  assert.notEqual(await sky.innerHTML(), before);
  assert.ok(sides(await told()).indexOf("left side") < sides(await told()).indexOf("right side"));
  await hour.fill("240");
  assert.match(await told(), /The sun is down/);
  assertClean();
  await close();
});

test("a day of a file sets place and forecast in one step, and says what that loses", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await openPart(page, "A day out of a weather file");
  await chooseFile(page);
  await status(page, "facts").getByText("39.74° north, 105.18° west").waitFor();
  assert.match(await status(page, "facts").innerText(), /8 days from 6 July to 13 July/);
  const days = page.getByRole("combobox", { name: "Day of the file" });
  const first = await days.locator("option").first().innerText();
  assert.match(first, /no\. 1 by heat/);
  await page.getByRole("combobox", { name: "Days in the order of" }).selectOption("date");
  assert.match(await days.locator("option").first().innerText(), /^6 July/);
  await button(page, "5th hottest").click();
  const told = await status(page, "day").innerText();
  assert.match(told, /off by \d(\.\d)?\s°C \(root mean square.*kWh\/m² where the file has/s);
  const before = await lead(page);
  await button(page, "Put the scenario on this day").click();
  await weather(page).getByText("The scenario is on this day now.").first().waitFor();
  await openGroup(page, "Where it stands");
  assert.equal(await entry(page, "Latitude").inputValue(), "39.74");
  await atHand(page, "Undo").click();
  assert.equal(await entry(page, "Latitude").inputValue(), "38");
  assert.equal(await lead(page), before);
  assertClean();
  await close();
});

test("a file is taken wherever it is dropped, and a broken one names line and field", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await weather(page).waitFor();
  const text = EPW.toString();
  await dropFile(page, "dropped.epw", text);
  await status(page, "facts").getByText("39.74° north").waitFor();
  const lines = text.split("\n");
  lines[20] = lines[20].replace(/^((?:[^,]*,){6})[^,]*/, "$1warm");
  await dropFile(page, "broken.epw", lines.join("\n"));
  await status(page, "trouble").getByText("Line 21: the dry bulb temperature cannot be read.").first().waitFor();
  await status(page, "facts").getByText("39.74° north").waitFor();
  await chooseFile(page, "long.epw", Buffer.alloc(9_000_000, "1"));
  await status(page, "trouble").getByText("at most 8.4 are read").first().waitFor();
  assertClean();
  await close();
});

test("a whole summer is counted, looked at day by day, saved, and a day of it opened", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await openPart(page, "A whole summer");
  await button(page, "Try an invented summer").click();
  assert.equal(await page.getByLabel("Days", { exact: true }).inputValue(), "92");
  await button(page, "Run these days").click();
  const cells = page.locator(".calendar button[data-day]");
  await page.waitForFunction(() => document.querySelectorAll(".calendar button[data-day]").length === 92, null, PATIENCE);
  const counts = await status(page, "counts").innerText();
  const nights = counts.match(/Of 92 nights .* met on (\d+) by the fan alone, on (\d+) by the cooler on the bank, and on (\d+) by/);
  const [fan, bank, mains] = nights.slice(1).map(Number);
  assert.ok(fan <= bank && bank <= mains && mains <= 92, counts);
  await page.waitForFunction(() => Number(document.querySelector("#weather [data-took-ms]").dataset.tookMs) > 0);
  const signs = await page.locator(".calendar .c-missed").count();
  assert.ok(signs > 0 && signs < 184);
  await cells.nth(9).click();
  await status(page, "one-day").getByText(/^10 June: outdoors/).waitFor();
  await page.keyboard.press("ArrowDown");
  await status(page, "one-day").getByText(/^17 June: outdoors/).waitFor();
  assert.equal(await page.locator(".calendar button[aria-pressed=true]").count(), 1);
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save the days (CSV)").click()]);
  const csv = await readFile(await download.path(), "utf8");
  assert.equal(csv.trim().split("\r\n").length, 93);
  await status(page, "one-day").getByRole("button", { name: "Put the scenario on this day" }).click();
  await openGroup(page, "The day");
  assert.equal(await page.locator("#field-78").inputValue(), "2026-06-17");
  await weather(page).getByText("The scenario is on this day now.").first().waitFor();
  // The day is the file's own, so that the summer is still that of this scenario; without a fan it would not be.
  assert.equal(await weather(page).getByText("The scenario has changed since").count(), 0);
  await openGroup(page, "Fan and windows");
  await page.getByRole("radio", { name: "Not at all" }).check();
  await weather(page).getByText("The scenario has changed since").waitFor();
  await atHand(page, "Undo").click();
  await atHand(page, "Undo").click();
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
    await openPart(page, "The place by its coordinates");
    await openPart(page, "Where the sun stands");
    await openPart(page, "A day out of a weather file");
    await button(page, "Try an invented summer").click();
    await openPart(page, "A whole summer");
    await button(page, "Run these days").click();
    await page.waitForFunction(() => document.querySelectorAll(".calendar button[data-day]").length === 92, null, PATIENCE);
    await page.locator(".calendar button[data-day]").nth(40).click();
    await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0);
    assertClean();
    await close();
  });
}
