// The page kept on the device: it opens without a network, and a new version is taken only when somebody says so.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, test } from "node:test";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { DESKTOP, DIST, assertDrawn, openSite, settled } from "./harness.mjs";
import { bankChart, entry, ready, temperatureChart } from "./person.mjs";

const FINISH = fileURLToPath(new URL("../../src/delivery/finish.mjs", import.meta.url));
const METRIC = { ...DESKTOP, locale: "en-GB" };
const NEWS = "A new version of Noonday is ready.";

let root;
let site;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), "noonday-offline-"));
  await cp(DIST, root, { recursive: true });
  site = await openSite({ root });
});
afterEach(async () => {
  await site.close();
  await rm(root, { recursive: true });
});

/** Waits until the worker holds all files and answers for the page. */
const kept = (page) => page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated");

/** Opens one more page of the same visitor. */
async function another(visit, address = "") {
  const page = await visit.context.newPage();
  await page.goto(site.url + address);
  await ready(page);
  return page;
}

/** Builds the page anew with one file changed, as Trunk's last step does. */
async function changeBuild(name) {
  const path = join(root, "index.html");
  const page = await readFile(path, "utf8");
  await writeFile(path, page.replace(/<html lang="en"[^>]*>/, `<html lang="en" data-build="${name}">`));
  await promisify(execFile)(process.execPath, [FINISH], { env: { TRUNK_STAGING_DIR: root, TRUNK_PROFILE: "release" } });
}

const build = (page) => page.evaluate(() => document.documentElement.dataset.build ?? "first");
const notice = (page) => page.locator(".notice").filter({ hasText: NEWS });
const useIt = (page) => notice(page).getByRole("button", { name: "Use it now", exact: true });
const cacheNames = (page) => page.evaluate(() => caches.keys());

/** What the browser tells a page that somebody comes back to. */
const comeBack = (page) => page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));

async function typeInsulation(page, text) {
  const box = entry(page, "Insulation of the walls");
  await box.fill(text);
  await box.press("Tab");
  await settled(page);
}
const insulation = (page) => entry(page, "Insulation of the walls").inputValue();

for (const [what, cut] of Object.entries({
  "the server gone": () => site.server.close(),
  "the network off": ({ context }) => context.setOffline(true),
})) {
  test(`with ${what} the page opens after the first visit, and so does a shared link`, async () => {
    const visit = await site.visit(METRIC);
    await ready(visit.page);
    await kept(visit.page);
    await cut(visit);
    await assert.rejects(visit.page.evaluate(() => fetch("elsewhere")), /Failed to fetch/);
    visit.problems.length = 0;

    await visit.page.reload();
    await ready(visit.page);
    await assertDrawn(temperatureChart(visit.page), 0.01);
    await assertDrawn(bankChart(visit.page), 0.01);
    for (const address of ["#v=1&18=0.055", "?from=somebody#v=1&18=0.055", "index.html#v=1&18=0.055"]) {
      const page = await another(visit, address);
      await page.getByText("Opened from a link").waitFor();
      assert.equal(await insulation(page), "55", address);
    }
    visit.assertClean();
  });
}

test("a new version is announced, left alone until asked for, and then taken without losing what was typed", async () => {
  const visit = await site.visit(METRIC);
  const { page } = visit;
  await ready(page);
  await kept(page);
  await page.evaluate(() => Promise.all([caches.open("somebody else"), caches.open("noonday http://127.0.0.1/other/ 1")]));
  const [first] = (await cacheNames(page)).filter((name) => name.includes(site.url));
  await typeInsulation(page, "55");
  assert.equal(await notice(page).count(), 0, "the first version of all is not news");

  await changeBuild("second");
  await comeBack(page);
  await useIt(page).waitFor();
  assert.deepEqual([await build(page), await insulation(page)], ["first", "55"]);
  assert.ok((await cacheNames(page)).includes(first), "the files in use are gone");

  await page.reload();
  await ready(page);
  await useIt(page).waitFor();
  assert.equal(await build(page), "first", "a mere reload took the new version");

  let loads = 0;
  page.on("load", () => (loads += 1));
  await typeInsulation(page, "60");
  await useIt(page).click();
  await page.waitForFunction(() => document.documentElement.dataset.build === "second");
  await ready(page);
  assert.equal(await insulation(page), "60");
  assert.equal(loads, 1);
  assert.equal(await notice(page).count(), 0);

  const names = await cacheNames(page);
  assert.ok(!names.includes(first), "the old version is still kept");
  assert.equal(names.filter((name) => name.includes(site.url)).length, 1);
  assert.ok(names.includes("somebody else") && names.includes("noonday http://127.0.0.1/other/ 1"), `${names}`);
  visit.assertClean();
  assert.deepEqual(site.server.requests.filter(({ status }) => status !== 200), []);
});

test("another open page goes on as it is, and is offered the new version too", async () => {
  const visit = await site.visit(METRIC);
  await ready(visit.page);
  await kept(visit.page);
  const other = await another(visit);
  await typeInsulation(other, "abc");

  await changeBuild("second");
  await comeBack(visit.page);
  await useIt(visit.page).click();
  await visit.page.waitForFunction(() => document.documentElement.dataset.build === "second");
  await ready(visit.page);

  await useIt(other).waitFor();
  assert.deepEqual([await build(other), await insulation(other)], ["first", "abc"]);
  await useIt(other).click();
  await other.waitForFunction(() => document.documentElement.dataset.build === "second");
  await ready(other);
  visit.assertClean();
});

test("a version uploaded meanwhile is offered when the page is opened, and put off until it is opened again", async () => {
  const visit = await site.visit(METRIC);
  await ready(visit.page);
  await kept(visit.page);
  await changeBuild("second");
  const again = await another(visit);
  await notice(again).getByRole("button", { name: "Later", exact: true }).click();
  await settled(again);
  assert.equal(await notice(again).count(), 0);
  const later = await another(visit);
  await useIt(later).waitFor();
  assert.equal(await build(later), "first");
  visit.assertClean();
});

test("an upload seen half-way is not taken for a version", async () => {
  const visit = await site.visit(METRIC);
  const { page } = visit;
  await ready(page);
  await kept(page);
  const whole = await readFile(join(root, "index.html"), "utf8");
  await changeBuild("second");
  const second = await readFile(join(root, "index.html"), "utf8");
  await writeFile(join(root, "index.html"), whole);

  const fate = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const settledState = new Promise((done) => {
      registration.addEventListener("updatefound", () => {
        const worker = registration.installing;
        worker.addEventListener("statechange", () => worker.state !== "installing" && done(worker.state));
      });
    });
    await registration.update();
    return settledState;
  });
  assert.equal(fate, "redundant");
  assert.equal(await notice(page).count(), 0);

  await writeFile(join(root, "index.html"), second);
  await comeBack(page);
  await useIt(page).waitFor();
  assert.equal(await build(page), "first");
});

test("the browser finds the page fit to be installed", async () => {
  const visit = await site.visit(METRIC);
  await ready(visit.page);
  await kept(visit.page);
  const session = await visit.context.newCDPSession(visit.page);
  const { errors, data } = await session.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
  // The test's own browser window is a private one, from which nothing is installed.
  assert.deepEqual(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito"), []);

  const manifest = JSON.parse(data);
  for (const { src, sizes } of manifest.icons) {
    const size = await visit.page.evaluate(async (path) => {
      const picture = await createImageBitmap(await (await fetch(path)).blob());
      return `${picture.width}x${picture.height}`;
    }, src);
    assert.equal(size, sizes, src);
  }
  const paper = () => visit.page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--paper"));
  assert.deepEqual([manifest.theme_color, manifest.background_color], [await paper(), await paper()]);
  for (const colorScheme of ["light", "dark"]) {
    await visit.page.emulateMedia({ colorScheme });
    const meta = visit.page.locator(`meta[name=theme-color][media*=${colorScheme}]`);
    assert.equal(await meta.getAttribute("content"), await paper());
  }
  visit.assertClean();
});
