// Measures the built page as a person meets it and prints a table: node bench.mjs
//
// Slow network: 1.6 Mbit/s down, 750 kbit/s up, 150 ms for each request, as the Slow 4G that Lighthouse assumes
// (its throttling constants). Slow processor: four times slower than this one, by Chromium's own brake.
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { benchDecide, decideRows } from "./bench-decide.mjs";
import { CHROMIUM_FLAGS, DIST, PHONE, dragSlider, openSite } from "./harness.mjs";
import { ready, slider } from "./person.mjs";
import { sizes } from "./sizes.mjs";

const LIGHTHOUSE = fileURLToPath(new URL("lighthouse/node_modules/lighthouse/cli/index.js", import.meta.url));
const SLOW_4G = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const VISITS = 5;
const DRAG_STEPS = 60;
const DRAGGED = "Insulation of the walls";
const SIZE_ALLOWED_KB = 300;

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

const site = await openSite();
const rows = [];
const note = (what, shown, target, met) => rows.push([what, shown, target, met ? "" : "missed"]);
try {
  const visits = [];
  for (let turn = 0; turn < VISITS; turn += 1) visits.push(await firstChart());
  const charts = visits.map(({ openingMs }) => openingMs);
  note(`first chart, Slow 4G, processor 4x slower (median of ${VISITS})`, seconds(median(charts)), "1.5 s", median(charts) <= 1500);
  note("  the same chart, ready to be explored", seconds(median(visits.map(({ chartMs }) => chartMs))), "", true);
  note("  sent until then", `${(median(visits.map(({ bytes }) => bytes)) / 1000).toFixed(0)} kB`, "", true);

  for (const [slowdown, allowedMs] of [[4, 50], [1, 16]]) {
    const taken = await dragged(slowdown);
    const name = `input to painted frame, processor ${slowdown}x slower (median of ${taken.length})`;
    note(name, `${median(taken).toFixed(1)} ms`, `${allowedMs} ms`, median(taken) <= allowedMs);
  }

  for (const { scenario, name, took, most } of decideRows(await benchDecide(site))) {
    note(`worker, ${scenario}: ${name} (best of 3)`, `${took} ms`, `${most} ms`, took <= most);
  }

  const report = await lighthouse();
  for (const { title, score } of Object.values(report.categories)) {
    note(`Lighthouse, mobile: ${title.toLowerCase()}`, `${Math.round(score * 100)}`, "100", score === 1);
  }
  const shift = report.audits["cumulative-layout-shift"].numericValue;
  note("cumulative layout shift", shift.toFixed(3), "0", shift === 0);
  for (const audit of ["first-contentful-paint", "largest-contentful-paint", "total-blocking-time", "speed-index"]) {
    note(`  ${report.audits[audit].title.toLowerCase()}`, report.audits[audit].displayValue, "", true);
  }

  const kilobytes = (await sizes(DIST)).reduce((sum, { brotli }) => sum + brotli, 0) / 1000;
  note("all files, by brotli", `${kilobytes.toFixed(0)} kB`, `${SIZE_ALLOWED_KB} kB`, kilobytes <= SIZE_ALLOWED_KB);
} finally {
  await site.close();
}

const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column].length)));
for (const [what, shown, target, missed] of [["", "measured", "at most", ""], ...rows]) {
  console.log(`${what.padEnd(widths[0])}  ${shown.padStart(Math.max(widths[1], 8))}  ${target.padStart(Math.max(widths[2], 7))}  ${missed}`.trimEnd());
}

function seconds(milliseconds) {
  return `${(milliseconds / 1000).toFixed(2)} s`;
}

/** A page that notes when the charts are painted on their canvases: after the frame in which something is drawn on a canvas. */
async function watchedPage(slowdown) {
  const context = await site.browser.newContext({ locale: "en-US", timezoneId: "UTC", ...PHONE });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
  await page.addInitScript(watchPainting);
  return { context, page, session };
}

function watchPainting() {
  const painted = { first: undefined, asked: undefined, answers: [] };
  globalThis.painted = painted;
  const { stroke } = CanvasRenderingContext2D.prototype;
  let waiting = false;
  CanvasRenderingContext2D.prototype.stroke = function (...path) {
    if (!waiting) {
      waiting = true;
      // A message posted while a frame is made arrives when it has been handed over.
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        const now = performance.now();
        waiting = false;
        painted.first ??= now;
        if (painted.asked !== undefined) painted.answers.push(now - painted.asked);
        painted.asked = undefined;
      };
      port2.postMessage(null);
    }
    return stroke.apply(this, path);
  };
  addEventListener("input", ({ timeStamp }) => (painted.asked ??= timeStamp), true);
}

async function firstChart() {
  const { context, page, session } = await watchedPage(4);
  await session.send("Network.emulateNetworkConditions", SLOW_4G);
  const before = site.server.requests.length;
  await page.goto(site.url, { waitUntil: "commit" });
  await page.waitForFunction(() => globalThis.painted.first !== undefined);
  const chartMs = await page.evaluate(() => globalThis.painted.first);
  // The opening's chart stands in the page itself, so it is there with the first paint of any content.
  const { openingMs, hadChart } = await page.evaluate(() => ({
    openingMs: performance.getEntriesByName("first-contentful-paint")[0].startTime,
    hadChart: document.documentElement.dataset.opening !== undefined,
  }));
  if (!hadChart) throw new Error("The page opened without the example's chart.");
  const bytes = site.server.requests.slice(before).reduce((sum, request) => sum + request.bytes, 0);
  await context.close();
  return { openingMs, chartMs, bytes };
}

async function dragged(slowdown) {
  const { context, page } = await watchedPage(slowdown);
  await page.goto(site.url);
  await ready(page);
  const frame = () => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  for (const end of [1, 0.05]) await dragSlider(page, slider(page, DRAGGED), end, { steps: DRAG_STEPS, touch: true, onMove: frame });
  const answers = await page.evaluate(() => globalThis.painted.answers);
  await context.close();
  // The first drag brings the slider to its end and warms up.
  return answers.slice(-DRAG_STEPS);
}

async function lighthouse() {
  if (!existsSync(LIGHTHOUSE)) throw new Error("Lighthouse is missing: make bench-page installs it.");
  const asked = [
    LIGHTHOUSE, site.url, "--quiet", "--output=json", "--output-path=stdout", "--no-enable-error-reporting",
    "--only-categories=performance,accessibility,best-practices",
    // A value with spaces in it stands in quotation marks.
    `--chrome-flags=--headless=new ${CHROMIUM_FLAGS.map((flag) => flag.replace(/=(.* .*)$/, '="$1"')).join(" ")}`,
  ];
  const env = { ...process.env, CHROME_PATH: process.env.CHROMIUM ?? "/usr/bin/chromium" };
  const { stdout } = await promisify(execFile)(process.execPath, asked, { env, maxBuffer: 1e8 });
  return JSON.parse(stdout);
}
