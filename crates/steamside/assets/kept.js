// Answers a scanned code from the last list that this screen has, while the box cannot be reached.
"use strict";
(() => {
  const part = (name) => document.querySelector(`[data-kept-part="${name}"]`);
  const data = document.getElementById("kept-list");
  const at = Number(document.body.dataset.keptAt || Date.now());
  const show = (name) => {
    part("about").hidden = true;
    part(name).hidden = false;
    return part(name);
  };
  const two = (number) => String(number).padStart(2, "0");
  const clock = two(new Date(at).getHours()) + ":" + two(new Date(at).getMinutes());
  const dated = new Date(at).toDateString() === new Date().toDateString() ? clock : new Date(at).toISOString().slice(0, 10) + " " + clock;
  const fill = (section, name, text) => {
    const field = section.querySelector(`[data-kept="${name}"]`);
    if (field) field.textContent = text;
    return field;
  };
  const list = (section) => {
    const line = section.querySelector('[data-kept="list"]');
    line.textContent = line.dataset.says.replace("--:--", dated);
  };

  if (document.body.dataset.noAct) { show("no-act"); return; }
  const url = new URL(location.href);
  if (url.pathname === "/kept") return;
  const typed = (url.searchParams.get("code") || url.searchParams.get("pouch") || "").replace(/\s/g, "");
  if (url.pathname !== "/chair" || typed === "") { show("none"); return; }

  const known = JSON.parse(data.textContent);
  const wanted = typed.toLowerCase().replace(/^s(?=[0-9a-f]{32}$)/, "");
  const pouch = known.pouches.find(([code, id]) => code.toLowerCase() === wanted || id === wanted);
  document.querySelector("[data-kept-ways]").hidden = true;

  function stop(why, todo, shown) {
    const section = show("stop");
    fill(section, "code", shown);
    const line = fill(section, "why", why);
    const what = fill(section, "do", todo);
    list(section);
    // Over the whole screen, as every wrong pouch.
    document.body.classList.add("full-stop", "kept-stop");
    section.querySelector("h2").focus();
    if (navigator.vibrate) navigator.vibrate([300, 120, 300]);
    return [line, what];
  }
  const said = (name) => ["why", "do"].map((field) => part("stop").querySelector(`[data-kept="${field}"]`).dataset[name]);
  if (!pouch) {
    stop(...said("unknown"), typed.slice(0, 12));
    return;
  }
  const [code, id, kind, released, until, why] = pouch;
  if (why >= 0) {
    stop(...known.whys[why], code);
    return;
  }
  if (until > 0 && until < Date.now()) {
    stop(...said("used"), code);
    return;
  }
  const good = () => {
    const section = show("good");
    fill(section, "code", code);
    fill(section, "kind", known.kinds[kind]);
    fill(section, "released", released);
    list(section);
    const chair = url.searchParams.get("chair") || "";
    section.querySelectorAll("form").forEach((form) => {
      form.elements.pouch.value = id;
      form.elements.chair.value = chair;
      form.elements.back.value = chair ? "/chair?chair=" + Number(chair) : "/chair";
    });
  };
  // Opened or set aside on this very screen, which the list cannot know.
  const opening = indexedDB.open("steamside", 1);
  opening.onupgradeneeded = () => {
    const kept = opening.result.createObjectStore("outbox", { keyPath: "n", autoIncrement: true });
    kept.createIndex("act", "act", { unique: true });
  };
  opening.onerror = good;
  opening.onsuccess = () => {
    const box = opening.result;
    const reading = box.transaction("outbox").objectStore("outbox").getAll();
    reading.onerror = good;
    reading.onsuccess = () => {
      box.close();
      const gone = reading.result.some((entry) => entry.state === "waits"
        && ["open", "set-aside", "apart"].includes(entry.name)
        && entry.fields.some(([name, value]) => name === "pouch" && value === id));
      if (gone) stop(...said("used"), code); else good();
    };
  };
})();
