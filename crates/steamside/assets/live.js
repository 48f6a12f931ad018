// Keeps an open page up to date: the salon's box says when something has changed, and the page is
// read again behind the scenes. Without this script a page is as old as it is, and says its time.
"use strict";
(() => {
  const body = document.body;
  // A practice clock runs so many times as fast: its pages are read again as much sooner.
  const times = Number(body.dataset.times || 1);
  const again = Number(body.dataset.again);
  const band = document.getElementById("not-joined");
  // Answers to a form and full-screen stops stand as they are.
  if (!body.dataset.head) return;
  if (!window.fetch || !window.DOMParser) {
    if (again > 0) setInterval(() => { if (!dirty) location.replace(address()); }, again * 1000);
    return;
  }

  // Typed or ticked: what somebody has begun is not taken from under the hands.
  let dirty = false;
  document.addEventListener("input", () => { dirty = true; });
  document.addEventListener("click", (event) => {
    if (event.target.closest("[data-step], [data-types], [data-fills]")) dirty = true;
  });
  const busy = () => {
    const at = document.activeElement;
    return dirty || Boolean(at && at.closest && at.closest("main form, main input, main select"));
  };

  // This page without the act that was just done here.
  function address() {
    const url = new URL(location.href);
    url.searchParams.delete("did");
    url.searchParams.delete("kept");
    return url.pathname + url.search;
  }

  // A page that was kept is as old as it was then.
  const kept = Number(body.dataset.keptAt || 0);
  let heard = kept || Date.now();
  const joined = () => {
    heard = Date.now();
    if (band) band.hidden = true;
    document.dispatchEvent(new Event("joined"));
    // The box is back: the page itself is asked for, once nobody is at work on it.
    if (kept && !busy()) location.replace(address());
  };
  const lost = () => {
    if (!band || !band.hidden) return;
    const at = new Date(heard);
    const two = (number) => String(number).padStart(2, "0");
    // A practice clock is not the browser's: what the page showed last is when it was heard last.
    const shown = times > 1 && document.querySelector(".clock strong, .wall-time");
    const time = shown ? shown.textContent : two(at.getHours()) + ":" + two(at.getMinutes());
    band.textContent = band.dataset.says.replace("--:--", time);
    band.hidden = false;
  };

  async function read(path) {
    const stop = new AbortController();
    const late = setTimeout(() => stop.abort(), 8000);
    try {
      const answer = await fetch(path, { headers: { accept: "text/html" }, cache: "no-store", signal: stop.signal });
      const text = await answer.text();
      joined();
      // This screen was let go: the page says so itself.
      if (answer.status === 403) location.reload();
      // An error is no page: the old one stays.
      if (!answer.ok) return null;
      return new DOMParser().parseFromString(text, "text/html");
    } catch (error) {
      lost();
      return null;
    } finally {
      clearTimeout(late);
    }
  }

  const text = (part) => part.textContent.replace(/\s+/g, " ").trim();
  const twin = (part, inside) => {
    if (part.id) return document.getElementById(part.id);
    return Array.from(inside.querySelectorAll(part.tagName)).find((other) => text(other) === text(part));
  };

  function swap(selector, page) {
    const old = document.querySelector(selector);
    const fresh = page.querySelector(selector);
    if (!old || !fresh || old.outerHTML === fresh.outerHTML) return;
    const part = document.importNode(fresh, true);
    const at = old.contains(document.activeElement) ? document.activeElement : null;
    const open = Array.from(old.querySelectorAll("details[open] > summary"), text);
    const sideways = Array.from(old.querySelectorAll(".scroll, .tape"), (frame) => frame.scrollLeft);
    const down = window.scrollY;
    part.querySelectorAll("details > summary").forEach((summary) => {
      if (open.includes(text(summary))) summary.parentElement.open = true;
    });
    old.replaceWith(part);
    part.querySelectorAll(".scroll, .tape").forEach((frame, number) => { frame.scrollLeft = sideways[number] || 0; });
    if (window.scrollY !== down) window.scrollTo(0, down);
    const same = at && (at === old ? part : twin(at, part));
    if (same) same.focus({ preventScroll: true });
    document.dispatchEvent(new CustomEvent("fresh", { detail: part }));
  }

  let reading = false;
  let wanted = false;
  async function refresh() {
    if (reading) { wanted = true; return; }
    reading = true;
    const page = await read(address());
    // What was begun while the answer was on its way counts as well.
    if (page && page.body.dataset.head) {
      swap("#strip", page);
      swap(".clock", page);
      if (again > 0 && !busy()) {
        swap("main", page);
        body.dataset.head = page.body.dataset.head;
      }
    }
    reading = false;
    if (wanted) { wanted = false; refresh(); }
  }

  async function strip() {
    if (reading || !document.getElementById("strip")) return;
    const page = await read("/strip");
    if (page) swap("#strip", page);
  }

  // One connection a page: a browser has six for a salon's box, whatever is open in its tabs.
  let source = null;
  function listen() {
    if (source || !window.EventSource || document.visibilityState === "hidden") return;
    source = new EventSource("/live");
    source.addEventListener("head", (event) => {
      joined();
      document.dispatchEvent(new Event("news"));
      if (event.data === body.dataset.head) return;
      if (again > 0) refresh(); else strip();
    });
    source.addEventListener("word", () => { joined(); strip(); });
    source.addEventListener("beat", () => { joined(); });
    source.addEventListener("error", () => {
      // Cut off for good or for a moment: a page that can still be read is not cut off.
      if (source && source.readyState === EventSource.CLOSED) deaf();
      strip_or_head();
    });
  }
  function deaf() {
    if (source) source.close();
    source = null;
  }
  // Any short answer tells whether the box is there.
  const strip_or_head = () => read("/strip").then((page) => { if (page) swap("#strip", page); });

  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") { deaf(); return; }
    listen();
    refresh();
  });
  window.addEventListener("pagehide", deaf);
  window.addEventListener("pageshow", (event) => { if (event.persisted) { dirty = false; listen(); refresh(); } });
  if (kept) lost();
  listen();

  const seen = () => document.visibilityState === "visible";
  // Time alone changes a page too; and where nothing is heard this is how it learns.
  setInterval(() => { if (seen()) { listen(); refresh(); } }, Math.max(2, (again > 0 ? again : 60) / times) * 1000);
  // How old the last word of a machine is.
  setInterval(() => {
    const line = document.getElementById("strip");
    if (seen() && line && line.dataset.heard) strip();
  }, 5000);
  // A connection that is open and silent for more than two heartbeats is cut.
  setInterval(() => {
    if (seen() && source && Date.now() - heard > 25000) { deaf(); strip_or_head(); listen(); }
  }, 5000);
})();
