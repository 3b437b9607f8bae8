// Prints the size of every file in a folder, as it is and as a web server would send it.
import { readdir, readFile } from "node:fs/promises";
import { join, relative } from "node:path";
import { brotliCompressSync } from "node:zlib";

const folder = process.argv[2] ?? "dist";
const entries = await readdir(folder, { recursive: true, withFileTypes: true });
const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath ?? entry.path, entry.name));
const rows = await Promise.all(
  paths.sort().map(async (path) => {
    const body = await readFile(path);
    return [relative(folder, path), body.length, brotliCompressSync(body).length];
  }),
);
const total = rows.reduce((sum, [, plain, brotli]) => ["total", sum[1] + plain, sum[2] + brotli], ["total", 0, 0]);
const line = (name, plain, brotli) => console.log(`${name.padEnd(44)} ${plain.padStart(10)} ${brotli.padStart(10)}`);
line(folder, "bytes", "brotli");
for (const [name, plain, brotli] of [...rows, total]) line(name, String(plain), String(brotli));
