// Prints how long the page's own worker takes for sizes, packages and 400 sampled days, in Chromium on this machine.
import { fileURLToPath } from "node:url";
import { DESKTOP, openSite } from "./harness.mjs";

// What each part is, by its number in the page, and how long it may take, ms.
const PARTS = [
  { name: "sizes", part: 3, most: 500 },
  { name: "packages", part: 4, most: 3000 },
  { name: "400 sampled days", part: 5, most: 1500 },
];

// The example, and one that is far too hot, for which the search is longest.
const SCENARIOS = { example: "", "too hot": "#v=1&58=27&81=39&34=0&94=1000&95=400&130=300" };

/** Times the three parts in one visit, the best of several changes of state: `{ scenario: { part: ms } }`. */
export async function benchDecide(site, { rounds = 3 } = {}) {
  const timings = {};
  for (const [scenario, address] of Object.entries(SCENARIOS)) {
    const { page, close } = await site.visit({ ...DESKTOP, address });
    const best = {};
    for (let round = 0; round < rounds; round += 1) {
      await page.locator("[data-decide=status]", { hasText: "as they stand" }).waitFor({ timeout: 120_000 });
      for (const { name, part } of PARTS) {
        const took = Number(await page.locator(`[data-part="${part}"]`).getAttribute("data-took-ms"));
        best[name] = Math.min(best[name] ?? Infinity, took);
      }
      // Another state: the note of the scenario changes nothing that is calculated.
      await page.evaluate((hash) => (location.hash = hash), `${address || "#v=1"}&2=${round}`);
      await page.locator("[data-decide=status]", { hasText: "done" }).waitFor({ timeout: 20_000 }).catch(() => {});
    }
    timings[scenario] = best;
    await close();
  }
  return timings;
}

/** The timings beside their limits, a row each. */
export function decideRows(timings) {
  return Object.entries(timings).flatMap(([scenario, best]) => PARTS.map(({ name, most }) => ({ scenario, name, took: best[name], most })));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const site = await openSite();
  try {
    const rows = decideRows(await benchDecide(site));
    for (const { scenario, name, took, most } of rows) {
      console.log(`${scenario.padEnd(10)} ${name.padEnd(18)} ${String(took).padStart(6)} ms, at most ${most}`);
    }
    process.exitCode = rows.every(({ took, most }) => took <= most) ? 0 : 1;
  } finally {
    await site.close();
  }
}
