// Browsers of other makes than the one of the other tests, driven by the commands of WebDriver (W3C): Firefox by its own Marionette,
// WebKit by its WebKitWebDriver on a screen that nobody sees. Neither needs more than Debian's packages.
import { execFileSync, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createConnection, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";
const STARTING_MS = 60_000;
const ASKING_MS = 250;
const MINI_BROWSER = ["webkit2gtk-4.1", "webkit2gtk-4.0", "webkitgtk-6.0"]
  .map((name) => `/usr/lib/${machine()}/${name}/MiniBrowser`)
  .find((path) => existsSync(path));

/** Each engine: what of it is missing on this machine, if anything, and how it is opened. */
export const ENGINES = {
  Firefox: { missing: () => (found("firefox-esr") || found("firefox") ? undefined : "firefox-esr is not installed"), open: openFirefox },
  WebKit: {
    missing: () => {
      if (!found("WebKitWebDriver") || !MINI_BROWSER) return "webkit2gtk-driver is not installed";
      return found("Xvfb") ? undefined : "xvfb is not installed";
    },
    open: openWebKit,
  },
};

function machine() {
  return `${{ x64: "x86_64", arm64: "aarch64" }[process.arch] ?? process.arch}-linux-gnu`;
}

function found(program) {
  try {
    return execFileSync("sh", ["-c", 'command -v "$1"', "sh", program], { encoding: "utf8" }).trim();
  } catch {
    return undefined;
  }
}

async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await new Promise((listening) => server.once("listening", listening));
  const { port } = server.address();
  await new Promise((closed) => server.close(closed));
  return port;
}

/** Tries until it works, for as long as a browser may take to start. */
async function patiently(attempt) {
  for (const begun = performance.now(); ; ) {
    try {
      return await attempt();
    } catch (error) {
      if (performance.now() - begun > STARTING_MS) throw error;
      await new Promise((done) => setTimeout(done, ASKING_MS));
    }
  }
}

function started(program, parameters, environment = {}) {
  // A group of its own, so that what it starts ends with it.
  const child = spawn(program, parameters, { stdio: "ignore", detached: true, env: { ...process.env, ...environment } });
  child.on("error", () => {});
  return () => {
    try {
      process.kill(-child.pid);
    } catch {
      // It has ended by itself.
    }
  };
}

async function openFirefox() {
  const [profile, port] = [await mkdtemp(join(tmpdir(), "noonday-firefox-")), await freePort()];
  const settings = { "marionette.port": port, "browser.shell.checkDefaultBrowser": false, "intl.accept_languages": "en-GB", "network.dns.disabled": true };
  await writeFile(join(profile, "user.js"), Object.entries(settings).map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`).join(""));
  const end = started(found("firefox-esr") ?? found("firefox"), ["--headless", "--no-remote", "--marionette", "--profile", profile]);
  const line = await patiently(() => marionette(port));
  const close = async () => {
    line.end();
    end();
    await rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 300 });
  };
  return browser((name, parameters) => line.send(`WebDriver:${name}`, parameters), close);
}

/** A line to Marionette: each message is its length, a colon, and JSON. */
async function marionette(port) {
  const socket = createConnection(port, "127.0.0.1");
  const waiting = new Map();
  let [bytes, greeted, number] = [Buffer.alloc(0), () => {}, 0];
  const greeting = new Promise((done) => (greeted = done));
  socket.on("data", (part) => {
    bytes = Buffer.concat([bytes, part]);
    for (let colon = bytes.indexOf(":"); colon > 0; colon = bytes.indexOf(":")) {
      const end = colon + 1 + Number(bytes.subarray(0, colon));
      if (bytes.length < end) return;
      const message = JSON.parse(bytes.subarray(colon + 1, end));
      bytes = bytes.subarray(end);
      if (!Array.isArray(message)) greeted();
      else waiting.get(message[1])?.(message);
    }
  });
  await new Promise((done, failed) => socket.once("connect", done).once("error", failed));
  await greeting;
  const send = (name, parameters) =>
    new Promise((done, failed) => {
      number += 1;
      waiting.set(number, ([, , error, value]) => (error ? failed(new Error(`${error.error}: ${error.message}`)) : done(value)));
      const text = JSON.stringify([0, number, name, parameters]);
      socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
  return { send, end: () => socket.destroy() };
}

/** Where the commands used here stand in the protocol over HTTP. */
const PLACES = {
  Navigate: () => ["POST", "/url"],
  Refresh: () => ["POST", "/refresh"],
  ExecuteScript: () => ["POST", "/execute/sync"],
  FindElement: () => ["POST", "/element"],
  ElementClick: ({ id }) => ["POST", `/element/${id}/click`],
  ElementClear: ({ id }) => ["POST", `/element/${id}/clear`],
  ElementSendKeys: ({ id }) => ["POST", `/element/${id}/value`],
  SetWindowRect: () => ["POST", "/window/rect"],
  TakeScreenshot: () => ["GET", "/screenshot"],
};

async function openWebKit() {
  const [port, screen] = [await freePort(), `:${90 + (process.pid % 900)}`];
  const ends = [started("Xvfb", [screen, "-screen", "0", "1440x1000x24", "-nolisten", "tcp"])];
  const environment = { DISPLAY: screen, LIBGL_ALWAYS_SOFTWARE: "1", LANGUAGE: "en_GB" };
  ends.push(started("WebKitWebDriver", [`--port=${port}`], environment));
  const ask = async (method, path, parameters) => {
    const body = method === "POST" ? JSON.stringify(parameters ?? {}) : undefined;
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, { method, body });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  const options = { "webkitgtk:browserOptions": { binary: MINI_BROWSER, args: ["--automation"] } };
  const session = await patiently(() => ask("POST", "/session", { capabilities: { alwaysMatch: options } }));
  const command = async (name, parameters) => {
    if (name === "NewSession") return undefined;
    const [method, place] = PLACES[name](parameters);
    return { value: await ask(method, `/session/${session.sessionId}${place}`, parameters) };
  };
  const close = async () => {
    await ask("DELETE", `/session/${session.sessionId}`).catch(() => {});
    ends.reverse().forEach((end) => end());
  };
  return browser(command, close);
}

/** What a person does in any of them. */
async function browser(command, close) {
  await command("NewSession", {});
  const run = async (body, ...args) => (await command("ExecuteScript", { script: `return (${body}).apply(null, arguments)`, args })).value;
  const find = async (selector) => (await command("FindElement", { using: "css selector", value: selector })).value[ELEMENT];
  return {
    close,
    run,
    go: (url) => command("Navigate", { url }),
    reload: () => command("Refresh", {}),
    size: (width, height) => command("SetWindowRect", { width, height }),
    click: async (selector) => command("ElementClick", { id: await find(selector) }),
    type: async (selector, text) => {
      const id = await find(selector);
      await command("ElementClear", { id });
      await command("ElementSendKeys", { id, text });
    },
    picture: async () => Buffer.from((await command("TakeScreenshot", {})).value, "base64"),
    /** Waits until a function of the page gives something. */
    until: async (what, body, ...args) => {
      for (const begun = performance.now(); performance.now() - begun < STARTING_MS; ) {
        const value = await run(body, ...args).catch(() => undefined);
        if (value) return value;
        await new Promise((done) => setTimeout(done, ASKING_MS));
      }
      throw new Error(`waited in vain for ${what}`);
    },
  };
}
