// A scenario handed to somebody else: what is said with it, the link in the address, and the code that a phone reads off the screen.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { entry, openGroup, ready } from "./person.mjs";

// Jia and others' decoder, which shares nothing with what draws the code.
const DECODER = new URL("node_modules/jsqr/dist/jsQR.js", import.meta.url);
const GOLDEN = new URL("../golden/links_v2.txt", import.meta.url);
/** What the page promises of any link that can be made in it, and of the example with a few changes. */
const LONGEST_LINK = 1_200;
const LONGEST_USUAL_LINK = 300;

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const opener = (page) => page.getByRole("button", { name: "QR code and note" });
const panel = (page) => page.getByRole("region", { name: "To somebody else" });
const code = (page) => panel(page).getByRole("img", { name: "QR code of the link to this scenario" });
const box = (page, name) => panel(page).getByRole("textbox", { name });
const notices = (page) => page.locator(".notices");

/** What a camera reads off a picture of the screen: the decoder gets its pixels and nothing else. */
async function readOff(page, picture) {
  const reader = await page.context().newPage();
  await reader.evaluate(await readFile(DECODER, "utf8"));
  const read = await reader.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (mark) => mark.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext("2d");
    context.drawImage(image, 0, 0);
    const { data, width, height } = context.getImageData(0, 0, image.width, image.height);
    return globalThis.jsQR(data, width, height)?.data;
  }, picture.toString("base64"));
  await reader.close();
  return read;
}

async function screenWithCode(page) {
  await code(page).evaluate((element) => element.scrollIntoView({ block: "end" }));
  await settled(page);
  return page.screenshot();
}

/** The address that “Copy link” leaves in the browser. */
async function addressOf(page) {
  await page.getByRole("button", { name: "Copy link" }).click();
  await settled(page);
  return page.url();
}

for (const colorScheme of ["light", "dark"]) {
  test(`a phone reads the link off the screen, and sees who it is for and from (${colorScheme})`, async () => {
    const { page, assertClean, close } = await site.visit({ ...PHONE, colorScheme });
    await ready(page);
    await openGroup(page, "Its shell");
    await entry(page, "Insulation of the walls").fill("2.165");
    await entry(page, "Insulation of the roof").fill("3.05");
    await opener(page).click();
    await box(page, "For whom").fill("Maria & Tom");
    await box(page, "From").fill("Zoë’s workshop");
    await box(page, "Note").fill("Covers on <b>before</b> noon.\nCall me.");
    const read = await readOff(page, await screenWithCode(page));
    const address = await addressOf(page);
    assert.equal(read, address);
    const link = new URL(address).hash.slice(1);
    assert.ok(link.length <= LONGEST_USUAL_LINK, `${link.length} characters`);
    assert.match(await panel(page).innerText(), new RegExp(`${address.length} characters`));

    const receiver = await site.visit({ ...PHONE, colorScheme, address: `#${link}` });
    await ready(receiver.page);
    const said = await notices(receiver.page).innerText();
    assert.match(said, /For\s+Maria & Tom\s+From\s+Zoë’s workshop\s+Note\s+Covers on <b>before<\/b> noon\.\s+Call me\./);
    assert.equal(await notices(receiver.page).locator("b").count(), 0, "a note was taken for markup");
    await openGroup(receiver.page, "Its shell");
    assert.equal(await entry(receiver.page, "Insulation of the walls").inputValue(), "2.165");
    await assertAccessible(receiver.page);
    assertClean();
    receiver.assertClean();
    await receiver.close();
    await close();
  });
}

test("a scenario with everything changed still has a code that a phone reads off a phone", async () => {
  const links = (await readFile(GOLDEN, "utf8")).split("\n").filter((line) => /^2[\w-]+$/.test(line));
  const link = links.reduce((one, other) => (one.length > other.length ? one : other));
  assert.ok(link.length > 1_000 && link.length <= LONGEST_LINK);
  const { page, assertClean, close } = await site.visit({ ...PHONE, address: `#${link}` });
  await ready(page);
  assert.doesNotMatch(await notices(page).innerText(), /cannot be opened/);
  await opener(page).click();
  assert.equal(await readOff(page, await screenWithCode(page)), site.url + `#${link}`);
  assertClean();
  await close();
});

test("the panel works by keyboard, and gives the keyboard back", async () => {
  const { page, assertClean, close } = await site.visit(DESKTOP);
  await ready(page);
  for (const leave of ["Escape", "Enter"]) {
    await opener(page).focus();
    await page.keyboard.press("Enter");
    await code(page).waitFor();
    assert.equal(await opener(page).getAttribute("aria-expanded"), "true");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    const focused = (part) => part.evaluate((element) => element === document.activeElement);
    while (!(await focused(box(page, "Note")))) await page.keyboard.press("Tab");
    if (leave === "Enter") await page.keyboard.press("Tab");
    await page.keyboard.press(leave);
    await panel(page).waitFor({ state: "detached" });
    assert.ok(await focused(opener(page)), `the keyboard is lost after ${leave}`);
  }
  assertClean();
  await close();
});

for (const [name, screen] of [
  ["phone", PHONE],
  ["desktop", DESKTOP],
  ["narrow", { ...PHONE, viewport: { width: 320, height: 640 } }],
]) {
  test(`the panel is accessible and does not scroll sideways (${name})`, async () => {
    const { page, assertClean, close } = await site.visit(screen);
    await ready(page);
    await opener(page).click();
    await code(page).waitFor();
    const [content, shown] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
    assert.ok(content <= shown, `${content} in ${shown}`);
    await assertAccessible(page);
    assertClean();
    await close();
  });
}

test("a note takes as much as the link has room for, and says so", async () => {
  const { page, assertClean, close } = await site.visit(DESKTOP);
  await ready(page);
  await opener(page).click();
  const note = box(page, "Note");
  await note.fill("a".repeat(300));
  assert.equal((await note.inputValue()).length, 160);
  assert.match(await panel(page).innerText(), /160 of 160 letters used\./);
  await note.focus();
  await page.keyboard.press("End");
  await page.keyboard.type("more");
  assert.equal((await note.inputValue()).length, 160);
  await box(page, "For whom").fill("日".repeat(20));
  assert.equal(await box(page, "For whom").inputValue(), "日".repeat(13));
  assert.match(await panel(page).innerText(), /39 of 40 letters used: accented/);
  assertClean();
  await close();
});

test("what is said with a scenario is kept with it, undone like anything else, and absent where nothing was said", async () => {
  const { page, assertClean, close } = await site.visit(DESKTOP);
  await ready(page);
  await opener(page).click();
  await box(page, "For whom").fill("Maria");
  await page.waitForTimeout(700);
  await page.reload();
  await ready(page);
  await opener(page).click();
  assert.equal(await box(page, "For whom").inputValue(), "Maria");
  await box(page, "For whom").fill("");
  const plain = await addressOf(page);
  const receiver = await site.visit({ ...DESKTOP, address: `${new URL(plain).hash}` });
  await ready(receiver.page);
  assert.equal(await receiver.page.locator(".came-with").count(), 0);
  await page.getByRole("group", { name: "Changes" }).getByRole("button", { name: /^Undo/ }).click();
  assert.equal(await box(page, "For whom").inputValue(), "Maria");
  assertClean();
  await receiver.close();
  await close();
});
