// When the program cannot come up, stops, or its worker ends: there is always a message, the scenario, and a way on.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, openSite, settled } from "./harness.mjs";
import { entry, kept, lead, ready, workedOut } from "./person.mjs";

const METRIC = { ...DESKTOP, locale: "en-GB" };
const WALLS = "Insulation of the walls";
const SCREENS = { phone: { ...PHONE, locale: "en-GB" }, desktop: METRIC, narrow: { ...METRIC, viewport: { width: 320, height: 640 } } };

let site;
before(async () => {
  site = await openSite();
});
after(() => site.close());

const button = (page, name) => page.getByRole("button", { name, exact: true });
const message = (page) => page.locator("#stopped");
const link = (page) => message(page).getByRole("textbox").inputValue();
const stored = (page, key) => page.evaluate((key) => localStorage.getItem(key), key);

/** The library makes every element by cloning one, and stops the program where the browser will not. */
const breakCloning = () => {
  Node.prototype.cloneNode = () => {
    throw new DOMException("refused", "NotSupportedError");
  };
};

/** Has the program stop at the next element that it makes, and asks it for some. */
async function stop(page) {
  await page.evaluate(breakCloning);
  await page.evaluate(() => document.querySelector("[aria-controls=shelf]")?.click());
}

async function assertSound(page) {
  await assertAccessible(page, ["color-contrast-enhanced"]);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true, "it scrolls sideways");
}

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`a program that stops says so, shows the scenario, and is loaded again as it was (${name})`, async () => {
    const { page, context, close } = await site.visit({ ...screen, permissions: ["clipboard-read", "clipboard-write"] });
    await ready(page);
    await entry(page, WALLS).fill("61");
    await kept(page);
    const said = await lead(page);
    await stop(page);
    await message(page).getByRole("heading", { name: "Noonday has stopped" }).waitFor();
    assert.equal(await page.locator("[data-answer]").count(), 0, "numbers are still shown");
    await assertSound(page);
    const address = await link(page);
    assert.match(address, /#v=1&18=0\.061$/);
    await button(page, "Copy it").click();
    await message(page).getByText("Copied.").waitFor();
    assert.equal(await page.evaluate(() => navigator.clipboard.readText()), address);

    const other = await context.newPage();
    await other.goto(address);
    await ready(other);
    assert.equal(await entry(other, WALLS).inputValue(), "61");
    await button(page, "Load the page again").click();
    await ready(page);
    assert.equal(await entry(page, WALLS).inputValue(), "61");
    assert.equal(await lead(page), said);
    await close();
  });
}

test("what stops the page whenever it is loaded can be put by, and the example opened", async () => {
  const { page, context, close } = await site.visit(METRIC);
  await ready(page);
  await entry(page, WALLS).fill("61");
  await kept(page);
  const working = await stored(page, "noonday.working");
  await context.addInitScript(`if (localStorage.getItem("noonday.working")) (${breakCloning})();`);
  await page.reload();
  await message(page).waitFor();
  assert.equal(await button(page, "Open the example instead").count(), 0);
  await button(page, "Load the page again").click();
  await message(page).getByText("It has stopped again").waitFor();
  await assertSound(page);
  assert.match(await link(page), /#v=1&18=0\.061$/);
  assert.equal(await stored(page, "noonday.working"), working);
  await button(page, "Open the example instead").click();
  await ready(page);
  assert.equal(await entry(page, WALLS).inputValue(), "40");
  await button(page, "Scenarios").click();
  await page.getByRole("button", { name: "Open “Example: two people and a dog”" }).click();
  await settled(page);
  assert.equal(await entry(page, WALLS).inputValue(), "61");
  await close();
});

const ABSENT = {
  "the program is damaged": (context) =>
    context.route("**/*.wasm", (route) => route.fulfill({ contentType: "application/wasm", body: "not a program" })),
  "the program is cut off half-way": (context) =>
    context.route("**/*.wasm", async (route) => {
      const whole = await (await route.fetch()).body();
      await route.fulfill({ contentType: "application/wasm", body: whole.subarray(0, whole.length / 2) });
    }),
  "the program is not there": (context) => context.route("**/*.wasm", (route) => route.fulfill({ status: 404, body: "" })),
  "the network fails": (context) => context.route("**/*.wasm", (route) => route.abort()),
  "its script is blocked": (context) => context.route("**/noonday-*.js", (route) => route.abort()),
  "its script cannot be read": (context) =>
    context.route("**/noonday-*.js", (route) => route.fulfill({ contentType: "text/javascript", body: "import {" })),
  "the browser has no WebAssembly": (context) => context.addInitScript(() => delete globalThis.WebAssembly),
  "the browser does not know its instructions": (context) =>
    context.addInitScript(() => {
      const refuse = () => Promise.reject(new WebAssembly.CompileError("invalid opcode"));
      Object.assign(WebAssembly, { compile: refuse, compileStreaming: refuse, instantiate: refuse, instantiateStreaming: refuse });
    }),
  "the browser knows no modules": (context) => context.addInitScript(() => delete HTMLScriptElement.prototype.noModule),
};

for (const [why, spoil] of Object.entries(ABSENT)) {
  test(`when ${why}, the page says so and keeps the scenario`, async () => {
    const context = await site.browser.newContext({ ...SCREENS.phone, serviceWorkers: "block" });
    const page = await context.newPage();
    await page.goto(`${site.url}icon.svg`);
    await page.evaluate(() => localStorage.setItem("noonday.working", '{"form":"v=1&18=0.061","runnable":null}'));
    await spoil(context);
    await page.goto(site.url);
    await message(page).getByRole("heading", { name: "Noonday could not start" }).waitFor({ timeout: 15_000 });
    assert.match(await link(page), /#v=1&18=0\.061$/);
    assert.equal(await page.locator("#opening").isVisible(), false);
    await assertSound(page);
    await context.unrouteAll();
    if (!why.startsWith("the browser")) {
      await button(page, "Load the page again").click();
      await ready(page);
      assert.equal(await entry(page, WALLS).inputValue(), "61");
    }
    await context.close();
  });
}

test("with storage blocked too, the message shows what this tab had", async () => {
  const { page, context, close } = await site.visit(METRIC);
  await context.addInitScript(() => {
    for (const name of ["localStorage", "sessionStorage"]) {
      Object.defineProperty(window, name, { get: () => { throw new DOMException("blocked", "SecurityError"); } });
    }
  });
  await page.reload();
  await ready(page);
  await entry(page, WALLS).fill("61");
  await kept(page);
  await stop(page);
  await message(page).waitFor();
  assert.match(await link(page), /#v=1&18=0\.061$/);
  await close();
});

test("a browser that names its language by no tag is spoken to in English", async () => {
  const { page, context, assertClean, close } = await site.visit(METRIC);
  await context.addInitScript(() => {
    for (const [name, value] of [["language", "C"], ["languages", ["C"]]]) Object.defineProperty(navigator, name, { value });
  });
  await page.reload();
  await ready(page);
  assert.match(await lead(page), /\d/);
  assertClean();
  await close();
});

test("what a part of the browser throws through the program stops it as its own errors do", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await entry(page, WALLS).fill("61");
  await kept(page);
  await page.evaluate(() => {
    Date.prototype.toISOString = () => {
      throw new RangeError("refused");
    };
  });
  await button(page, "Save").click();
  await message(page).getByRole("heading", { name: "Noonday has stopped" }).waitFor();
  assert.match(await link(page), /#v=1&18=0\.061$/);
  await close();
});

const status = (page) => page.locator("[data-decide=status]");

test("a worker that ends is begun afresh, and what it had found is marked as of before", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await workedOut(page);
  assert.equal(await button(page, "Use the smallest sizes").isDisabled(), false);
  await page.workers()[0].evaluate(() => self.close());
  await entry(page, WALLS).fill("61");
  await status(page).getByText("ended by itself").waitFor({ timeout: 40_000 });
  assert.match(await status(page).innerText(), /may be incomplete or of an earlier state/);
  assert.equal(await button(page, "Use the smallest sizes").isDisabled(), true);
  await button(page, "Work it out").click();
  await workedOut(page);
  assert.equal(page.workers().length, 1);
  await close();
});

test("a summer whose worker ends can be run again", async () => {
  const { page, close } = await site.visit(METRIC);
  await ready(page);
  await workedOut(page);
  await page.locator("#weather summary", { hasText: "A whole summer" }).click();
  await button(page, "Try an invented summer").first().click();
  const others = page.workers();
  const [summers] = await Promise.all([page.waitForEvent("worker"), button(page, "Run these days").click()]);
  assert.ok(!others.includes(summers));
  await summers.evaluate(() => self.close());
  const phase = page.locator("[data-weather=phase]");
  await phase.getByText("ended by itself").waitFor({ timeout: 60_000 });
  await button(page, "Run these days").click();
  await page.waitForFunction(() => document.querySelectorAll(".calendar button[data-day]").length === 92, null, { timeout: 60_000 });
  await phase.getByText("ended by itself").waitFor({ state: "detached", timeout: 60_000 });
  await close();
});

test("a worker that ends again is given up, and the rest of the page works", async () => {
  const { page, context, close } = await site.visit({ ...METRIC, serviceWorkers: "block", address: "icon.svg" });
  await context.route("**/worker.js", (route) => route.fulfill({ contentType: "text/javascript", body: "throw new Error('garbage')" }));
  await page.goto(site.url);
  await ready(page);
  await status(page).getByText("ended by itself").waitFor({ timeout: 40_000 });
  const said = await lead(page);
  await entry(page, WALLS).fill("0");
  await status(page).getByText("ended by itself again").waitFor({ timeout: 40_000 });
  assert.notEqual(await lead(page), said);
  await entry(page, WALLS).fill("10");
  await page.waitForTimeout(1500);
  assert.match(await status(page).innerText(), /ended by itself again/);
  await close();
});
