// Works beside the pages: keeps the few that hands need, and keeps what is tapped while the salon's
// box cannot be reached, until the box has it. Nothing of a client is kept. It never answers for the
// box while the box is there.
"use strict";
const PAGES = "pages-1";
const FIXED = ["/kept", "/", "/ready", "/wash", "/start", "/chair"];
const KEEPS = ["wash", "pack", "start", "unload", "look", "set-aside", "open", "apart", "machine-out"];
const RUN = /^\/run\/[0-9a-f]{32}$/;
// How long the box may take before the kept copy is shown, and before a tap is kept.
const PAGE_MS = 4000;
const ACT_MS = 8000;
// What is kept is asked for again at most this often.
const RENEW_MS = 15000;

addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil(clients.claim()));

const soon = (answer, ms) => new Promise((resolve, reject) => {
  setTimeout(() => reject(new Error("late")), ms);
  answer.then(resolve, reject);
});
const id = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");

// What is kept of taps: one store, in the order of the taps, each act once.
const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
function store() {
  const opening = indexedDB.open("steamside", 1);
  opening.onupgradeneeded = () => {
    const kept = opening.result.createObjectStore("outbox", { keyPath: "n", autoIncrement: true });
    kept.createIndex("act", "act", { unique: true });
  };
  return done(opening);
}
async function outbox(mode, work) {
  const kept = await store();
  try {
    const change = kept.transaction("outbox", mode);
    const result = await work(change.objectStore("outbox"));
    await new Promise((resolve, reject) => {
      change.oncomplete = resolve;
      change.onabort = change.onerror = () => reject(change.error);
      if (mode === "readonly") resolve();
    });
    return result;
  } finally {
    kept.close();
  }
}
const waiting = async () => (await outbox("readonly", (kept) => done(kept.getAll()))).filter((entry) => entry.state === "waits");
const tell = async (news) => (await clients.matchAll()).forEach((client) => client.postMessage(news));

// Pages, with the moment at which each was kept.
async function put(path, answer) {
  if (answer.status === 403) { await caches.delete(PAGES); return; }
  if (!answer.ok || answer.redirected) return;
  const headers = new Headers({ "x-kept-at": String(Date.now()) });
  ["content-type", "content-security-policy", "x-content-type-options", "referrer-policy"].forEach((name) => {
    if (answer.headers.has(name)) headers.set(name, answer.headers.get(name));
  });
  const body = await answer.blob();
  await (await caches.open(PAGES)).put(path, new Response(body, { headers }));
}
async function found(path) {
  const kept = await (await caches.open(PAGES)).match(path);
  if (!kept || !(kept.headers.get("content-type") || "").startsWith("text/html")) return kept;
  // Every showing has acts of its own, and nothing that was just done then.
  const html = (await kept.text())
    .replace(/name="act" value="[0-9a-f]{32}"/g, () => `name="act" value="${id()}"`)
    .replace(/<div class="did"[^]*?<\/div>/, '<div class="did" role="status" aria-live="polite"></div>')
    .replace("<body ", `<body data-kept-at="${kept.headers.get("x-kept-at")}" `);
  return new Response(html, { headers: kept.headers });
}
const plain = (url) => {
  const asked = new URLSearchParams(url.search);
  asked.delete("did");
  asked.delete("kept");
  return asked.toString() === "";
};

let renewed = 0;
async function renew() {
  if (Date.now() - renewed < RENEW_MS) return;
  renewed = Date.now();
  try {
    for (const path of FIXED) {
      const answer = await soon(fetch(path), ACT_MS);
      if (path === "/") {
        const runs = new Set((await answer.clone().text()).match(/\/run\/[0-9a-f]{32}/g) || []);
        for (const run of Array.from(runs).slice(0, 8)) await put(run, await soon(fetch(run), ACT_MS));
      }
      await put(path, answer);
    }
    for (const part of new Set((await (await found("/kept")).text()).match(/\/assets\/[a-z.]+/g))) {
      await put(part, await soon(fetch(part), ACT_MS));
    }
  } catch (error) {
    // Cut off in the middle: what was kept before stands.
    renewed = 0;
  }
}

// Sends what waits, the oldest first. The act's id makes a second arrival harmless.
let sending = null;
function send() {
  if (!sending) sending = send_all().catch(() => {}).finally(() => { sending = null; });
  return sending;
}
async function send_all() {
  for (const entry of await waiting()) {
    const fields = new URLSearchParams(entry.fields);
    fields.set("act", entry.act);
    fields.set("kept-ago", String(Math.max(0, Date.now() - entry.at)));
    const answer = await soon(fetch("/kept/" + entry.name, { method: "POST", body: fields }), ACT_MS);
    if (answer.status === 403) { await tell({ stranger: true }); return; }
    if (!answer.ok) return;
    const said = await answer.json();
    await outbox("readwrite", (kept) => done(said.title
      ? kept.put({ ...entry, fields: [], state: said.is, title: said.title, lines: said.lines || [] })
      : kept.delete(entry.n)));
    await tell({ changed: true });
  }
}

async function page(event) {
  const url = new URL(event.request.url);
  const hands = FIXED.includes(url.pathname) || RUN.test(url.pathname);
  const keep = plain(url) && hands;
  try {
    // Other pages may take their time.
    const answer = await (hands ? soon(fetch(event.request), PAGE_MS) : fetch(event.request));
    if (keep || answer.status === 403) event.waitUntil(put(url.pathname, answer.clone()));
    return answer;
  } catch (error) {
    const code = url.pathname === "/chair" && (url.searchParams.has("code") || url.searchParams.has("pouch"));
    return (!code && await found(url.pathname)) || await found("/kept") || Response.error();
  }
}

async function act(event) {
  const name = new URL(event.request.url).pathname.slice("/act/".length);
  const copy = event.request.clone();
  const form = (copy.headers.get("content-type") || "").startsWith("application/x-www-form-urlencoded");
  const keeps = form && KEEPS.includes(name);
  // What waits is older.
  if ((await waiting().catch(() => [])).length > 0) await soon(send(), ACT_MS).catch(() => {});
  try {
    return await (keeps ? soon(fetch(event.request), ACT_MS) : fetch(event.request));
  } catch (error) {
    if (keeps) {
      const fields = Array.from(new URLSearchParams(await copy.text()));
      const field = (wanted) => (fields.find(([key]) => key === wanted) || [])[1];
      const entry = { act: field("act"), name, fields: fields.filter(([key]) => key !== "act"), at: Date.now(), state: "waits" };
      // The same act again is a double tap.
      const known = await outbox("readonly", (kept) => done(kept.index("act").get(entry.act)));
      if (!known) await outbox("readwrite", (kept) => done(kept.add(entry)));
      const back = (field("back") || "/").replace(/[?&]did=[0-9a-f]*/, "");
      return Response.redirect(back + (back.includes("?") ? "&" : "?") + "kept=" + entry.act, 303);
    }
    const page = await found("/kept");
    return page ? new Response((await page.text()).replace("<body ", '<body data-no-act="yes" '), { headers: page.headers }) : Response.error();
  }
}

addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (url.origin !== location.origin) return;
  const walks = event.request.mode === "navigate";
  if (walks && event.request.method === "POST" && (url.pathname.startsWith("/act/") || url.pathname.startsWith("/chair/"))) {
    event.respondWith(act(event));
  } else if (walks && event.request.method === "GET") {
    event.respondWith(page(event));
  } else if (url.pathname.startsWith("/assets/")) {
    event.respondWith(soon(fetch(event.request), PAGE_MS).catch(async () => (await found(url.pathname)) || Response.error()));
  } else if (walks && url.pathname === "/language") {
    renewed = 0;
  }
});

addEventListener("message", (event) => {
  if (event.data === "renew") event.waitUntil(renew());
  if (event.data === "send") event.waitUntil(send());
});
