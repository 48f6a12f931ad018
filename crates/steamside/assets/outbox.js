// Shows what this screen keeps while it is cut off from the salon's box: how many taps wait, what was
// just kept, with its undo, and what the box said of those that arrived, until somebody has read it.
"use strict";
(() => {
  // A full-screen stop stands alone; what waits is sent from there all the same.
  const stop = document.body.classList.contains("full-stop") ? document.createElement("div") : null;
  const place = document.getElementById("kept") || stop;
  if (!place || !("serviceWorker" in navigator) || !window.indexedDB || !window.caches) return;
  const worker = (word) => navigator.serviceWorker.ready.then((here) => here.active && here.active.postMessage(word));
  navigator.serviceWorker.register("/worker.js").catch(() => {});

  const done = (request) => new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  async function outbox(mode, work) {
    const opening = indexedDB.open("steamside", 1);
    opening.onupgradeneeded = () => {
      const kept = opening.result.createObjectStore("outbox", { keyPath: "n", autoIncrement: true });
      kept.createIndex("act", "act", { unique: true });
    };
    const box = await done(opening);
    try {
      return await work(box.transaction("outbox", mode).objectStore("outbox"));
    } finally {
      box.close();
    }
  }
  const all = () => outbox("readonly", (kept) => done(kept.getAll()));
  const remove = (entry) => outbox("readwrite", (kept) => done(kept.delete(entry.n)));

  // Words that only cut-off screens need lie in the page that is kept for them.
  let words = null;
  async function load() {
    if (words) return words;
    words = document.getElementById("kept-words");
    if (words) return words;
    const kept = await caches.match("/kept") || await fetch("/kept");
    words = new DOMParser().parseFromString(await kept.text(), "text/html").getElementById("kept-words");
    return words;
  }
  const called = (entry) => {
    const word = words && words.querySelector(`[data-act="${entry.name}"]`);
    return word ? word.textContent : entry.name;
  };
  const clock = (at) => {
    const two = (number) => String(number).padStart(2, "0");
    return two(new Date(at).getHours()) + ":" + two(new Date(at).getMinutes());
  };
  const make = (tag, text, more) => Object.assign(document.createElement(tag), { textContent: text }, more);
  const key = (text, act) => {
    const made = make("button", text, { type: "button", className: "key" });
    made.addEventListener("click", act);
    return made;
  };

  function count(entries) {
    const line = document.getElementById("kept-count");
    if (!line) return;
    const many = entries.filter((entry) => entry.state === "waits").length;
    const form = new Intl.PluralRules(document.documentElement.lang).select(many);
    line.firstElementChild.textContent = (form === "one" ? line.dataset.one : line.dataset.other).replace("{count}", many);
    line.hidden = many === 0;
  }

  // What the box said, until it was read.
  function cards(entries) {
    const said = entries.filter((entry) => entry.state !== "waits");
    place.replaceChildren(...said.map((entry) => {
      const card = make("section", "", { className: "card " + (entry.state === "refused" ? "turn" : "stop") });
      card.setAttribute("role", "alert");
      card.append(make("h2", entry.title), make("p", called(entry) + ", " + clock(entry.at)));
      entry.lines.forEach((line) => card.append(make("p", line, { className: "fact" })));
      card.append(key(words.dataset.read, () => remove(entry).then(show)));
      return card;
    }));
  }

  // Going to the safer side is never taken back by a tap.
  const safer = (entry) => ["set-aside", "machine-out"].includes(entry.name)
    || entry.fields.some(([name, value]) => ["marks", "dry", "inner"].includes(name) && ["not", "no"].includes(value));
  const undo = (entry, after) => safer(entry) ? "" : key(words.dataset.undo, async () => {
    await remove(entry);
    await after();
    show();
  });

  // All that waits, on the page that is kept for it.
  function waits(entries) {
    const list = document.querySelector("[data-kept-waits]");
    if (!list) return;
    list.replaceChildren(...entries.filter((entry) => entry.state === "waits").map((entry) => {
      const line = make("li", words.dataset.waits.replace("{what}", called(entry)).replace("{at}", clock(entry.at)) + " ");
      line.append(undo(entry, async () => {}));
      return line;
    }));
  }

  let drawing = Promise.resolve();
  const show = () => {
    drawing = drawing.then(draw, draw);
    return drawing;
  };
  async function draw() {
    const entries = await all();
    count(entries);
    if (stop) return;
    if (entries.length > 0) await load();
    if (entries.length > 0 || place.childElementCount > 0) cards(entries);
    waits(entries);
  }

  // What was just kept, with its undo.
  const url = new URL(location.href);
  const act = url.searchParams.get("kept");
  async function kept() {
    url.searchParams.delete("kept");
    history.replaceState(null, "", url);
    const entry = (await all()).find((other) => other.act === act && other.state === "waits");
    const bar = document.querySelector(".did");
    if (!entry || !bar) return;
    await load();
    const text = make("p", words.dataset.kept.replace("{what}", called(entry)));
    bar.replaceChildren(text, undo(entry, async () => bar.replaceChildren(make("p", words.dataset.undone))));
  }

  // A chair's number on a page that was kept without it.
  const chair = document.body.dataset.keptAt && url.searchParams.get("chair");
  const radio = chair && document.querySelector(`input[name=chair][value="${Number(chair)}"]`);
  if (radio) radio.checked = true;

  navigator.serviceWorker.addEventListener("message", async (event) => {
    if (event.data.stranger) {
      await load();
      const card = make("section", "", { className: "card turn" });
      card.append(make("p", words.dataset.stranger), make("a", words.dataset.pair, { href: "/pair", className: "key" }));
      place.replaceChildren(card);
    } else {
      show();
    }
  });
  const joined = () => { worker("send"); worker("renew"); };
  document.addEventListener("joined", () => worker("send"));
  document.addEventListener("news", joined);
  window.addEventListener("online", joined);
  if (!document.body.dataset.keptAt) joined();
  // A phone that was laid aside hears nothing; what waits is tried again.
  setInterval(async () => { if ((await all()).some((entry) => entry.state === "waits")) worker("send"); }, 10000);
  show();
  if (act) kept();
})();
