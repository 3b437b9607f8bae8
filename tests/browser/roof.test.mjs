// The roof to scale: things are moved as a person moves them, and what is wrong with where they stand can be read.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { atHand, entry, kept, openGroup, ready, workedOut } from "./person.mjs";

const METRIC = { locale: "en-GB" };
const thing = (page, name) => page.locator(".roof-plan").getByRole("button", { name: new RegExp(`^${name}\\b`) });
const finding = (page) => page.locator(".roof-findings li").first();
/** Waits until something is wrong with the plan, and gives what. */
const findings = async (page) => {
  await finding(page).waitFor();
  return (await page.locator(".roof-findings li").allInnerTexts()).map((text) => text.trim());
};
/** Waits until nothing is. */
const nothingFound = (page) => finding(page).waitFor({ state: "detached" });
const place = async (page, name) => (await thing(page, name).getAttribute("aria-label")).match(/[\d.]+(?=\u00a0(?:m|in) from)/g).slice(0, 2).map(Number);
const button = (page, name) => page.locator("#building").getByRole("button", { name });

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

async function openRoof(page) {
  await ready(page);
  // What comes above the plan would move it away under the hand.
  await workedOut(page);
  await page.locator("#building summary").filter({ hasText: "The roof, to scale" }).click();
  await thing(page, "Unit").waitFor();
  await page.locator(".roof-plan").scrollIntoViewIfNeeded();
  await settled(page);
}

/** The middle of a thing's body on the screen. */
const middle = (page, name) =>
  thing(page, name).locator(".r-body").evaluate((body) => {
    const { left, top, width, height } = body.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  });

async function drag(page, name, to) {
  const from = await middle(page, name);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let step = 1; step <= 10; step += 1) {
    await page.mouse.move(from.x + ((to.x - from.x) * step) / 10, from.y + ((to.y - from.y) * step) / 10);
  }
  await page.mouse.up();
  await settled(page);
}

/** The same with a finger. */
async function dragByTouch(page, name, to) {
  const from = await middle(page, name);
  const session = await page.context().newCDPSession(page);
  const touch = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  await touch("touchStart", [from]);
  for (let step = 1; step <= 10; step += 1) {
    await touch("touchMove", [{ x: from.x + ((to.x - from.x) * step) / 10, y: from.y + ((to.y - from.y) * step) / 10 }]);
  }
  await touch("touchEnd", []);
  await session.detach();
  await settled(page);
}

for (const [name, screen, hand] of [["desktop", DESKTOP, drag], ["phone", PHONE, dragByTouch]]) {
  describe(`on a ${name} screen`, () => {
    test("a panel dragged onto the unit overlaps it, in words and on the plan, and one step back clears it", async () => {
      const { page, assertClean, close } = await site.visit({ ...screen, ...METRIC });
      await openRoof(page);
      await nothingFound(page);
      const before = await place(page, "Panel 1");
      await hand(page, "Panel 1", await middle(page, "Unit"));
      const found = await findings(page);
      assert.ok(found.some((text) => /^The unit and panel 1 overlap by [\d.]+\u00a0m²\.$/.test(text)), found.join(" | "));
      assert.ok((await page.locator(".r-wrong").count()) >= 1);
      await atHand(page, "Undo").click();
      await settled(page);
      await nothingFound(page);
      assert.deepEqual(await place(page, "Panel 1"), before);
      assertClean();
      await close();
    });

    test("arranging the panels clears what is wrong with them", async () => {
      const { page, assertClean, close } = await site.visit({ ...screen, ...METRIC });
      await openRoof(page);
      await hand(page, "Panel 2", await middle(page, "Unit"));
      await findings(page);
      await button(page, "Arrange the panels").click();
      await page.locator("#building").getByText("All 3 panels are arranged").waitFor();
      await nothingFound(page);
      await atHand(page, "Undo").click();
      await settled(page);
      await findings(page);
      assertClean();
      await close();
    });

    test("has no flaw that a program can find, and does not scroll sideways", async () => {
      const { page, close } = await site.visit(screen);
      await openRoof(page);
      await page.locator("#building details.working > summary").click();
      await hand(page, "Panel 1", await middle(page, "Unit"));
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
      await assertAccessible(page, ["target-size"]);
      await close();
    });
  });
}

test("arrow keys move by a centimetre, ten with Shift, say so, and are one step until they rest", async () => {
  const { page, assertClean, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await openRoof(page);
  await thing(page, "Panel 3").focus();
  const [front, left] = await place(page, "Panel 3");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("ArrowUp");
  await settled(page);
  assert.deepEqual(await place(page, "Panel 3"), [front + 0.1, left + 0.01]);
  assert.match(await page.locator("#building [role=status]").first().innerText(), /^Panel 3: 2\.65\sm from the front, 0\.01\sm from the left\./);
  await page.keyboard.press("Control+z");
  await settled(page);
  assert.deepEqual(await place(page, "Panel 3"), [front, left]);
  assertClean();
  await close();
});

test("half an inch and five inches where inches are shown", async () => {
  const { page, close } = await site.visit(DESKTOP);
  await openRoof(page);
  await thing(page, "Unit").focus();
  await page.keyboard.press("ArrowLeft");
  await settled(page);
  const [front] = await place(page, "Unit");
  assert.equal((front * 2) % 1, 0);
  await page.keyboard.press("Shift+ArrowLeft");
  await settled(page);
  assert.equal((await place(page, "Unit"))[0], front - 5);
  await close();
});

test("a place can be typed, and a cut-out that meets a rib is told", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await openRoof(page);
  await thing(page, "Unit").focus();
  const box = entry(page.locator(".roof-place"), "From the front");
  await box.fill("0.3");
  await box.press("Tab");
  await settled(page);
  assert.deepEqual(await place(page, "Unit"), [0.3, 0.45]);
  assert.match((await findings(page)).join(" "), /The opening of the unit meets the rib at 0\.6\sm/);
  await kept(page);
  await page.reload();
  await openRoof(page);
  assert.deepEqual(await place(page, "Unit"), [0.3, 0.45]);
  await close();
});

test("the calculation takes the plan's panels when told, and says so where they were entered", async () => {
  const { page, assertClean, close } = await site.visit({ ...DESKTOP, ...METRIC });
  await openRoof(page);
  await openGroup(page, "The roof");
  await entry(page, "Number").fill("4");
  await button(page, "Let the plan").click();
  await settled(page);
  assert.match(await page.locator("#building").innerText(), /reckons with these panels: 400\sW/);
  await openGroup(page, "Charging");
  assert.equal(await entry(page, "Panels on the roof").count(), 0);
  assert.match(await page.locator("#charging").innerText(), /those of the roof plan/);
  await page.locator("#building table").filter({ hasText: "Energy with all shadows" }).waitFor();
  const energies = await page.locator("#building tr").filter({ hasText: /^Energy/ }).locator("td").allInnerTexts();
  const [shaded, withoutUnit, bare] = energies.map((text) => Number(text.replace(/[^\d.]/g, "")));
  assert.ok(shaded > 0 && shaded <= withoutUnit && withoutUnit <= bare, energies.join());
  assertClean();
  await close();
});
