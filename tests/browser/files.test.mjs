// Scenarios to and from files: saved, dropped, looked at before anything is added, and taken back.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { entry, openGroup, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const button = (page, name) => page.getByRole("button", { name, exact: true });
const notices = (page) => page.locator(".notices");
const arriving = (page) => page.locator(".arriving");
const savedNames = (page) => page.locator(".shelf:not(.arriving) li b").allInnerTexts();
const stored = (page) =>
  page.evaluate(() => Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith("noonday.saved."))));

async function keep(page, name, wall) {
  await openGroup(page, "Name and note");
  await page.getByRole("textbox", { name: "Name", exact: true }).fill(name);
  await entry(page, "Insulation of the walls").fill(wall);
  await button(page, "Save").click();
  await notices(page).getByText(`“${name}”`).waitFor();
}

/** Presses a button that saves a file; gives its name and what is in it. */
async function savedFile(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, name).click()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

/** Drops files on the page as a hand does. */
async function drop(page, files) {
  const data = await page.evaluateHandle((all) => {
    const data = new DataTransfer();
    for (const { name, text } of all) data.items.add(new File([text], name));
    return data;
  }, files);
  await page.dispatchEvent("h1", "dragover", { dataTransfer: data });
  assert.equal(await page.locator("body[data-file-over]").count(), 1);
  await page.dispatchEvent("h1", "drop", { dataTransfer: data });
  await settled(page);
  assert.equal(await page.locator("body[data-file-over]").count(), 0);
}

const fileOf = (...documents) =>
  JSON.stringify({
    format: "noonday-scenarios",
    version: 1,
    scenarios: documents.map((document) => ({ document: { version: 1, ...document } })),
  });

test("what is saved as a file opens elsewhere as the same scenarios", async () => {
  const giver = await site.visit(METRIC);
  await ready(giver.page);
  await keep(giver.page, "First: van / 1", "33");
  await keep(giver.page, "Second", "44");
  await button(giver.page, "Scenarios").click();
  const all = await savedFile(giver.page, "Save this list as a file");
  const one = await savedFile(giver.page, "As a file “First: van / 1”");
  const shown = await savedFile(giver.page, "Save what is shown as a file");
  assert.deepEqual([all.name, one.name, shown.name], ["noonday scenarios.json", "First van 1.json", "Second.json"]);
  const schema = JSON.parse(await readFile(new URL("../../public/scenarios.schema.json", import.meta.url), "utf8"));
  for (const { text } of [all, one, shown]) {
    const file = JSON.parse(text);
    assert.equal(file.format, schema.properties.format.const);
    assert.equal(file.version, schema.properties.version.const);
    for (const { document } of file.scenarios) assert.deepEqual(Object.keys(document).sort(), Object.keys(schema.$defs.document.properties).sort());
  }
  assert.equal(JSON.parse(one.text).scenarios[0].document.shell.wall_insulation_m, 0.033);

  const taker = await site.visit({ ...PHONE, locale: "en-GB" });
  await ready(taker.page);
  await drop(taker.page, [all]);
  const list = arriving(taker.page);
  await list.getByText("New.").first().waitFor();
  assert.deepEqual(await stored(taker.page), {}, "something was added before it was asked for");
  assert.equal(await taker.page.evaluate(() => document.activeElement.id), "arriving-title");
  await list.getByRole("button", { name: "Add these 2" }).click();
  await notices(taker.page).getByText("Added 2 scenarios").waitFor();
  assert.equal(await list.count(), 0);
  await button(taker.page, "Scenarios").click();
  assert.deepEqual((await savedNames(taker.page)).sort(), ["First: van / 1", "Second"]);
  const forms = async (page) => Object.values(await stored(page)).map((raw) => JSON.parse(raw)).map(({ form, saved_at }) => form + saved_at).sort();
  assert.deepEqual(await forms(taker.page), await forms(giver.page));
  await taker.page.getByRole("button", { name: "Open “First: van / 1”" }).click();
  await settled(taker.page);
  assert.equal(await entry(taker.page, "Insulation of the walls").inputValue(), "33");
  giver.assertClean();
  taker.assertClean();
  await giver.close();
  await taker.close();
});

test("a file shows what it would add, overwrites nothing, and is added as one step", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await keep(page, "Van", "33");
  const kept = await stored(page);
  await button(page, "Scenarios").click();
  const same = JSON.parse((await savedFile(page, "As a file “Van”")).text);
  const text = fileOf(
    same.scenarios[0].document,
    { name: "Van", shell: { wall_insulation_m: 0.05 } },
    { name: "Van", shell: { wall_insulation_m: 0.06 } },
    { name: "Bus", shell: { wall_insulation_m: 0.07 } },
    { name: "Ice", place: { ground: "ice" } },
    { name: "Thick", shell: { wall_insulation_m: 9 } },
  );
  await page.getByLabel("Add from a file").setInputFiles({ name: "clients.json", mimeType: "application/json", buffer: Buffer.from(text) });
  const list = arriving(page);
  await list.waitFor();
  const lines = (await list.locator("li").allInnerTexts()).map((line) => line.replace(/\s+/g, " ").trim());
  assert.match(lines[0], /^Van Saved already as “Van”/);
  assert.match(lines[1], /added as “Van \(2\)”/);
  assert.match(lines[2], /added as “Van \(3\)”/);
  assert.match(lines[3], /^Bus New\./);
  assert.match(lines[4], /^Ice Cannot be added: “ice” cannot be read as “It stands on”/);
  assert.match(lines[5], /^Thick Cannot be added: one of its values cannot be run \(Insulation of the walls: Allowed is 0 to 150/);
  assert.equal(await list.getByRole("checkbox").count(), 3);
  await assertAccessible(page);

  await list.getByRole("checkbox", { name: /Van \(3\)/ }).uncheck();
  await list.getByRole("button", { name: "Add these 2" }).click();
  await settled(page);
  assert.deepEqual((await savedNames(page)).sort(), ["Bus", "Van", "Van (2)"]);
  const after = await stored(page);
  for (const [key, value] of Object.entries(kept)) assert.equal(after[key], value);
  await notices(page).getByRole("button", { name: "Undo" }).click();
  await settled(page);
  assert.deepEqual(await stored(page), kept);
  assertClean();
  await close();
});

test("nothing is added when there is no room for all of it, and the list stays", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await drop(page, [{ name: "a.json", text: fileOf({ name: "One" }, { name: "Two" }) }]);
  await arriving(page).waitFor();
  await page.evaluate(() => {
    const set = Storage.prototype.setItem;
    let left = 1;
    Storage.prototype.setItem = function (key, value) {
      if (key.startsWith("noonday.saved.") && left-- <= 0) throw new DOMException("full", "QuotaExceededError");
      return set.call(this, key, value);
    };
  });
  await arriving(page).getByRole("button", { name: "Add these 2" }).click();
  await notices(page).getByText("no room left").waitFor();
  assert.deepEqual(await stored(page), {});
  assert.equal(await arriving(page).locator("li").count(), 2);
  await arriving(page).getByRole("button", { name: "Add nothing" }).click();
  await settled(page);
  assert.equal(await arriving(page).count(), 0);
  await close();
});

test("files that cannot be read are refused with the reason, and change nothing", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await entry(page, "Insulation of the walls").fill("61");
  for (const [file, told] of [
    [{ name: "cut.json", text: fileOf({}).slice(0, 40) }, /“cut.json” cannot be opened: it is not whole; reading stops at line 1, column/],
    [{ name: "other.json", text: "{}" }, /does not say that it is a file of scenarios/],
    [{ name: "later.json", text: fileOf({}).replace('"version":1', '"version":3') }, /version 3 and was made by a newer build/],
    [{ name: "empty.json", text: fileOf() }, /There is no scenario in “empty.json”/],
    [{ name: "cat.png", text: "\u0089PNG" }, /“cat.png” is not of a kind that this page can read/],
    [{ name: "vast.json", text: "{".padEnd(9 * 1024 * 1024) }, /“vast.json” is larger than 8.MB/],
  ]) {
    await drop(page, [file]);
    await notices(page).getByText(told).waitFor();
    assert.equal(await arriving(page).count(), 0);
  }
  assert.equal(await entry(page, "Insulation of the walls").inputValue(), "61");
  assert.deepEqual(await stored(page), {});
  assertClean();
  await close();
});

test("two files dropped at once make one list, and a list does not widen a narrow phone", async () => {
  const { page, assertClean, close } = await site.visit({ ...PHONE, viewport: { width: 320, height: 640 }, locale: "en-GB" });
  await ready(page);
  await drop(page, [
    { name: "a.json", text: fileOf({ name: "M".repeat(60) }) },
    { name: "b.json", text: fileOf({ name: "Two" }) },
  ]);
  await arriving(page).locator("li").nth(1).waitFor();
  assert.match(await arriving(page).innerText(), /From “a.json” and “b.json”/);
  await button(page, "Scenarios").click();
  await settled(page);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= 320, `${wide}`);
  await assertAccessible(page);
  assertClean();
  await close();
});
