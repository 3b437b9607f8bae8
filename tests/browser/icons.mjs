// Draws the icons of the installed page from the project's own drawing: node icons.mjs folder
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { inFewColours } from "./picture.mjs";

const DRAWING = new URL("../../public/icon.svg", import.meta.url);
const folder = process.argv[2] ?? fileURLToPath(new URL("../../public/icons", import.meta.url));

// `room` is the drawing's share of the icon's width. A maskable icon may be cut to a circle of 80 % of its width (W3C
// Web Application Manifest, section on icon masks), so the drawing shrinks and its paper reaches the edges.
const ICONS = [
  { name: "icon-192.png", size: 192, room: 1 },
  { name: "icon-512.png", size: 512, room: 1 },
  { name: "icon-maskable-512.png", size: 512, room: 0.76, paper: true },
  { name: "apple-touch-icon.png", size: 180, room: 0.9, paper: true },
];

// The drawing has four; the rest are for its edges.
const COLOURS = 24;

const drawing = (await readFile(DRAWING, "utf8")).replace("<svg ", '<svg width="100%" height="100%" ');
const paper = drawing.match(/<rect[^>]*fill="([^"]+)"/)[1];

await mkdir(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
try {
  const page = await browser.newPage();
  for (const icon of ICONS) {
    await page.setViewportSize({ width: icon.size, height: icon.size });
    const background = icon.paper ? paper : "transparent";
    await page.setContent(
      `<body style="margin:0;height:100vh;display:grid;place-items:center;background:${background}">` +
        `<div style="width:${icon.room * 100}vw;height:${icon.room * 100}vh">${drawing}</div>`,
    );
    const picture = await inFewColours(page, await page.screenshot({ omitBackground: !icon.paper }), COLOURS);
    await writeFile(join(folder, icon.name), picture);
    console.log(`${icon.name.padEnd(24)} ${picture.length} bytes`);
  }
} finally {
  await browser.close();
}
