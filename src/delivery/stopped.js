// Stands by in index.html should the program not come up, or stop: shows what happened, the scenario as a link, and how to go on.
// It needs nothing of the program, and stands in words that old browsers know too. Keys and forms are those of src/app/storage and
// src/app/desk/history.rs; the program says by "programstopped" that it stopped, by "pagewhole" that all of it is there.
(function () {
  var WORKING = "noonday.working";
  var VISIT = "noonday.visit";
  var SAVED = "noonday.saved.";
  var BEFORE = "noonday.stopped";
  var SOON_MS = 20000;

  var TITLE = { stopped: "Noonday has stopped", absent: "Noonday could not start" };
  var WHY = {
    stopped: "The page met an error of its own, and stopped rather than go on with numbers that may be wrong. What was saved is still there.",
    absent:
      "The part that calculates could not be loaded. Either the network failed, or something blocks it, or the browser is too old: it needs WebAssembly with SIMD, which the common browsers have had since spring 2023. What was saved is still there.",
  };
  var LAST = "The scenario as it was kept last, as a link. It opens the same in any browser:";
  var LAST_TEXT = "What was kept last, as it stands:";
  var NOTHING = "There was no scenario of your own yet.";
  var COPY = "Copy it";
  var COPIED = "Copied.";
  var BY_HAND = "The browser does not allow copying. It is selected: copy it by hand.";
  var RELOAD = "Load the page again";
  var AGAIN = "It has stopped again, right after loading. The example can be opened instead; your scenario then stands under “Scenarios”.";
  var EXAMPLE = "Open the example instead";
  var NO_ROOM = "There is no room to put your scenario by. Copy it first, then clear this page’s data in the browser.";

  var kind = "";

  addEventListener("programstopped", function () {
    later("stopped");
  });
  addEventListener(
    "error",
    function (event) {
      var failed = event.target;
      if (isFatal(event.error)) later("stopped");
      else if (!isUp() && (failed === window || failed.tagName === "SCRIPT")) later("absent");
    },
    true
  );
  addEventListener("unhandledrejection", function (event) {
    if (isFatal(event.reason)) later("stopped");
    else if (!isUp()) later("absent");
  });
  addEventListener("pagewhole", function () {
    // It came up after all.
    if (kind === "absent") {
      kind = "";
      document.getElementById("stopped").remove();
    }
  });
  document.addEventListener("DOMContentLoaded", function () {
    if (!("noModule" in document.createElement("script"))) later("absent");
  });
  // What has stopped must not write any more; a link that is opened now needs a page that goes.
  addEventListener("pagehide", hold, true);
  addEventListener("popstate", hold, true);
  addEventListener("hashchange", function (event) {
    hold(event);
    if (kind) location.reload();
  });

  function hold(event) {
    if (kind === "stopped") event.stopImmediatePropagation();
  }

  function isUp() {
    return document.readyState !== "loading" && !document.getElementById("opening");
  }

  /** A trap of the program, a stack without end, or anything thrown through it: then its memory can no longer be trusted. */
  function isFatal(error) {
    if (!error) return false;
    var isTrap = typeof WebAssembly === "object" && error instanceof WebAssembly.RuntimeError;
    return isTrap || /wasm-function/.test(error.stack) || (/^(Range|Internal)Error$/.test(error.name) && /stack|recursion/i.test(error.message));
  }

  /** In a turn of its own: the program may be in the middle of what made it stop. */
  function later(what) {
    if (kind === "stopped" || kind === what) return;
    kind = what;
    var show = function () {
      if (kind === what) tell(what);
    };
    if (document.body && document.readyState !== "loading") setTimeout(show);
    else document.addEventListener("DOMContentLoaded", show);
  }

  function tell(what) {
    var again = what === "stopped" && stoppedBefore() && performance.now() < SOON_MS;
    var last = lastKept();
    var said = make("p", "", { role: "status" });
    var box = make("textarea", "", { class: "raw", id: "stopped-last", readonly: "", rows: "4" });
    box.value = last.text;
    var parts = [make("h1", TITLE[what], { tabindex: "-1" }), make("p", WHY[what])];
    if (last.text) {
      parts.push(make("label", last.isLink ? LAST : LAST_TEXT, { for: "stopped-last" }), box);
      parts.push(button(COPY, function () { copy(box, said); }));
    } else parts.push(make("p", NOTHING));
    parts.push(button(RELOAD, function () { location.reload(); }), said);
    if (again) parts.push(make("p", AGAIN), button(EXAMPLE, function () { openExample(said); }));

    var message = make("main", "", { id: "stopped" });
    parts.forEach(function (part) { message.appendChild(part); });
    var shown = [].slice.call(document.body.children);
    shown.forEach(function (part) {
      // The opening is only hidden: the program takes it away should it still come.
      if (part.id === "opening") part.hidden = true;
      else if (part.tagName !== "SCRIPT") part.remove();
    });
    document.body.insertBefore(message, document.body.firstChild);
    parts[0].focus();
  }

  function make(name, text, attributes) {
    var element = document.createElement(name);
    element.textContent = text;
    for (var key in attributes) element.setAttribute(key, attributes[key]);
    return element;
  }

  function button(text, act) {
    var element = make("button", text, { type: "button" });
    element.addEventListener("click", act);
    return element;
  }

  function copy(box, said) {
    box.select();
    var say = function (text) { said.textContent = text; };
    if (!navigator.clipboard) return say(document.execCommand("copy") ? COPIED : BY_HAND);
    navigator.clipboard.writeText(box.value).then(
      function () { say(COPIED); },
      function () { say(BY_HAND); }
    );
  }

  /** What this tab showed last, a link that is being opened, or what is kept for all tabs, in this order. */
  function lastKept() {
    var mark = parsed(history.state);
    var form = mark && mark.working && mark.working.form;
    if (!form && /^#(v=|\d)/.test(location.hash)) form = location.hash.slice(1);
    var raw = form ? "" : stored(VISIT) || stored(WORKING) || "";
    if (raw) form = (parsed(raw) || {}).form;
    if (typeof form !== "string" || !form) return { text: raw, isLink: false };
    return { text: location.origin + location.pathname + location.search + "#" + form, isLink: true };
  }

  function parsed(text) {
    try {
      return JSON.parse(text);
    } catch (error) {
      return null;
    }
  }

  function stored(key) {
    try {
      return localStorage.getItem(key);
    } catch (error) {
      return null;
    }
  }

  function stoppedBefore() {
    try {
      var before = sessionStorage.getItem(BEFORE);
      sessionStorage.setItem(BEFORE, "1");
      return before !== null;
    } catch (error) {
      // Where nothing is remembered, it may have.
      return true;
    }
  }

  function openExample(said) {
    if (!putBy(VISIT) || !putBy(WORKING)) {
      said.textContent = NO_ROOM;
      return;
    }
    history.replaceState(null, "", location.pathname + location.search);
    location.reload();
  }

  /** Puts what is kept under a key among the saved scenarios, where the page lists it. */
  function putBy(key) {
    var raw = stored(key);
    if (raw === null) return true;
    var number = Date.now();
    while (stored(SAVED + number) !== null) number += 1;
    localStorage.removeItem(key);
    try {
      localStorage.setItem(SAVED + number, raw);
      return true;
    } catch (error) {
      localStorage.setItem(key, raw);
      return false;
    }
  }
})();
