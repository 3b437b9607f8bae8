import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite } from "./harness.mjs";

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

for (const [name, screen] of Object.entries({ phone: PHONE, desktop: DESKTOP })) {
  test(`the page opens on a ${name} under a sub-path, without a complaint or a foreign request`, async () => {
    const { page, assertClean, close } = await site.visit(screen);
    const heading = page.locator("h1").first();
    await heading.waitFor({ state: "visible" });
    assert.notEqual((await heading.innerText()).trim(), "");
    assertClean();
    assert.deepEqual(site.server.requests.filter(({ status }) => status !== 200), []);
    await close();
  });
}

test("the browser is told to let nothing leave for elsewhere", async () => {
  const { page, close } = await site.visit(PHONE);
  const blocked = await page.evaluate(
    () =>
      new Promise((done) => {
        addEventListener("securitypolicyviolation", ({ blockedURI }) => done(blockedURI));
        fetch("http://foreign.example/").catch(() => setTimeout(() => done("not by the policy"), 1000));
      }),
  );
  assert.equal(blocked, "http://foreign.example/");
  await close();
});

test("until it has calculated, the page shows the example's answer, and then the same", async () => {
  for (const [locale, screen] of [["en-US", PHONE], ["en-GB", DESKTOP]]) {
    const context = await site.browser.newContext({ locale, timezoneId: "UTC", ...screen });
    let letThrough;
    const asked = new Promise((asked) => (letThrough = asked));
    await context.route("**/*.wasm", async (route) => {
      await asked;
      await route.continue();
    });
    const page = await context.newPage();
    await page.goto(site.url, { waitUntil: "commit" });
    const opening = page.locator("#opening");
    const said = (within) => Promise.all([".lead", ".rest", ".reading"].map((part) => within.locator(`${part}:visible`).first().innerText()));
    await opening.locator(".lead:visible").waitFor();
    assert.equal(await opening.locator("svg:visible polyline.cabin[stroke-width=\"2.5\"]").count(), 1);
    await assertAccessible(page, ["color-contrast-enhanced"]);
    const before = await said(opening);
    assert.match(before[0], /\d/);
    letThrough();
    await opening.waitFor({ state: "detached" });
    assert.deepEqual(await said(page.locator(".day")), before);
    await context.close();
  }
});

test("where something else will open, no number is shown until it is calculated", async () => {
  const link = `${site.url}#v=1&17=0.05`;
  for (const [locale, address] of [["en-US", link], ["de-DE", site.url]]) {
    const context = await site.browser.newContext({ locale, ...PHONE });
    // The calculation never arrives.
    await context.route("**/*.wasm", () => {});
    const page = await context.newPage();
    await page.goto(address, { waitUntil: "commit" });
    const opening = page.locator("#opening");
    await opening.getByText("Noonday runs a hot day in a parked van").waitFor();
    assert.doesNotMatch(await opening.innerText(), /\d/);
    await assertAccessible(page, ["color-contrast-enhanced"]);
    await context.close();
  }
});

test("the page runs no inline script but its own", async () => {
  const { page, close } = await site.visit(PHONE);
  const ran = await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "globalThis.foreignScriptRan = true";
    document.body.append(script);
    return globalThis.foreignScriptRan === true;
  });
  assert.equal(ran, false);
  await close();
});
