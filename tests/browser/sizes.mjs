// Prints the size of every file in a folder, as it is and as a web server would send it: node sizes.mjs [folder]
import { readdir, readFile } from "node:fs/promises";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync } from "node:zlib";

/** Every file in a folder with its size in bytes, plain and by brotli. */
export async function sizes(folder) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath ?? entry.path, entry.name));
  return Promise.all(
    paths.sort().map(async (path) => {
      const body = await readFile(path);
      return { name: relative(folder, path), plain: body.length, brotli: brotliCompressSync(body).length };
    }),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2] ?? "dist";
  const files = await sizes(folder);
  const sum = (which) => files.reduce((total, file) => total + file[which], 0);
  const line = (name, plain, brotli) => console.log(`${name.padEnd(44)} ${String(plain).padStart(10)} ${String(brotli).padStart(10)}`);
  line(folder, "bytes", "brotli");
  for (const { name, plain, brotli } of files) line(name, plain, brotli);
  line("total", sum("plain"), sum("brotli"));
}
