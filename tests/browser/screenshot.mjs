// Takes the picture of the built page: node screenshot.mjs picture.png [width height]
import { mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { openSite, settled } from "./harness.mjs";

const [picture = "noonday.png", width = "1440", height = "900"] = process.argv.slice(2);
await mkdir(dirname(picture), { recursive: true });
const site = await openSite();
try {
  const viewport = { width: Number(width), height: Number(height) };
  const { page, assertClean } = await site.visit({ viewport, deviceScaleFactor: 2, colorScheme: "light", reducedMotion: "reduce" });
  await page.locator("h1").first().waitFor({ state: "visible" });
  await page.waitForLoadState("networkidle");
  await settled(page);
  assertClean();
  await page.screenshot({ path: picture });
} finally {
  await site.close();
}
console.log(`Wrote ${picture}`);
