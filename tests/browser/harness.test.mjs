// The checks of the harness against pages made to fail them: a check that lets these pass would prove nothing of the real page.
import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { DESKTOP, PHONE, assertAccessible, assertDrawn, dragSlider, openSite, printedText } from "./harness.mjs";

const document = (title, body) => `<!doctype html><html lang="en"><meta charset="utf-8"><title>${title}</title>
  <meta name="viewport" content="width=device-width"><link rel="icon" href="data:,"><main><h1>${title}</h1>${body}</main></html>`;

const PAGES = {
  "index.html": document("Sound", "<p>Nothing wrong here.</p>"),
  "console.html": document("Console", `<script>console.error("broken"); console.warn("doubtful")</script>`),
  "uncaught.html": document("Uncaught", `<script>setTimeout(() => { throw new Error("thrown") })</script>`),
  "foreign.html": document("Foreign", `<script>fetch("http://foreign.example/spy").catch(() => {})</script>`),
  "socket.html": document("Socket", `<script>new WebSocket(location.origin.replace("http", "ws"))</script>`),
  "worker.html": document("Worker", `<script>new Worker("spy.js")</script>`),
  "spy.js": `fetch("http://foreign.example/from-worker").catch(() => {});`,
  "missing.html": document("Missing", `<script src="absent.js"></script>`),
  "unlabelled.html": document("Unlabelled", `<input type="text">`),
  "canvas.html": document("Canvas", `<canvas id="blank"></canvas><canvas id="flat"></canvas><canvas id="line"></canvas><script>
    const fill = (id) => { const pen = document.getElementById(id).getContext("2d"); pen.fillStyle = "#fff"; pen.fillRect(0, 0, 300, 150); return pen; };
    fill("flat");
    const pen = fill("line"); pen.lineWidth = 2; pen.moveTo(0, 0); pen.lineTo(300, 150); pen.stroke();</script>`),
  "slider.html": document("Slider", `<label>Width <input type="range" min="10" max="50" step="1" value="20" style="width: 300px"></label>`),
};

let root;
let site;
before(async () => {
  root = await mkdtemp(join(tmpdir(), "noonday-harness-"));
  for (const [name, body] of Object.entries(PAGES)) await writeFile(join(root, name), body);
  site = await openSite({ root });
});
after(async () => {
  await site.close();
  await rm(root, { recursive: true });
});

async function problemsOf(address) {
  const { page, problems, assertClean, close } = await site.visit({ ...DESKTOP, address });
  await page.waitForLoadState("networkidle");
  if (problems.length > 0) assert.throws(assertClean);
  else assertClean();
  await close();
  return problems.join("\n");
}

test("a sound page is clean", async () => assert.equal(await problemsOf(""), ""));

const FAULTS = {
  "console.html": [/console error: broken/, /console warning: doubtful/],
  "uncaught.html": [/uncaught: thrown/],
  "foreign.html": [/foreign request: http:\/\/foreign\.example\/spy/],
  "socket.html": [/web socket: ws:/],
  "worker.html": [/foreign request: http:\/\/foreign\.example\/from-worker/],
  "missing.html": [/console error: .*404/],
};
for (const [address, expected] of Object.entries(FAULTS)) {
  test(`a fault is noticed: ${address}`, async () => {
    const problems = await problemsOf(address);
    for (const pattern of expected) assert.match(problems, pattern);
  });
}

test("a blank or single-coloured canvas is not taken for a drawing", async () => {
  const { page, close } = await site.visit({ ...DESKTOP, address: "canvas.html" });
  await assert.rejects(assertDrawn(page.locator("#blank")), /canvas is blank/);
  await assert.rejects(assertDrawn(page.locator("#flat")), /canvas is blank/);
  await assertDrawn(page.locator("#line"));
  await close();
});

for (const [name, screen, touch] of [["mouse", DESKTOP, false], ["finger", PHONE, true]]) {
  test(`a ${name} drags a slider through the values between`, async () => {
    const { page, close } = await site.visit({ ...screen, address: "slider.html" });
    const slider = page.getByLabel("Width");
    const seen = [];
    await dragSlider(page, slider, 0.75, { touch, onMove: async () => seen.push(Number(await slider.inputValue())) });
    assert.equal(await slider.inputValue(), "40");
    assert.ok(new Set(seen).size > 5, `values seen: ${seen}`);
    assert.deepEqual(seen, seen.toSorted((a, b) => a - b));
    await close();
  });
}

test("an unlabelled field breaks the accessibility check", async () => {
  const sound = await site.visit(DESKTOP);
  await assertAccessible(sound.page);
  await sound.close();
  const faulty = await site.visit({ ...DESKTOP, address: "unlabelled.html" });
  await assert.rejects(assertAccessible(faulty.page), /accessibility/);
  await faulty.close();
});

test("the printed page gives its text", async () => {
  const { page, close } = await site.visit(DESKTOP);
  assert.match(await printedText(page), /Nothing wrong here\./);
  await close();
});
