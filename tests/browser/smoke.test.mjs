import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, openSite } from "./harness.mjs";

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
