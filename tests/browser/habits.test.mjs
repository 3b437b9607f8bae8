// The habits of the platform: changes taken back, a state pinned, back and forward, sharing, the browser's language.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, dragSlider, openSite, settled } from "./harness.mjs";
import { atHand, bankChart, chartPixels, entry, kept, lead, openGroup, ready, slider, temperatureChart } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const WALLS = "Insulation of the walls";

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

test("a drag is taken back in one step and made again, by button and by keys", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const before = { said: await lead(page), drawn: await chartPixels(temperatureChart(page)) };
  const undo = atHand(page, "Undo");
  assert.equal(await undo.getAttribute("aria-disabled"), "true");
  await dragSlider(page, slider(page, WALLS), 0);
  await dragSlider(page, slider(page, "Insulation of the roof"), 0);
  const after = await lead(page);
  assert.match(await undo.innerText(), /Undo Insulation of the roof/);
  await undo.click();
  await undo.click();
  await settled(page);
  assert.equal(await lead(page), before.said);
  assert.equal(await chartPixels(temperatureChart(page)), before.drawn);
  assert.equal(await undo.getAttribute("aria-disabled"), "true");
  await atHand(page, "Redo").click();
  await page.keyboard.press("Control+Shift+z");
  await settled(page);
  assert.equal(await lead(page), after);
  await entry(page, WALLS).focus();
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  assert.equal(await entry(page, WALLS).inputValue(), "40");
  await page.keyboard.press("Control+y");
  assert.equal(await entry(page, WALLS).inputValue(), "0");
  assertClean();
  await close();
});

test("undo takes back an entry that cannot be used, a choice, a switch and a way back to the example's value", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  const walls = entry(page, WALLS);
  await walls.fill("70");
  await walls.fill("abc");
  await walls.blur();
  await page.keyboard.press("Control+z");
  await settled(page);
  assert.equal(await walls.inputValue(), "40");
  assert.equal(await walls.getAttribute("aria-invalid"), "false");

  const material = page.getByRole("combobox", { name: "Insulation", exact: true });
  const before = await material.inputValue();
  await material.selectOption({ index: 0 });
  await dragSlider(page, slider(page, WALLS), 0.9);
  await page.getByRole("button", { name: new RegExp(`^Back to 40\\smm: ${WALLS}$`) }).click();
  await page.keyboard.press("Control+z");
  assert.notEqual(await walls.inputValue(), "40");
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  assert.equal(await material.inputValue(), before);
  await close();
});

for (const [name, screen] of Object.entries({ phone: { ...PHONE, locale: "en-GB" }, desktop: METRIC })) {
  test(`on a ${name} a pinned state stays on charts and figures, and every difference is told`, async () => {
    const { page, assertClean, close } = await site.visit(screen);
    await ready(page);
    const pinnedLead = await lead(page);
    await atHand(page, "Pin this").click();
    assert.match(await page.locator(".then").innerText(), /Nothing is changed since/);
    assert.equal(await page.locator(".since").count(), 0);
    await dragSlider(page, slider(page, WALLS), 0);
    const then = await page.locator(".then").innerText();
    assert.ok(then.includes(pinnedLead), then);
    assert.match(then, /Insulation of the walls 40\s?mm\s→ 0\s?mm/);
    assert.match(await page.locator("#figures").innerText(), /Lowest charge[^\n]*\n?[^\n]*\(−\d+\spoints\)/);
    await page.getByRole("slider", { name: "Hour of the day" }).fill("110");
    assert.match(await page.locator("[data-reading]").first().innerText(), /cabin, felt.*\(\+\d+\s°C\)/s);
    await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);

    const withGhost = [await chartPixels(temperatureChart(page)), await chartPixels(bankChart(page))];
    await atHand(page, "Unpin").click();
    assert.notEqual(await chartPixels(temperatureChart(page)), withGhost[0]);
    assert.notEqual(await chartPixels(bankChart(page)), withGhost[1]);
    assert.equal(await page.locator(".then").innerText(), "");
    assert.equal(await page.locator(".since").count(), 0);
    assertClean();
    await close();
  });
}

test("back and forward go between the scenarios opened, each as it was left", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const walls = entry(page, WALLS);
  await walls.fill("77");
  await walls.blur();
  await kept(page);
  await page.evaluate(() => (location.hash = "v=1&1=Theirs&18=0.012"));
  await page.getByText("Opened from a link").waitFor();
  await walls.fill("13");
  await walls.blur();
  await kept(page);
  await page.getByRole("button", { name: "Scenarios", exact: true }).click();
  await page.getByRole("button", { name: "Open the example" }).click();
  await settled(page);
  assert.equal(await walls.inputValue(), "40");

  await page.goBack();
  await page.waitForFunction(() => document.querySelector("h1").textContent === "Theirs");
  assert.equal(await walls.inputValue(), "13");
  assert.equal(await page.getByText("Opened from a link").count(), 1);
  await page.goBack();
  await page.waitForFunction(() => document.querySelector("h1").textContent !== "Theirs");
  assert.equal(await walls.inputValue(), "77");
  assert.equal(await page.getByText("Opened from a link").count(), 0);
  await page.reload();
  await ready(page);
  assert.equal(await walls.inputValue(), "77");
  await page.goForward();
  await page.waitForFunction(() => document.querySelector("h1").textContent === "Theirs");
  assert.equal(await walls.inputValue(), "13");
  assertClean();
  await close();
});

test("where the device can send a link, it is asked to, with the answer beside it", async () => {
  const { page, context, close } = await site.visit(METRIC);
  assert.equal(await page.getByRole("button", { name: "Share" }).count(), 0, "offered where it cannot be done");
  await context.addInitScript(() => {
    navigator.share = async (data) => {
      globalThis.sent = data;
    };
  });
  await page.reload();
  await ready(page);
  await page.getByRole("button", { name: "Share" }).click();
  await page.waitForFunction(() => globalThis.sent);
  const sent = await page.evaluate(() => globalThis.sent);
  assert.equal(sent.url, page.url());
  assert.match(sent.url, /#2[\w-]+$/);
  assert.equal(sent.text.replaceAll("\u00a0", " "), (await lead(page)).replaceAll("\u00a0", " "));
  await close();
});

test("numbers and dates are written as the browser's language does, and read back so", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, locale: "de-DE" });
  await ready(page);
  assert.match(await page.locator("#figures").innerText(), /\d\.\d{3}\sWh/);
  await openGroup(page, "The vehicle");
  const length = entry(page, "Inner length");
  assert.equal(await length.inputValue(), "4,2");
  await length.fill("3,85");
  await length.blur();
  assert.equal(await length.inputValue(), "3,85");
  assert.match(await page.locator("#day > summary").innerText(), /\d+ [A-Z][a-z]+ 20\d\d/);
  await close();
});

test("the whole job can be done with the keyboard alone", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const before = await lead(page);
  const focused = () => page.evaluate(() => document.activeElement.getAttribute("aria-label") ?? document.activeElement.innerText ?? "");
  const tabTo = async (wanted, key = "Tab") => {
    for (let stop = 0; stop < 300; stop += 1) {
      if (wanted.test(await focused())) {
        const seen = await page.evaluate(() => {
          const box = document.activeElement.getBoundingClientRect();
          const middle = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height, 40) / 2);
          return Boolean(middle && (document.activeElement.contains(middle) || middle.contains(document.activeElement)));
        });
        assert.ok(seen, `${wanted} has the focus and cannot be seen`);
        return;
      }
      await page.keyboard.press(key);
    }
    assert.fail(`${wanted} cannot be reached; the focus is on ${await focused()}`);
  };

  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await tabTo(/^The bank/);
  await page.keyboard.press("Enter");
  await tabTo(/^Capacity of the bank, Ah/);
  await page.keyboard.press("Control+a");
  await page.keyboard.type("100");
  await page.keyboard.press("Enter");
  await settled(page);
  assert.notEqual(await lead(page), before);
  await tabTo(/^Capacity of the bank$/);
  await page.keyboard.press("End");
  await settled(page);
  assert.ok(Number(await entry(page, "Capacity of the bank").inputValue()) > 500);
  await tabTo(/^Pin this/);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+z");
  await tabTo(/^Hour of the day/, "Shift+Tab");
  await page.keyboard.press("Home");
  assert.match(await page.locator("[data-reading]").first().innerText(), /^06:00/);
  await tabTo(/^Scenarios/, "Shift+Tab");
  await page.keyboard.press("Enter");
  await tabTo(/^Save/, "Shift+Tab");
  await page.keyboard.press("Enter");
  await page.getByText(/^Saved as/).waitFor();
  await tabTo(/^Open “/);
  await page.keyboard.press("Enter");
  await page.getByText(/^Opened “/).waitFor();
  assertClean();
  await close();
});

test("with reduced motion nothing moves by itself", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, reducedMotion: "reduce" });
  await ready(page);
  const moving = await page.evaluate(() =>
    [...document.querySelectorAll("*")]
      .filter((element) => {
        const { animationName, animationDuration, transitionDuration, scrollBehavior } = getComputedStyle(element);
        const lasts = (durations) => durations.split(",").some((duration) => parseFloat(duration) > 0);
        return (animationName !== "none" && lasts(animationDuration)) || lasts(transitionDuration) || scrollBehavior === "smooth";
      })
      .map((element) => element.outerHTML.slice(0, 60)),
  );
  assert.deepEqual(moving, []);
  await close();
});

test("every result can show its working, with numbers that follow the cursor and a source", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await page.getByText("Show the working").click();
  const working = page.locator(".working");
  const numbers = async () => (await working.locator(".numbers").allInnerTexts()).join("\n").replaceAll("\u00a0", " ");
  const before = await numbers();
  const [share, air, rest, around, felt] = before.match(/^([\d.]+) × ([\d.]+) °C \+ ([\d.]+) × ([\d.]+) °C = ([\d.]+) °C/).slice(1).map(Number);
  assert.ok(Math.abs(share * air + rest * around - felt) < 0.11, before);
  assert.match(before, /W\/\(m²·K\) between the ribs/);
  assert.equal(await working.locator("dd").count(), await working.getByText(/\.$/).and(page.locator("dd .note")).count());
  await page.getByRole("slider", { name: "Hour of the day" }).fill("30");
  assert.notEqual(await numbers(), before);
  await assertAccessible(page, ["color-contrast-enhanced"]);
  assertClean();
  await close();
});

test("the day is taken along as numbers for other programs, and as a picture", async () => {
  const { page, context, assertClean, close } = await site.visit({ ...DESKTOP, locale: "de-DE" });
  await ready(page);
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the day as CSV" }).click()]);
  assert.equal(download.suggestedFilename(), "noonday-day.csv");
  const lines = (await readFile(await download.path(), "utf8")).trimEnd().split("\r\n");
  const heads = lines[0].match(/"[^"]*"|[^,]+/g);
  const rows = lines.slice(1).map((line) => line.split(",").map(Number));
  // A day in samples of five minutes, with both ends.
  assert.equal(rows.length, 289);
  assert.ok(rows.every((row) => row.every(Number.isFinite)), "every cell is a number with a point");
  assert.ok(heads.includes('"Outdoors, °C"'), lines[0]);
  assert.equal(rows[0].length, heads.length);
  assert.equal(rows.at(-1)[0] - rows[0][0], 24);

  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.getByRole("button", { name: "Copy the charts as a picture" }).click();
  await page.getByText("The picture is copied.").waitFor();
  const size = await page.evaluate(async () => {
    const [item] = await navigator.clipboard.read();
    const { width, height } = await createImageBitmap(await item.getType("image/png"));
    return { width, height };
  });
  const charts = await page.locator(".chart canvas").evaluateAll((canvases) => canvases.map(({ width, height }) => ({ width, height })));
  assert.equal(size.width, charts[0].width);
  assert.ok(size.height > charts.reduce((sum, { height }) => sum + height, 0));

  for (const [index, name] of ["Temperatures", "The sun and the heat", "Charge and power"].entries()) {
    await page.getByLabel("In the picture").selectOption({ label: name });
    const [picture] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the picture as PNG" }).click()]);
    assert.equal(picture.suggestedFilename(), "noonday-day.png");
    const png = await readFile(await picture.path());
    // Width and height stand in the first chunk (PNG, third edition, 11.2.1).
    assert.equal(png.readUInt32BE(16), charts[index].width);
    const beside = png.readUInt32BE(20) - charts[index].height;
    assert.ok(beside > 0 && beside < 100, `${name}: ${beside}`);
  }
  assertClean();
  await close();
});

test("the browser calculates the same numbers as the machine the engine was tested on", async () => {
  for (const [locale, name] of [["de-DE", "metric"], ["en-US", "us"]]) {
    const { page, assertClean, close } = await site.visit({ ...DESKTOP, locale });
    await ready(page);
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the day as CSV" }).click()]);
    const saved = await readFile(await download.path(), "utf8");
    const golden = await readFile(new URL(`../golden/example_day_${name}.csv`, import.meta.url), "utf8");
    // Every digit of every five minutes, one more than the page shows.
    assert.deepEqual(saved.split("\r\n"), golden.split("\r\n"));
    assertClean();
    await close();
  }
});
