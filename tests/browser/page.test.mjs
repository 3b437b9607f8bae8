// The page as a person uses it: it opens with an answer, and whatever is changed changes the answer and the charts.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, assertDrawn, dragSlider, openSite, settled } from "./harness.mjs";
import { chartPixels, entry, kept, lead, numbersIn, openGroup, ready, slider, temperatureChart, bankChart } from "./person.mjs";

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

for (const [name, screen] of Object.entries({ phone: PHONE, desktop: DESKTOP })) {
  describe(`on a ${name}`, () => {
    test("it opens with an answer in numbers and two charts", async () => {
      const { page, assertClean, close } = await site.visit(screen);
      await ready(page);
      const said = await lead(page);
      assert.match(said, /\d\s?°F/);
      assert.ok(numbersIn(said).length >= 2, said);
      assert.match(await page.locator("[data-answer=rest]").innerText(), /The bank is lowest at .* with \d+\s% left/);
      await assertDrawn(temperatureChart(page), 0.01);
      await assertDrawn(bankChart(page), 0.01);
      assertClean();
      await close();
    });

    test("the charts are as fine as the screen", async () => {
      const { page, close } = await site.visit(screen);
      await ready(page);
      for (const chart of [temperatureChart(page), bankChart(page)]) {
        const [shown, drawn, ratio] = await chart.evaluate((canvas) => [canvas.clientWidth, canvas.width, devicePixelRatio]);
        assert.equal(drawn, Math.round(shown * ratio));
      }
      await close();
    });

    test("it breaks no accessibility rule, with groups, reasons and troubles open", async () => {
      const { page, close } = await site.visit(screen);
      await ready(page);
      for (const group of ["The vehicle", "When it must be cool", "The day", "The cooler", "Other loads", "Prices"]) await openGroup(page, group);
      await page.getByRole("button", { name: "Insulation of the walls Why?" }).click();
      await entry(page, "Insulation of the walls").fill("abc");
      await page.getByText("The same as a table").click();
      await page.getByRole("button", { name: "Scenarios", exact: true }).click();
      await settled(page);
      await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
      await close();
    });
  });
}

test("in the dark it breaks no accessibility rule either", async () => {
  const { page, close } = await site.visit({ ...PHONE, colorScheme: "dark" });
  await ready(page);
  await assertAccessible(page, ["target-size", "color-contrast-enhanced"]);
  await close();
});

test("dragging the insulation changes the sentence and both charts", async () => {
  const { page, assertClean, close } = await site.visit(DESKTOP);
  await ready(page);
  const before = { said: await page.locator(".day").innerText(), heat: await chartPixels(temperatureChart(page)), bank: await chartPixels(bankChart(page)) };
  await dragSlider(page, slider(page, "Insulation of the walls"), 0);
  assert.notEqual(await chartPixels(temperatureChart(page)), before.heat);
  assert.notEqual(await chartPixels(bankChart(page)), before.bank);
  assert.notEqual(await page.locator(".day").innerText(), before.said);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "0");
  assertClean();
  await close();
});

test("no insulation, a black roof and a small bank make it worse, and the answer says so", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, locale: "en-GB" });
  await ready(page);
  const lowest = async () => Number((await page.locator("[data-answer=rest]").innerText()).match(/with (\d+)\s% left/)[1]);
  const before = await lowest();
  await dragSlider(page, slider(page, "Insulation of the walls"), 0);
  await dragSlider(page, slider(page, "Sun taken up by the roof"), 1);
  const hotter = await lowest();
  assert.ok(hotter < before, `${hotter} is not less than ${before}`);
  await openGroup(page, "The bank");
  await entry(page, "Capacity of the bank").fill("100");
  await settled(page);
  assert.match(await lead(page), /Too warm|falls below its reserve/);
  await close();
});

test("the answer is told to a screen reader once the inputs rest, and what helps is named", async () => {
  const { page, close } = await site.visit(DESKTOP);
  await ready(page);
  const announced = page.locator("[data-answer=announced]");
  await page.waitForFunction(() => document.querySelector("[data-answer=announced]").textContent);
  const before = await announced.innerText();
  await announced.evaluate((element) => {
    globalThis.told = 0;
    new MutationObserver(() => (globalThis.told += 1)).observe(element, { characterData: true, childList: true, subtree: true });
  });
  await entry(page, "Insulation of the walls").fill("0");
  assert.equal(await announced.innerText(), before, "it spoke before the inputs had settled");
  await page.waitForFunction((old) => document.querySelector("[data-answer=announced]").textContent !== old, before);
  assert.ok((await announced.innerText()).includes((await lead(page)).slice(0, 30)));
  await page.getByText(/^Of 400 such days/).waitFor();
  assert.equal(await page.evaluate(() => globalThis.told), 1, "one change was told more than once");
  await dragSlider(page, slider(page, "Sun taken up by the roof"), 1);
  await entry(page, "Insulation of the roof").fill("0");
  await page.waitForFunction(() => /What would (help|spare)/.test(document.querySelector("[data-answer=help]").textContent));
  await close();
});

test("nonsense is refused beside the field, stays as typed, and the charts stay as they were", async () => {
  const { page, assertClean, close } = await site.visit(DESKTOP);
  await ready(page);
  const before = { said: await lead(page), heat: await chartPixels(temperatureChart(page)) };
  const box = entry(page, "Insulation of the walls");
  for (const [typed, told] of [["abc", /not a number.*0 to 5\.905 in/s], ["99", /0 to 5\.905 in.*150 mm leaves no room/s], ["-1", /0 to 5\.905 in/]]) {
    await box.fill(typed);
    await box.blur();
    await settled(page);
    assert.equal(await box.inputValue(), typed);
    assert.equal(await box.getAttribute("aria-invalid"), "true");
    const trouble = page.locator(`#${await box.getAttribute("aria-describedby")}`);
    assert.match((await trouble.innerText()).replaceAll("\u00a0", " "), told);
    assert.match(await page.locator(".held").innerText(), /last state that could be calculated/);
    assert.equal(await lead(page), before.said);
    assert.equal(await chartPixels(temperatureChart(page)), before.heat);
  }
  await box.fill("2");
  await settled(page);
  assert.equal(await page.locator(".held").innerText(), "");
  assert.notEqual(await chartPixels(temperatureChart(page)), before.heat);
  assertClean();
  await close();
});

test("values at odds with each other are refused where they are, with a way to get there", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, locale: "de-DE" });
  await ready(page);
  await openGroup(page, "The day");
  await entry(page, "Lowest temperature").fill("40");
  await settled(page);
  assert.match(await page.locator(".held").innerText(), /^Lowest temperature: this entry cannot be used/);
  assert.match(await page.locator("#trouble-82").innerText(), /With “Highest temperature” as it is, this can be at most 35,5\s°C/);
  await page.locator("#day > summary").click();
  await page.getByRole("button", { name: /Go to the entry/ }).click();
  await page.waitForFunction(() => document.activeElement?.id === "field-82");
  await close();
});

test("half-finished typing is left alone, and hours are taken in either clock", async () => {
  const { page, close } = await site.visit(DESKTOP);
  await ready(page);
  const box = entry(page, "Insulation of the walls");
  await box.click();
  await box.press("Control+a");
  await box.press("Delete");
  await settled(page);
  assert.equal(await box.getAttribute("aria-invalid"), "false");
  await box.pressSequentially("3.");
  assert.equal(await box.inputValue(), "3.");
  await box.press("Enter");
  assert.equal(await box.inputValue(), "3");

  await openGroup(page, "The cooler");
  const hour = entry(page, "It may run from");
  for (const [typed, shown] of [["22:30", "10:30 pm"], ["9 am", "9 am"], ["noon", "12 pm"]]) {
    await hour.fill(typed);
    await hour.blur();
    assert.equal(await hour.inputValue(), shown);
  }
  await close();
});

test("units change everywhere and are remembered", async () => {
  const { page, close } = await site.visit(DESKTOP);
  await ready(page);
  const box = entry(page, "Insulation of the walls");
  assert.equal(await box.inputValue(), "1.575");
  const heatBefore = await chartPixels(temperatureChart(page));
  await page.getByRole("radio", { name: "Metric" }).check({ force: true });
  await settled(page);
  assert.equal(await box.inputValue(), "40");
  assert.match(await lead(page), /\d\s°C/);
  assert.doesNotMatch(await page.locator("body").innerText(), /°F(?! )|BTU|\d ft\b/);
  assert.notEqual(await chartPixels(temperatureChart(page)), heatBefore);
  await page.reload();
  await ready(page);
  assert.equal(await box.inputValue(), "40");
  await close();
});

test("the example's value can be put back, and the reason and source can be read", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, locale: "en-GB" });
  await ready(page);
  const box = entry(page, "Sun taken up by the roof");
  await dragSlider(page, slider(page, "Sun taken up by the roof"), 0.9);
  assert.ok(Number(await box.inputValue()) > 80);
  await page.getByRole("button", { name: /^Back to 40\s%: Sun taken up by the roof$/ }).click();
  assert.equal(await box.inputValue(), "40");
  await page.getByRole("button", { name: "Sun taken up by the roof Why?" }).click();
  const why = await page.locator("#why-11").innerText();
  assert.match(why, /Levinson/);
  assert.match(why, /5 to 98\s%/);
  await close();
});

test("inputs that mean nothing are hidden until they do, and the group says how to get them", async () => {
  const { page, close } = await site.visit(DESKTOP);
  await ready(page);
  await openGroup(page, "The cooler");
  const inverter = entry(page, "Inverter, continuous");
  assert.equal(await inverter.count(), 0);
  assert.match(await page.locator("#cooler").innerText(), /inverter inputs when it is fed through one/);
  await page.getByRole("radio", { name: "Mains voltage through an inverter" }).check();
  await inverter.waitFor();
  await close();
});

test("one instant is read on both charts, by pointer and by keys", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, locale: "en-GB" });
  await ready(page);
  const readings = page.locator("[data-reading]");
  const hours = async () => [(await readings.nth(0).innerText()).match(/\d\d:\d\d/)[0], (await readings.nth(1).innerText()).match(/\d\d:\d\d/)[0]];
  const chart = page.locator(".temperatures");
  const box = await chart.boundingBox();
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2);
  const [first, second] = await hours();
  assert.equal(first, second);
  const hour = page.getByRole("slider", { name: "Hour of the day" });
  const index = Number(await hour.inputValue());
  await hour.focus();
  await page.keyboard.press("ArrowRight");
  assert.equal(Number(await hour.inputValue()), index + 1);
  assert.notEqual((await hours())[0], first);
  assert.match(await hour.getAttribute("aria-valuetext"), /\d\d:\d\d.*outdoors \d+ °C.*charge \d+ %/);
  await close();
});

test("on a phone the answer and the temperatures stay in view while an input is dragged", async () => {
  const { page, close } = await site.visit(PHONE);
  await ready(page);
  const handle = slider(page, "Insulation of the walls");
  await handle.evaluate((element) => element.scrollIntoView({ block: "center" }));
  const seen = [];
  await dragSlider(page, handle, 0.8, {
    touch: true,
    onMove: async () => {
      seen.push(await page.evaluate(() => {
        const glance = document.querySelector(".glance").getBoundingClientRect();
        return { top: glance.top, share: glance.height / innerHeight };
      }));
    },
  });
  assert.ok(Number(await entry(page, "Insulation of the walls").inputValue()) > 3, "the finger did not move the slider");
  for (const { top, share } of seen) {
    assert.ok(top >= -0.5 && top < 5, `the answer is at ${top}`);
    assert.ok(share <= 0.45, `it takes ${share} of the screen`);
  }
  await close();
});

test("while a slider is held what is out of sight waits, and once it is let go everything agrees", async () => {
  const { page, assertClean, close } = await site.visit(PHONE);
  await ready(page);
  const figures = () => page.locator("#figures").innerText();
  const [figuresBefore, bankBefore, leadBefore] = [await figures(), await chartPixels(bankChart(page)), await lead(page)];
  await dragSlider(page, slider(page, "Insulation of the walls"), 0, {
    touch: true,
    onMove: async (share) => {
      if (share < 1) return;
      await settled(page);
      assert.notEqual(await lead(page), leadBefore);
      assert.equal(await figures(), figuresBefore);
      assert.equal(await chartPixels(bankChart(page)), bankBefore);
    },
  });
  assert.notEqual(await figures(), figuresBefore);
  assert.notEqual(await chartPixels(bankChart(page)), bankBefore);
  const [said, shown] = [await lead(page), await figures()];
  await kept(page);
  await page.reload();
  await ready(page);
  assert.deepEqual([await lead(page), await figures()], [said, shown]);
  assertClean();
  await close();
});

test("nothing has to be scrolled sideways at 320 pixels", async () => {
  const { page, close } = await site.visit({ viewport: { width: 320, height: 640 }, deviceScaleFactor: 2 });
  await ready(page);
  await page.evaluate(() => document.querySelectorAll(".group").forEach((group) => (group.open = true)));
  await page.locator("#prices .field").first().waitFor();
  const [content, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(content <= window, `${content} is wider than ${window}`);
  await close();
});

test("every target is at least 44 pixels high", async () => {
  const { page, close } = await site.visit(PHONE);
  await ready(page);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll("button, select, summary, input:not([type=radio], [type=checkbox]), label.option, .unit-switch label")]
      .filter((element) => element.offsetParent && element.getBoundingClientRect().height < 43.5)
      .map((element) => element.outerHTML.slice(0, 80)),
  );
  assert.deepEqual(small, []);
  await close();
});

test("the keyboard reaches the inputs by the first stop, and each stop is seen", async () => {
  const { page, close } = await site.visit(DESKTOP);
  await ready(page);
  await page.keyboard.press("Tab");
  const skip = page.getByRole("link", { name: "Skip to the inputs" });
  assert.ok(await skip.evaluate((element) => element === document.activeElement && element.getBoundingClientRect().top >= 0));
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  const focused = await page.evaluate(() => ({ inside: Boolean(document.activeElement.closest("#inputs")), outline: getComputedStyle(document.activeElement).outlineWidth }));
  assert.deepEqual(focused, { inside: true, outline: "3px" });
  await close();
});
