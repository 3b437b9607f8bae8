// Takes the picture of the built page: node screenshot.mjs picture.png [width height]
import { mkdir, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { openSite, settled } from "./harness.mjs";
import { inFewColours } from "./picture.mjs";

// As few as keep the page's look: the picture is a third as large.
const COLOURS = 32;

const [picture = "noonday.png", width = "1440", height = "900"] = process.argv.slice(2);
await mkdir(dirname(picture), { recursive: true });
const site = await openSite();
try {
  const viewport = { width: Number(width), height: Number(height) };
  const { page, assertClean } = await site.visit({ viewport, deviceScaleFactor: 2, colorScheme: "light", reducedMotion: "reduce" });
  await page.locator("h1").first().waitFor({ state: "visible" });
  // What is worked out beside the page belongs to the picture: what would help, and the bands in the charts.
  await page.getByText(/^Of 400 such days/).waitFor();
  await settled(page);
  assertClean();
  // A policy that lets the page load nothing but its own files also keeps it from reading a picture handed to it.
  const blank = await page.context().newPage();
  const content = await inFewColours(blank, await page.screenshot(), COLOURS);
  await writeFile(picture, content);
  console.log(`Wrote ${picture}, ${(content.length / 1000).toFixed(0)} kB`);
} finally {
  await site.close();
}
