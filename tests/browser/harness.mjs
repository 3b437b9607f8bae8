// What every browser test needs: the built page on a server of its own, a real Chromium, and a record of all that went wrong.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { chromium } from "playwright-core";
import { startServer } from "./server.mjs";

export const DIST = fileURLToPath(new URL("../../dist", import.meta.url));
const AXE = new URL("node_modules/axe-core/axe.min.js", import.meta.url);
const WCAG_RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

// Deep on purpose: an address that starts at the host's root fails here.
export const SUB_PATH = "/some/folder/noonday/";

export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true };
export const DESKTOP = { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 };

export const CHROMIUM_FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // Nothing but this machine exists: neither a page under test nor the browser itself reaches further.
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

/** Starts a server for `root` under a sub-path and a Chromium to look at it with. */
export async function openSite({ root = DIST, base = SUB_PATH } = {}) {
  const server = await startServer({ root, base });
  const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
  const close = async () => {
    await browser.close();
    await server.close();
  };
  return { server, browser, url: server.url, close, visit: (options) => visit({ browser, server }, options) };
}

/**
 * Opens the page as a first-time visitor: no storage, no cache, and the given screen.
 *
 * `address` is what follows the page's folder (a file, a query, a fragment); other options go to the browser context.
 * `problems` grows for as long as the visit lasts; `assertClean` fails if there are any.
 */
export async function visit({ browser, server }, { address = "", ...screen } = DESKTOP) {
  const context = await browser.newContext({ locale: "en-US", timezoneId: "UTC", ...screen });
  const problems = recordProblems(context, new URL(server.url).origin);
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(server.url + address, { waitUntil: "load" });
  const assertClean = () => assert.deepEqual(problems, [], "the visit had problems");
  return { page, context, problems, assertClean, close: () => context.close() };
}

function recordProblems(context, origin) {
  const problems = [];
  const note = (kind, detail) => problems.push(`${kind}: ${detail}`);
  context.on("console", (message) => {
    if (["error", "warning", "assert"].includes(message.type())) note(`console ${message.type()}`, message.text());
  });
  context.on("weberror", (failure) => note("uncaught", failure.error().message));
  context.on("request", (request) => {
    const url = new URL(request.url());
    const local = url.origin === origin || ["data:", "blob:"].includes(url.protocol);
    if (!local) note("foreign request", url.href);
  });
  context.on("page", (page) => {
    page.on("crash", () => note("crash", page.url()));
    page.on("websocket", (socket) => note("web socket", socket.url()));
  });
  return problems;
}

/** Waits until the page has had the time to react and paint: two animation frames. */
export async function settled(page) {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** The size, number of colours and most common colour's share of what a canvas shows. */
export async function canvasContent(canvas) {
  return canvas.evaluate((element) => {
    const { width, height } = element;
    if (width === 0 || height === 0) return { width, height, colours: 0, backgroundShare: 1 };
    const { data } = element.getContext("2d").getImageData(0, 0, width, height);
    const counts = new Map();
    for (const pixel of new Uint32Array(data.buffer)) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
    return { width, height, colours: counts.size, backgroundShare: Math.max(...counts.values()) / (width * height) };
  });
}

/** Fails unless the canvas shows more than a blank: several colours, and at least `inkShare` of it not background. */
export async function assertDrawn(canvas, inkShare = 0.002) {
  const content = await canvasContent(canvas);
  const drawn = content.colours > 2 && 1 - content.backgroundShare >= inkShare;
  assert.ok(drawn, `the canvas is blank: ${JSON.stringify(content)}`);
}

/**
 * Drags a slider's thumb to `fraction` of its track (0 left, 1 right) as a hand does: press, many small moves, release.
 *
 * `onMove` is awaited after each move, to look at the page during the drag. With `touch` a finger is used instead of a mouse.
 */
export async function dragSlider(page, slider, fraction, { steps = 20, touch = false, onMove = async () => {} } = {}) {
  await slider.scrollIntoViewIfNeeded();
  const { from, to, y } = await slider.evaluate((element, target) => {
    const box = element.getBoundingClientRect();
    const [low, high] = [Number(element.min || 0), Number(element.max || 100)];
    const now = (element.valueAsNumber - low) / (high - low);
    // The thumb's middle stays half a thumb inside the track, and a thumb is about as wide as the slider is high.
    const inset = Math.min(box.height, 24) / 2;
    const at = (share) => box.left + inset + share * (box.width - 2 * inset);
    return { from: at(now), to: at(target), y: box.top + box.height / 2 };
  }, fraction);

  const hand = touch ? await finger(page) : mouse(page);
  await hand.press(from, y);
  for (let step = 1; step <= steps; step += 1) {
    await hand.move(from + ((to - from) * step) / steps, y);
    await onMove(step / steps);
  }
  await hand.release();
  await settled(page);
}

function mouse(page) {
  return {
    press: async (x, y) => {
      await page.mouse.move(x, y);
      await page.mouse.down();
    },
    move: (x, y) => page.mouse.move(x, y),
    release: () => page.mouse.up(),
  };
}

async function finger(page) {
  const session = await page.context().newCDPSession(page);
  const touch = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  return {
    press: (x, y) => touch("touchStart", [{ x, y }]),
    move: (x, y) => touch("touchMove", [{ x, y }]),
    release: async () => {
      await touch("touchEnd", []);
      await session.detach();
    },
  };
}

/** Fails on any breach of the WCAG 2.2 rules, levels A and AA, that a program can detect; `extraRules` adds to them. */
export async function assertAccessible(page, extraRules = []) {
  // What happens to be scrolled under the parts that stay in view would count as too small to touch.
  await page.evaluate(() => document.querySelectorAll(".hand, .glance").forEach((part) => (part.style.position = "static")));
  await page.evaluate(await readFile(AXE, "utf8"));
  const violations = await page.evaluate(
    async ({ tags, rules }) => {
      const enabled = Object.fromEntries(rules.map((rule) => [rule, { enabled: true }]));
      const report = await globalThis.axe.run(document, { runOnly: { type: "tag", values: tags }, rules: enabled });
      return report.violations.map(({ id, help, nodes }) => ({ id, help, where: nodes.map((node) => node.target.join(" ")) }));
    },
    { tags: WCAG_RULES, rules: extraRules },
  );
  assert.deepEqual(violations, [], "the page breaks accessibility rules");
}

/** The text of the page as it would be printed, laid out as on paper. */
export async function printedText(page) {
  const paper = await page.pdf({ format: "A4", printBackground: true });
  const converting = promisify(execFile)("pdftotext", ["-layout", "-", "-"]);
  converting.child.stdin.end(paper);
  return (await converting).stdout;
}
