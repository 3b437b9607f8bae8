// What is kept and shared: the working state, saved scenarios, links. Nothing is ever lost without a word.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, dragSlider, openSite, settled } from "./harness.mjs";
import { entry, kept, lead, openGroup, ready, slider } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const button = (page, name) => page.getByRole("button", { name, exact: true });
const notices = (page) => page.locator(".notices");
const stored = (page, prefix) =>
  page.evaluate((start) => Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith(start))), prefix);
const savedNames = (page) => page.locator(".shelf li b").allInnerTexts();
const fragment = (page) => new URL(page.url()).hash.slice(1);
const figures = (page) => page.locator("#figures").innerText();

/** Stands in for a visitor who has been here before. */
async function plant(page, entries) {
  await page.evaluate((items) => items.forEach(([key, value]) => localStorage.setItem(key, value)), entries);
  await page.reload();
  await ready(page);
}

async function nameIt(page, name) {
  await openGroup(page, "Name and note");
  await page.getByRole("textbox", { name: "Name", exact: true }).fill(name);
  await settled(page);
}

test("a reload keeps what was changed", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await dragSlider(page, slider(page, "Insulation of the walls"), 0.7);
  await nameIt(page, "The blue one");
  const [thickness, said, sums] = [await entry(page, "Insulation of the walls").inputValue(), await lead(page), await figures(page)];
  assert.notEqual(thickness, "40");
  await page.reload();
  await ready(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), thickness);
  assert.equal(await lead(page), said);
  assert.equal(await figures(page), sums);
  assert.equal(await page.title(), "The blue one · Noonday");
  assert.equal(await page.locator("h1").innerText(), "The blue one");
  assertClean();
  await close();
});

test("a value that cannot be run is still there after a reload, and so is the last state that could", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await dragSlider(page, slider(page, "Insulation of the walls"), 0);
  const said = await lead(page);
  await entry(page, "Insulation of the walls").fill("900");
  await settled(page);
  await page.reload();
  await ready(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "900");
  assert.match(await page.locator("#trouble-18").innerText(), /0 to 150/);
  assert.equal(await lead(page), said);
  await close();
});

test("a link gives a stranger the same numbers", async () => {
  const sender = await site.visit({ ...METRIC, permissions: ["clipboard-read", "clipboard-write"] });
  await ready(sender.page);
  await dragSlider(sender.page, slider(sender.page, "Insulation of the roof"), 0.9);
  await nameIt(sender.page, "Zoë’s van & dog");
  await button(sender.page, "Copy link").click();
  await notices(sender.page).getByText("The link is copied").waitFor();
  const copied = await sender.page.evaluate(() => navigator.clipboard.readText());
  assert.equal(copied, sender.page.url());
  assert.match(fragment(sender.page), /^2[\w-]+$/);

  const receiver = await site.visit({ ...METRIC, address: `#${fragment(sender.page)}` });
  await ready(receiver.page);
  assert.equal(await lead(receiver.page), await lead(sender.page));
  assert.equal(await figures(receiver.page), await figures(sender.page));
  assert.equal(await receiver.page.locator("h1").innerText(), "Zoë’s van & dog");
  assert.equal(
    await entry(receiver.page, "Insulation of the roof").inputValue(),
    await entry(sender.page, "Insulation of the roof").inputValue(),
  );
  assert.ok(site.server.requests.every(({ path }) => !path.includes(fragment(sender.page))), "the scenario reached the server");
  sender.assertClean();
  receiver.assertClean();
  await sender.close();
  await receiver.close();
});

test("where copying is not allowed the link is shown to be copied by hand", async () => {
  const { page, close } = await site.visit(METRIC);
  await page.evaluate(() => Object.defineProperty(navigator, "clipboard", { value: undefined }));
  await ready(page);
  await button(page, "Copy link").click();
  const box = notices(page).getByRole("textbox");
  assert.equal(await box.inputValue(), page.url());
  await close();
});

test("opening a link leaves one's own alone, and one can go back or keep it", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await nameIt(page, "Mine");
  await entry(page, "Insulation of the walls").fill("77");
  await button(page, "Save").click();
  await kept(page);
  const [mine, saved] = [await stored(page, "noonday.working"), await stored(page, "noonday.saved.")];

  await page.evaluate(() => (location.hash = "v=1&1=Theirs&18=0.012"));
  await notices(page).getByText("Opened from a link").waitFor();
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "12");
  await entry(page, "Insulation of the walls").fill("13");
  await kept(page);
  assert.equal(fragment(page), "", "the address still holds a link that is no longer what is shown");
  assert.deepEqual(await stored(page, "noonday.working"), mine);
  assert.deepEqual(await stored(page, "noonday.saved."), saved);

  await page.reload();
  await ready(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "13");
  await button(page, "Back to mine").click();
  await settled(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "77");
  await notices(page).getByRole("button", { name: "Undo" }).click();
  await settled(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "13");

  await button(page, "Keep this one").click();
  await page.reload();
  await ready(page);
  assert.equal(await page.locator("h1").innerText(), "Theirs");
  assert.equal(await notices(page).innerText(), "");
  assertClean();
  await close();
});

test("keeping a link's scenario first saves what was one's own", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await nameIt(page, "Never saved");
  await entry(page, "Insulation of the walls").fill("61");
  await page.evaluate(() => (location.hash = "v=1&1=Theirs&18=0.012"));
  await button(page, "Keep this one").click();
  await notices(page).getByText("saved as “Never saved”").waitFor();
  await button(page, "Scenarios").click();
  assert.deepEqual(await savedNames(page), ["Never saved"]);
  await page.getByRole("button", { name: "Open “Never saved”" }).click();
  await settled(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "61");
  await close();
});

test("a damaged link says what is wrong, changes nothing, and can be copied", async () => {
  for (const [link, told] of [
    ["v=1&18=abc", /“abc” cannot be read as “Insulation of the walls”/],
    ["v=1&18=9", /Insulation of the walls: Allowed is 0 to 150/],
    ["v=99", /version “99”/],
    ["v=1&7777=1", /“7777” that does not exist/],
    ["2XTnrV9UHqHAU", /missing or mistyped/],
    ["3XTnrV9UHqHAU", /version “3”/],
    ["x1=2", /does not begin with a version/],
  ]) {
    const { page, assertClean, close } = await site.visit({ ...METRIC, address: `#${link}` });
    await ready(page);
    const text = (await notices(page).innerText()).replaceAll("\u00a0", " ");
    assert.match(text, /The link cannot be opened/);
    assert.match(text, told);
    assert.equal(await notices(page).getByRole("textbox").inputValue(), link);
    assert.equal(await page.locator("h1").innerText(), "Example: two people and a dog");
    assert.equal(fragment(page), link);
    assertClean();
    await close();
  }
});

test("scenarios are saved, renamed, duplicated, deleted, brought back and opened", async () => {
  const { page, assertClean, close } = await site.visit({ ...PHONE, locale: "en-GB" });
  await ready(page);
  await nameIt(page, "First");
  await entry(page, "Insulation of the walls").fill("33");
  await button(page, "Save").click();
  await notices(page).getByText("Saved as “First”").waitFor();
  await button(page, "Scenarios").click();
  assert.deepEqual(await savedNames(page), ["First"]);

  await page.getByRole("button", { name: "Rename “First”" }).click();
  await page.getByRole("textbox", { name: "New name" }).fill("Second");
  await page.keyboard.press("Enter");
  await page.locator(".shelf li b", { hasText: "Second" }).waitFor();

  await page.getByRole("button", { name: "Duplicate “Second”" }).click();
  await page.locator(".shelf li").nth(1).waitFor();
  assert.deepEqual((await savedNames(page)).sort(), ["Second", "Second (2)"]);

  await page.getByRole("button", { name: "Delete “Second”" }).click();
  await settled(page);
  assert.deepEqual(await savedNames(page), ["Second (2)"]);
  await notices(page).getByRole("button", { name: "Undo" }).click();
  await settled(page);
  assert.deepEqual((await savedNames(page)).sort(), ["Second", "Second (2)"]);

  await entry(page, "Insulation of the walls").fill("99");
  await page.reload();
  await ready(page);
  await button(page, "Scenarios").click();
  await page.getByRole("button", { name: "Open “Second”" }).click();
  await settled(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "33");
  assert.equal(await page.locator("h1").innerText(), "Second");
  await notices(page).getByRole("button", { name: "Undo" }).click();
  await settled(page);
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "99");
  assertClean();
  await close();
});

test("saving under a name again replaces it, and that can be undone", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await nameIt(page, "Same");
  await button(page, "Save").click();
  await settled(page);
  const first = await stored(page, "noonday.saved.");
  await entry(page, "Insulation of the walls").fill("5");
  await button(page, "Save").click();
  await notices(page).getByText("is now replaced").waitFor();
  assert.notDeepEqual(await stored(page, "noonday.saved."), first);
  await notices(page).getByRole("button", { name: "Undo" }).click();
  await settled(page);
  assert.deepEqual(await stored(page, "noonday.saved."), first);
  await close();
});

test("stored entries that cannot be read are told, shown and kept", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const rubbish = '{"name":"Old","saved_at":"2026-01-01T00:00:00Z","form":"v=1&18=oops"}';
  await plant(page, [["noonday.saved.1", rubbish], ["noonday.saved.2", "not even JSON"], ["noonday.units", "nonsense"]]);
  await button(page, "Scenarios").click();
  const lines = page.locator(".shelf li.damaged");
  assert.equal(await lines.count(), 2);
  const told = await page.locator(".shelf").innerText();
  assert.match(told, /“oops” cannot be read as “Insulation of the walls”/);
  assert.match(told, /not in the form in which this page saves/);
  const raw = await lines.getByRole("textbox").evaluateAll((boxes) => boxes.map((box) => box.value));
  assert.deepEqual(raw.sort(), ["not even JSON", rubbish].sort());
  await button(page, "Save").click();
  await settled(page);
  const after = await stored(page, "noonday.saved.");
  assert.equal(after["noonday.saved.1"], rubbish);
  assert.equal(after["noonday.saved.2"], "not even JSON");
  assertClean();
  await close();
});

test("a working state that cannot be read is told and put by, not overwritten", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const rubbish = '{"form":"v=1&18=oops","runnable":null}';
  await plant(page, [["noonday.working", rubbish]]);
  assert.match(await notices(page).innerText(), /What you worked on last cannot be read/);
  assert.equal(await notices(page).getByRole("textbox").inputValue(), rubbish);
  await entry(page, "Insulation of the walls").fill("50");
  await settled(page);
  assert.ok(Object.values(await stored(page, "noonday.saved.")).includes(rubbish));
  assertClean();
  await close();
});

test("full storage is told and loses nothing on the page", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await entry(page, "Insulation of the walls").fill("52");
  await button(page, "Save").click();
  await notices(page).getByText("no room left").waitFor();
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "52");
  await close();
});

test("with storage blocked the page still works, and saving says why it cannot", async () => {
  const { page, context, close } = await site.visit(METRIC);
  await context.addInitScript(() => {
    Object.defineProperty(window, "localStorage", {
      get() {
        throw new DOMException("blocked", "SecurityError");
      },
    });
  });
  await page.reload();
  await ready(page);
  await entry(page, "Insulation of the walls").fill("52");
  await settled(page);
  await button(page, "Save").click();
  await notices(page).getByText("keeps nothing for this page").waitFor();
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "52");
  await close();
});
