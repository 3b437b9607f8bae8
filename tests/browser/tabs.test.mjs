// What is kept when something else writes too: another tab, another version of the page, another program, or until nothing fits.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { entry, kept, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const WALLS = "Insulation of the walls";
const NEWER = '{"form":"v=9&9001=tall&18=0.06","runnable":null,"since":"later"}';

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const button = (page, name) => page.getByRole("button", { name, exact: true });
const notices = (page) => page.locator(".notices");
const beside = (page) => notices(page).getByText("Another tab has changed your scenario");
const walls = (page) => entry(page, WALLS).inputValue();
const stored = (page, key) => page.evaluate((key) => localStorage.getItem(key), key);
const saved = (page) =>
  page.evaluate(() => Object.entries(localStorage).flatMap(([key, raw]) => (key.startsWith("noonday.saved.") ? [raw] : [])));

async function change(page, millimetres) {
  await entry(page, WALLS).fill(String(millimetres));
  await kept(page);
}

/** Stands in for what was there before the page was opened. */
async function plant(page, entries) {
  await page.evaluate((items) => items.forEach(([key, value]) => localStorage.setItem(key, value)), entries);
  await page.reload();
  await ready(page);
}

async function twoTabs(screen = METRIC) {
  const { page: first, context, assertClean, close } = await site.visit(screen);
  await ready(first);
  const second = await context.newPage();
  await second.goto(site.url);
  await ready(second);
  return { first, second, assertClean, close };
}

/** Fills what room the browser has, as other programs of the same host may. */
const fillUp = (page) =>
  page.evaluate(() => {
    for (let size = 2 ** 20, count = 0; size >= 1; ) {
      try {
        localStorage.setItem(`others.${count}`, "x".repeat(size));
        count += 1;
      } catch {
        size = Math.floor(size / 2);
      }
    }
  });

for (const [name, screen] of Object.entries({ phone: { ...PHONE, locale: "en-GB" }, desktop: METRIC })) {
  test(`of two tabs neither writes over the other: one is chosen, the other put by (${name})`, async () => {
    const { first, second, assertClean, close } = await twoTabs(screen);
    await change(second, 61);
    const theirs = await stored(first, "noonday.working");
    await beside(first).waitFor();
    await change(first, 33);
    assert.equal(await stored(first, "noonday.working"), theirs);
    await assertAccessible(first);

    await button(first, "Keep this one’s").click();
    await notices(first).getByText("What the other tab had is saved as").waitFor();
    assert.match(await stored(first, "noonday.working"), /&18=0\.033/);
    assert.ok((await saved(first)).some((raw) => raw.includes("18=0.061")));

    await beside(second).waitFor();
    await button(second, "Show the other tab’s").click();
    await settled(second);
    assert.equal(await walls(second), "33");
    await beside(second).waitFor({ state: "detached" });
    assert.equal((await saved(second)).filter((raw) => raw.includes("18=0.061")).length, 1);
    await change(second, 34);
    assert.match(await stored(first, "noonday.working"), /&18=0\.034/);
    assertClean();
    await close();
  });
}

test("a tab that is left before anybody chose loses nothing", async () => {
  const { first, second, close } = await twoTabs();
  await change(second, 61);
  await beside(first).waitFor();
  await change(first, 33);
  await first.reload();
  await ready(first);
  assert.equal(await walls(first), "61");
  assert.ok((await saved(first)).some((raw) => raw.includes("18=0.033")));
  await close();
});

test("while a link is looked at, one's own is what the other tab makes of it", async () => {
  const { first, second, close } = await twoTabs();
  await first.evaluate(() => (location.hash = "v=1&1=Theirs&18=0.012"));
  await button(first, "Back to mine").waitFor();
  await change(second, 61);
  await button(first, "Back to mine").click();
  await settled(first);
  assert.equal(await walls(first), "61");
  assert.equal(await beside(first).count(), 0);
  await close();
});

test("what one tab saves and deletes, the list of the other shows", async () => {
  const { first, second, close } = await twoTabs();
  await button(first, "Scenarios").click();
  await button(second, "Save").click();
  await first.locator(".shelf li b", { hasText: "Example: two people and a dog" }).waitFor();
  await button(second, "Scenarios").click();
  await second.getByRole("button", { name: /^Delete “Example/ }).click();
  await first.getByText("Nothing is saved yet").waitFor();
  await close();
});

test("what a newer version left is kept as it stands, and said to be so", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  const entryOfNewer = '{"name":"Next year","saved_at":"2027-05-01T00:00:00Z","form":"v=1&60001=3"}';
  await plant(page, [["noonday.working", NEWER], ["noonday.saved.7", entryOfNewer]]);
  assert.match(await notices(page).innerText(), /made by a newer version of Noonday, so load this page again/);
  assert.equal(await notices(page).getByRole("textbox").inputValue(), NEWER);
  await change(page, 50);
  await button(page, "Scenarios").click();
  assert.equal(await page.locator(".shelf li.damaged").getByText("made by a newer version").count(), 2);
  const now = await saved(page);
  assert.ok(now.includes(NEWER) && now.includes(entryOfNewer), now.join("\n"));
  assertClean();
  await close();
});

test("what a newer version writes while this one is open is not written over", async () => {
  const { first, second, close } = await twoTabs();
  await second.evaluate((raw) => localStorage.setItem("noonday.working", raw), NEWER);
  await beside(first).waitFor();
  await change(first, 33);
  assert.equal(await stored(first, "noonday.working"), NEWER);
  await button(first, "Show the other tab’s").click();
  await notices(first).getByText("made by a newer version").waitFor();
  assert.equal(await walls(first), "33");
  await button(first, "Keep this one’s").click();
  await settled(first);
  assert.match(await stored(first, "noonday.working"), /18=0\.033/);
  assert.ok((await saved(first)).includes(NEWER));
  await close();
});

test("a working state that was put by as it stood is listed and opened", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await plant(page, [["noonday.saved.1", '{"form":"v=1&1=Put%20by&18=0.077","runnable":null}']]);
  await button(page, "Scenarios").click();
  await page.getByRole("button", { name: "Open “Put by”" }).click();
  await settled(page);
  assert.equal(await walls(page), "77");
  await close();
});

test("with the browser's room really full it is told, and everything kept stays as it was", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await change(page, 44);
  await button(page, "Save").click();
  await kept(page);
  await fillUp(page);
  const before = await page.evaluate(() => ({ ...localStorage }));
  // Longer than what is there, so that it cannot take its place.
  await page.evaluate(() => (location.hash = "v=1&1=A%20visitor%20with%20a%20long%20name&18=0.0123456"));
  await button(page, "Keep this one").waitFor();
  await kept(page);
  await notices(page).getByText("There is no room left").waitFor();
  await button(page, "Save").click();
  await notices(page).getByText("copy the link: it holds everything").waitFor();
  assert.deepEqual(await page.evaluate(() => ({ ...localStorage })), before);

  await page.evaluate(() => Object.keys(localStorage).forEach((key) => key.startsWith("others.") && localStorage.removeItem(key)));
  await button(page, "Save").click();
  await notices(page).getByText("Saved as “A visitor with a long name”").waitFor();
  await close();
});

test("what cannot be read and cannot be put by for want of room is left where it is", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await page.evaluate((raw) => localStorage.setItem("noonday.working", raw), NEWER);
  await fillUp(page);
  await page.reload();
  await ready(page);
  await change(page, 44);
  assert.equal(await stored(page, "noonday.working"), NEWER);
  await beside(page).waitFor();
  await button(page, "Keep this one’s").click();
  await notices(page).getByText("There is no room left").waitFor();
  assert.equal(await stored(page, "noonday.working"), NEWER);
  await close();
});

test("a kept log that cannot be read is put by and told of", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await plant(page, [["noonday.log", '{"text":"06:00;23;24","assumed":"otherwise"}']]);
  await notices(page).getByText("The logged day that was kept cannot be read").waitFor();
  await page.locator("#proving").getByText("Learn from a logged day", { exact: true }).click();
  await page.locator("#log-text").fill("06:00;21;22");
  await kept(page);
  assert.match(await stored(page, "noonday.log"), /06:00;21;22/);
  assert.ok((await saved(page)).includes('{"text":"06:00;23;24","assumed":"otherwise"}'));
  await close();
});

test("a log is written when typing rests, and at the latest when the page is left", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await page.evaluate(() => {
    const write = Storage.prototype.setItem;
    globalThis.writes = 0;
    Storage.prototype.setItem = function (key, text) {
      if (key === "noonday.log") globalThis.writes += 1;
      return write.call(this, key, text);
    };
  });
  await page.locator("#proving").getByText("Learn from a logged day", { exact: true }).click();
  const typed = "06:00;21;22 06:10;21;22 06:20;21;22";
  await page.locator("#log-text").pressSequentially(typed, { delay: 5 });
  await kept(page);
  const writes = await page.evaluate(() => globalThis.writes);
  assert.ok(writes >= 1 && writes < typed.length / 4, `${writes} writes for ${typed.length} keys`);
  await page.locator("#log-text").fill("just before leaving");
  await page.reload();
  await ready(page);
  assert.match(await stored(page, "noonday.log"), /just before leaving/);
  await close();
});

test("other programs' entries, and keys that only look like the page's, are left alone", async () => {
  const others = [
    ["noonday", "another's"],
    ["noonday.savedx", '{"form":"v=1"}'],
    ["noonday.working.old", "{"],
    ["theme", "dark"],
    ["", "no key at all"],
    ["noonday.saved.", "[1,2]"],
    ["noonday.saved.half", '{"name":"Half","saved_at":"2026-01-0'],
  ];
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await plant(page, others);
  await change(page, 44);
  await button(page, "Save").click();
  await button(page, "Scenarios").click();
  assert.equal(await page.locator(".shelf li.damaged").count(), 2);
  await page.getByRole("button", { name: /^Delete “Example/ }).click();
  await kept(page);
  for (const [key, value] of others) assert.equal(await stored(page, key), value);
  assertClean();
  await close();
});
