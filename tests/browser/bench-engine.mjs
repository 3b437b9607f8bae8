// Prints how long a run of the example's day takes in the page's own program, in Chromium, and natively, by turns on this machine.
import { spawnSync } from "node:child_process";
import { DESKTOP, openSite } from "./harness.mjs";

const RUNS = ["cooled", "floating"];
// Only the shortest of many short runs counts: what else the machine does only ever adds.
const TIMES = 100;
const TURNS = 15;
// How much longer the page may take than the native program with registers of the same width.
const MOST_RATIO = 1.3;

/** Milliseconds for a day natively. */
function native(program, run) {
  return Number(spawnSync(program, [String(TIMES), run], { encoding: "utf8" }).stdout);
}

/** The least milliseconds for one day and for eleven in the page's program: their difference leaves out what makes it ready. */
function inPage(page, run) {
  return page.evaluate(async ({ times, cooled }) => {
    const program = await import(document.querySelector("link[rel=modulepreload]").href);
    const took = (days) => {
      const began = performance.now();
      if (!program.runTheDay(days, cooled)) throw new Error("the example does not run");
      return performance.now() - began;
    };
    let [one, many] = [Infinity, Infinity];
    for (let done = 0; done < times; done += 12) [one, many] = [Math.min(one, took(1)), Math.min(many, took(11))];
    return { one, many };
  }, { times: TIMES, cooled: run === "cooled" });
}

const [program] = process.argv.slice(2);
const site = await openSite();
try {
  const { page, close } = await site.visit(DESKTOP);
  await page.locator("[data-decide=status]", { hasText: "as they stand" }).waitFor({ timeout: 120_000 });
  for (const run of RUNS) {
    const least = { native: Infinity, one: Infinity, many: Infinity };
    for (let turn = 0; turn < TURNS; turn += 1) {
      const { one, many } = await inPage(page, run);
      least.native = Math.min(least.native, native(program, run));
      least.one = Math.min(least.one, one);
      least.many = Math.min(least.many, many);
    }
    const paged = (least.many - least.one) / 10;
    const ratio = paged / least.native;
    console.log(`${run.padEnd(9)} ${paged.toFixed(2)} ms in the page, ${least.native.toFixed(2)} ms natively: ${ratio.toFixed(2)} times, at most ${MOST_RATIO}${ratio > MOST_RATIO ? "  missed" : ""}`);
  }
  await close();
} finally {
  await site.close();
}
