// Where the heat comes from: the drawing, the band of sun and heat, and the table follow the hour that is read and the inputs.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { DESKTOP, PHONE, assertDrawn, dragSlider, openSite, settled } from "./harness.mjs";
import { chartPixels, ready, slider } from "./person.mjs";

const METRIC = { locale: "en-GB" };
const hour = (page) => page.getByRole("slider", { name: "Hour of the day" });
const picture = (page) => page.getByRole("img", { name: /vehicle cut lengthwise and across/ });
const heatChart = (page) => page.locator(".heat-day canvas");
const heatTable = (page) => page.getByRole("table", { name: "Where the heat comes from" });

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

/** A number as the page writes it, with its true minus and its thin spaces. */
const numberOf = (text) => Number(text.replace("\u2212", "-").replace(/[^\d.-]/g, ""));

/** The numbers of the drawing by the names beside them. */
async function drawn(page) {
  await settled(page);
  const texts = await picture(page).locator("text").evaluateAll((all) => all.map((text) => [text.getAttribute("class"), text.textContent]));
  const names = texts.flatMap(([kind, text], index) => (kind === "d-name" ? [[text, numberOf(texts[index + 1][1])]] : []));
  return Object.fromEntries(names);
}

/** The first column of numbers in the table of heat by name, and the second. */
async function tabled(page) {
  const rows = await heatTable(page).locator("tbody tr").evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.innerText.trim())));
  return rows.map(([name, now, run]) => ({ name, now: numberOf(now), run }));
}

async function readHour(page, wanted) {
  await hour(page).focus();
  await page.keyboard.press("Home");
  // The example begins at six, and a step is five minutes.
  for (let step = 0; step < (wanted - 6) * 12; step += 1) await page.keyboard.press("ArrowRight");
  await settled(page);
}

test("moving the hour by keyboard changes the drawing and the first column of the table, not the second", async () => {
  const { page, assertClean, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await ready(page);
  await readHour(page, 9);
  const morning = { drawn: await drawn(page), tabled: await tabled(page) };
  await readHour(page, 17);
  const evening = { drawn: await drawn(page), tabled: await tabled(page) };
  assert.match(await picture(page).getAttribute("aria-label"), /at 17:00/);
  // The nose points south: the morning sun is on the left, the evening sun on the right.
  assert.ok(morning.drawn["Left side"] > 100 && morning.drawn["Right side"] < 20, JSON.stringify(morning.drawn));
  assert.ok(evening.drawn["Right side"] > 200, JSON.stringify(evening.drawn));
  assert.ok(morning.drawn.Fan < 0 && evening.drawn.Fan === undefined);
  assert.ok(evening.drawn.Cooler < -500);
  const column = (rows, key) => Object.fromEntries(rows.map((row) => [row.name, row[key]]));
  assert.notDeepEqual(column(evening.tabled, "now"), column(morning.tabled, "now"));
  const [early, late] = [column(morning.tabled, "run"), column(evening.tabled, "run")];
  for (const name of Object.keys(early)) if (name in late) assert.equal(late[name], early[name]);
  assertClean();
  await close();
});

test("the drawing, the table and the sum agree", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await ready(page);
  await readHour(page, 16);
  const inside = await drawn(page);
  const rows = Object.fromEntries((await tabled(page)).map((row) => [row.name, row.now]));
  for (const [short, long] of [["Roof", "Roof"], ["Floor", "Floor"], ["Cooler", "Cooler"], ["Sun by glass", "Sun through the glass"]]) {
    assert.equal(inside[short], rows[long], short);
  }
  const values = Object.values(inside);
  const sum = values.reduce((total, value) => total + value, 0);
  // Each number is rounded by half a watt at most.
  assert.ok(Math.abs(sum) <= values.length / 2 + 1, `${sum} in ${JSON.stringify(inside)}`);
  await close();
});

test("a thicker roof lets less through, and the drawing shows it at once", async () => {
  const { page, assertClean, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await ready(page);
  await readHour(page, 14);
  const before = { drawn: await drawn(page), heat: await chartPixels(heatChart(page)) };
  await dragSlider(page, slider(page, "Insulation of the roof"), 1);
  const after = await drawn(page);
  assert.ok(after.Roof < 0.7 * before.drawn.Roof, `${after.Roof} after ${before.drawn.Roof}`);
  assert.notEqual(await chartPixels(heatChart(page)), before.heat);
  assertClean();
  await close();
});

test("switching units rewrites the numbers of drawing and table", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await ready(page);
  await readHour(page, 14);
  const watts = await drawn(page);
  await page.getByRole("radio", { name: "US" }).check({ force: true });
  const btu = await drawn(page);
  assert.ok(Math.abs(btu.Roof / watts.Roof - 3.412) < 0.02, `${btu.Roof} for ${watts.Roof}`);
  assert.match(await heatTable(page).innerText(), /BTU\/h/);
  await close();
});

for (const [name, screen] of Object.entries({ phone: PHONE, narrow: { ...PHONE, viewport: { width: 320, height: 700 } }, desktop: DESKTOP })) {
  describe(`on a ${name} screen`, () => {
    test("numbers can be read, do not lie on one another and are not cut off", async () => {
      const { page, close } = await site.visit(screen);
      await ready(page);
      await assertDrawn(heatChart(page), 0.01);
      for (const time of [7, 13, 17, 29]) {
        await readHour(page, time);
        const texts = await picture(page).locator("text").evaluateAll((all) =>
          all.map((text) => {
            const { left, top, right, bottom, height } = text.getBoundingClientRect();
            const sheet = text.ownerSVGElement.getBoundingClientRect();
            const size = (parseFloat(getComputedStyle(text).fontSize) * sheet.width) / 320;
            const cut = left < sheet.left || right > sheet.right || top < sheet.top - 1 || bottom > sheet.bottom + 1;
            return { words: text.textContent, size, cut, left, right, top: top + 0.18 * height, bottom: bottom - 0.18 * height };
          }),
        );
        assert.ok(texts.length > 10);
        for (const [index, one] of texts.entries()) {
          assert.ok(one.size >= 11.5, `${one.words} is ${one.size} px high`);
          assert.ok(!one.cut, `${one.words} is cut off at ${time}`);
          for (const two of texts.slice(index + 1)) {
            const apart = one.right <= two.left || two.right <= one.left || one.bottom <= two.top || two.bottom <= one.top;
            assert.ok(apart, `${one.words} lies on ${two.words} at ${time}`);
          }
        }
      }
      await close();
    });

    test("nothing is wider than the screen", async () => {
      const { page, close } = await site.visit(screen);
      await ready(page);
      const [inner, width] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
      assert.ok(inner <= width, `${inner} of ${width}`);
      await close();
    });
  });
}
