// Has the page kept on the device, and takes a new version of it only when somebody says so.
//
// It stands in index.html itself: a request less, and smaller than the same in Rust. The page says by the event
// "pagewhole" that all of it is there, hears of a new version by "newversion" and asks for it by "takeversion"
// (src/app/offline.rs).

// Where the page is not served securely there are no workers.
const container = navigator.serviceWorker;
const LONGEST_WAIT_MS = 3000;
let asked = false;
let registration;

if (container) {
  let keptBefore = container.controller !== null;
  container.addEventListener("controllerchange", () => {
    // When another page of ours has taken the new version, this one goes on with what it has loaded, and offers it.
    if (asked) location.reload();
    else if (keptBefore) offer();
    [asked, keptBefore] = [false, true];
  });
  addEventListener("takeversion", take);
  // Keeping the files must not delay what they are for: it begins once the whole page is there and has nothing to do.
  const idle = globalThis.requestIdleCallback ?? setTimeout;
  addEventListener("pagewhole", () => idle(start, { timeout: LONGEST_WAIT_MS }), { once: true });
}

async function start() {
  try {
    registration = await container.register("service-worker.js");
  } catch {
    // The browser refuses: the page works all the same, with a network.
    return;
  }
  registration.addEventListener("updatefound", watch);
  watch();
  if (registration.active) lookForNewer();
  document.addEventListener("visibilitychange", () => document.hidden || lookForNewer());
}

function watch() {
  registration.installing?.addEventListener("statechange", watch);
  // The first worker of all is nothing new: then none is active yet.
  if (registration.waiting && registration.active) offer();
}

function offer() {
  dispatchEvent(new Event("newversion"));
}

function take() {
  if (!registration?.waiting) return location.reload();
  asked = true;
  registration.waiting.postMessage("take over");
}

// Without a network there is no answer, and nothing to say about that.
function lookForNewer() {
  registration.update().catch(() => {});
}
