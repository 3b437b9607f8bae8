// Counts the processor's instructions in a run of the example's day, by valgrind, where no other load can disturb the count, and
// holds them against those kept in golden/instructions.csv. With `--write` it keeps what it counts.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const KEPT = fileURLToPath(new URL("golden/instructions.csv", import.meta.url));
const HEAD = "# Instructions in a run of the example's day in steps of ten seconds, as `make instructions` counts them.\nrun,instructions\n";
const RUNS = ["cooled", "floating", "week"];
// What another patch of the compiler or another processor's copying of memory may make of the same code.
const MOST_RISE = 0.02;
// On later days, hotter and with less in the bank, more has to be decided.
const MOST_OF_DAYS = 1.15;

function counted(program, run, times) {
  const options = ["--tool=callgrind", "--callgrind-out-file=/dev/null", program, String(times), run];
  const { stderr } = spawnSync("valgrind", options, { encoding: "utf8" });
  return Number(stderr.match(/Collected : (\d+)/)[1]);
}

const [program, ...flags] = process.argv.slice(2);
const now = RUNS.map((run) => ({ run, count: Math.round((counted(program, run, 6) - counted(program, run, 1)) / 5) }));
if (flags.includes("--write")) {
  writeFileSync(KEPT, HEAD + now.map(({ run, count }) => `${run},${count}\n`).join(""));
}
const kept = new Map(readFileSync(KEPT, "utf8").split("\n").filter((line) => /^\w+,\d+$/.test(line)).map((line) => line.split(",")));
// A week costs what seven days do.
const ofDays = now[2].count / (7 * now[0].count);
console.log(`A week takes ${ofDays.toFixed(2)} times the instructions of seven days`);
if (!(ofDays <= MOST_OF_DAYS)) process.exitCode = 1;
for (const { run, count } of now) {
  const change = count / Number(kept.get(run)) - 1;
  console.log(`${run.padEnd(9)} ${count.toLocaleString("en-US").padStart(12)} instructions, ${(100 * change).toFixed(2)} % from what is kept`);
  if (!(change <= MOST_RISE)) {
    console.error(`The ${run} run has become slower. If that is meant: make instructions KEEP=--write, and let the commit say why.`);
    process.exitCode = 1;
  }
}
