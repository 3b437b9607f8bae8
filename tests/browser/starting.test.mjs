// Starting points: picked, changed, told, put back, taken back, and carried by link and storage.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { atHand, entry, kept, lead, openGroup, ready } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const picker = (page, label) => page.getByRole("combobox", { name: label });
const group = (page, title) => page.locator("details.group").filter({ has: page.getByText(title, { exact: true }) });
const line = (page, title) => group(page, title).locator(".group-line").textContent();
const height = (page) => entry(page, "Inner height").inputValue();

async function pick(page, label, option) {
  await picker(page, label).selectOption({ label: option });
  await settled(page);
}

test("a starting point is picked in one step, told in the lines, and undone as one", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await openGroup(page, "The vehicle");
  const [before, said] = [await height(page), await lead(page)];
  await pick(page, "Body to start from", "Converted bus");
  assert.equal(await height(page), "1.95");
  assert.notEqual(await lead(page), said);
  assert.match(await line(page, "The vehicle"), /^As “Converted bus”\. 8\.5.m long/);
  assert.match(await line(page, "Its glass"), /^As “Converted bus”\. Windscreen 2/);
  assert.match(await group(page, "The vehicle").innerText(), /common practice; no source\. None of them was changed since/);
  assert.match(await line(page, "Its shell"), /^Sheep wool/);
  await atHand(page, "Undo").click();
  await settled(page);
  assert.equal(await height(page), before);
  assert.equal(await picker(page, "Body to start from").inputValue(), "0");
  assert.equal(await lead(page), said);
  assertClean();
  await close();
});

test("what was changed since is told and goes back to the starting point's value", async () => {
  const { page, assertClean, close } = await site.visit({ ...PHONE, locale: "en-GB" });
  await ready(page);
  await openGroup(page, "The vehicle");
  await pick(page, "Body to start from", "Medium panel van, standard roof");
  await entry(page, "Inner height").fill("1.5");
  await entry(page, "Inner length").fill("3.1");
  await settled(page);
  assert.match(await line(page, "The vehicle"), /^As “Medium panel van, standard roof”, with 2 changes\./);
  await page.getByRole("button", { name: "Back to 1.4 m, as “Medium panel van, standard roof”: Inner height" }).click();
  await settled(page);
  assert.equal(await height(page), "1.4");
  assert.match(await line(page, "The vehicle"), /with 1 change\./);
  await assertAccessible(page);
  await page.getByRole("button", { name: "Take all its values again" }).click();
  await settled(page);
  assert.equal(await entry(page, "Inner length").inputValue(), "2.6");
  await entry(page, "Inner length").fill("3.1");
  await pick(page, "Body to start from", "None: entered by hand");
  assert.equal(await entry(page, "Inner length").inputValue(), "3.1");
  await page.getByRole("button", { name: "Back to 4.2 m: Inner length" }).waitFor();
  assertClean();
  await close();
});

test("a pick travels in the link and is kept across a reload", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  await openGroup(page, "The bank");
  await pick(page, "Bank to start from", "Lead-acid glass mat, 24\u00a0V, 200\u00a0Ah");
  await entry(page, "Capacity of the bank").fill("210");
  await kept(page);
  const told = /^As “Lead-acid glass mat, 24.V, 200.Ah”, with 1 change\./;
  await page.reload();
  await ready(page);
  assert.match(await line(page, "The bank"), told);
  await page.getByRole("button", { name: "Copy link", exact: true }).click();
  await settled(page);
  const other = await site.visit({ ...METRIC, address: new URL(page.url()).hash });
  await ready(other.page);
  assert.match(await line(other.page, "The bank"), told);
  assertClean();
  other.assertClean();
  await close();
  await other.close();
});

test("each part has its starting points, and all of them together still give an answer", async () => {
  const { page, assertClean, close } = await site.visit(METRIC);
  await ready(page);
  for (const [title, label, option] of [
    ["The vehicle", "Body to start from", "Small sleeping trailer"],
    ["Its shell", "Build-up to start from", "Bare metal"],
    ["Who is in it", "People to start from", "A dog alone by day"],
    ["Where it stands", "Climate to start from", "Hot desert by a warm sea"],
    ["The cooler", "Cooler to start from", "Small room unit on mains voltage"],
    ["The bank", "Bank to start from", "Lithium iron phosphate, 48\u00a0V, 100\u00a0Ah"],
  ]) {
    await openGroup(page, title);
    await pick(page, label, option);
    assert.ok((await line(page, title)).startsWith(`As “${option}”.`), title);
  }
  assert.match(await line(page, "When it must be cool"), /^As “A dog alone by day”\. At most 27.°C for animals from 10:00 to 16:00; 20.%/);
  assert.match(await line(page, "The day"), /^As “Hot desert by a warm sea”\. 1 day from 15 August 2026/);
  assert.match(await page.locator(".cautions").innerText(), /Never rely on a cooler to keep them alive/);
  assert.match(await lead(page), /\d/);
  assert.equal(await page.locator(".group-trouble").count(), 0);
  await assertAccessible(page);
  assertClean();
  await close();
});
