// Makes pictures small: the same picture in few colours, as an indexed PNG (W3C Portable Network Graphics, third edition).
import { crc32, deflateSync } from "node:zlib";

/** A PNG in at most `colours` colours: the most frequent stay as they are, every other becomes the one nearest to it. */
export async function inFewColours(page, png, colours = 256) {
  const { width, height, base64 } = await page.evaluate(pixelsOf, png.toString("base64"));
  const pixels = Buffer.from(base64, "base64");
  const { palette, indexOf } = paletteOf(pixels, colours);

  // Each line begins with its filter; colours that are mere numbers are stored best unfiltered.
  const lines = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) lines[y * (width + 1) + 1 + x] = indexOf(pixels.readUInt32BE(4 * (y * width + x)));
  }
  const header = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 8, 3, 0, 0, 0]);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("PLTE", Buffer.from(palette.flatMap((colour) => channels(colour).slice(0, 3)))),
    chunk("tRNS", Buffer.from(palette.map((colour) => channels(colour)[3]))),
    chunk("IDAT", deflateSync(lines, { level: 9, memLevel: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

async function pixelsOf(base64) {
  const picture = await createImageBitmap(await (await fetch(`data:image/png;base64,${base64}`)).blob());
  const { width, height } = picture;
  const pen = Object.assign(document.createElement("canvas"), { width, height }).getContext("2d");
  pen.drawImage(picture, 0, 0);
  const bytes = pen.getImageData(0, 0, width, height).data;
  let text = "";
  for (let at = 0; at < bytes.length; at += 32768) text += String.fromCharCode(...bytes.subarray(at, at + 32768));
  return { width, height, base64: btoa(text) };
}

const channels = (colour) => [colour >>> 24, (colour >>> 16) & 255, (colour >>> 8) & 255, colour & 255];

function paletteOf(pixels, size) {
  const counts = new Map();
  for (let at = 0; at < pixels.length; at += 4) {
    const colour = pixels.readUInt32BE(at);
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  const palette = [...counts].sort(([, a], [, b]) => b - a).slice(0, size).map(([colour]) => colour);
  const indices = new Map(palette.map((colour, index) => [colour, index]));
  const indexOf = (colour) => {
    if (!indices.has(colour)) indices.set(colour, nearest(palette, colour));
    return indices.get(colour);
  };
  return { palette, indexOf };
}

function nearest(palette, colour) {
  const wanted = channels(colour);
  const distance = (other) => channels(other).reduce((sum, channel, index) => sum + (channel - wanted[index]) ** 2, 0);
  return palette.reduce((best, other, index) => (distance(other) < distance(palette[best]) ? index : best), 0);
}

function chunk(name, body) {
  const named = Buffer.concat([Buffer.from(name, "latin1"), body]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(body.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}
