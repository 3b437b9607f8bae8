// The main job in browsers of other makes: the answer comes, follows what is typed, is kept, and opens from a link.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { ENGINES } from "./engines.mjs";
import { DIST, SUB_PATH } from "./harness.mjs";
import { startServer } from "./server.mjs";

let server;
before(async () => {
  server = await startServer({ root: DIST, base: SUB_PATH });
});
after(() => server.close());

const lead = () => document.querySelector("#decide") && document.querySelector("[data-answer=lead]")?.innerText;
// Noted in the document itself: what a driver runs has other globals than the page.
const noteTrouble = () => {
  const noted = document.documentElement.dataset;
  noted.troubles = "";
  for (const kind of ["error", "unhandledrejection", "securitypolicyviolation"]) {
    window.addEventListener(kind, (event) => (noted.troubles += `${kind} ${event.message ?? event.reason ?? event.blockedURI}\n`), true);
  }
};
/** How many colours a canvas shows: a blank has one. */
const colours = (selector) => {
  const canvas = document.querySelector(selector);
  canvas.scrollIntoView();
  const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
  return new Set(new Uint32Array(data.buffer)).size;
};
const button = (name) => {
  const found = [...document.querySelectorAll("button")].find((one) => one.innerText.trim() === name);
  found?.click();
  return Boolean(found);
};

for (const [name, { missing, open }] of Object.entries(ENGINES)) {
  test(`${name} does the main job`, { skip: missing() ?? false, timeout: 240_000 }, async () => {
    const engine = await open();
    try {
      await engine.size(1280, 950);
      await engine.go(server.url);
      const example = await engine.until("the answer", lead);
      assert.match(example, /\d/);
      assert.equal(await engine.run(() => document.querySelector("#stopped, #opening") === null), true);
      await engine.run(noteTrouble);
      assert.ok((await engine.until("a chart", colours, ".temperatures canvas")) > 3);

      await engine.type("#field-18", "0");
      const bare = await engine.until("another answer", (before) => {
        const said = document.querySelector("[data-answer=lead]").innerText;
        return said !== before && said;
      }, example);
      await engine.until("sizes and packages", () => document.querySelector("[data-decide=status]").innerText.includes("as they stand"));
      assert.ok(await engine.run(button, "Save"));
      await engine.until("what was saved", () => Object.keys(localStorage).some((key) => key.startsWith("noonday.saved.")));
      assert.equal(await engine.run(() => document.documentElement.dataset.troubles), "");

      await engine.until("what is kept", () => localStorage.getItem("noonday.working")?.includes("18=0"));
      await engine.reload();
      assert.equal(await engine.until("the answer after a reload", lead), bare);

      await engine.run(() => (location.hash = "v=1&1=Sent%20by%20link&18=0.09"));
      await engine.until("the link", () => document.querySelector("h1").innerText === "Sent by link");
      assert.ok(await engine.run(button, "Back to mine"));
      await engine.until("one's own", (said) => document.querySelector("[data-answer=lead]").innerText === said, bare);

      await engine.size(500, 900);
      assert.equal(await engine.run(() => document.documentElement.scrollWidth <= innerWidth), true, "it scrolls sideways");
    } finally {
      await engine.close();
    }
  });
}
