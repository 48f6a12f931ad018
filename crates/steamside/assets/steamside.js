// What a browser can add to pages that work without it: keys beside number fields, a keypad, a
// countdown, dropping a file, protection against drops of water and double knocks.
"use strict";
(() => {
  const all = (selector, from) => Array.from((from || document).querySelectorAll(selector));

  // Keys that only work with this script stay hidden without it.
  const wake = (from) => {
    all(".step, .keypad, [data-fills], [data-prints], [data-wipes]", from).forEach((part) => { part.hidden = false; });
  };
  wake();
  // A part of the page that was read again.
  document.addEventListener("fresh", (event) => wake(event.detail));

  // A touch shorter than 35 ms is a drop of water; while the glass is wiped no touch counts at all.
  // One of hardly any length is made by a program, such as a screen reader, and is meant. A click
  // comes when the finger is lifted, and on the place where it came down.
  const down = new Map();
  let drop = false;
  let wiping = false;
  document.addEventListener("pointerdown", (event) => { down.set(event.pointerId, event.timeStamp); }, true);
  document.addEventListener("pointerup", (event) => {
    const long = event.timeStamp - down.get(event.pointerId);
    drop = event.pointerType === "touch" && long > 2 && long < 35;
    down.delete(event.pointerId);
  }, true);
  document.addEventListener("pointercancel", (event) => { down.delete(event.pointerId); }, true);

  function wipe(key) {
    let left = 15;
    wiping = true;
    const cover = document.createElement("div");
    cover.className = "wiping";
    cover.setAttribute("role", "status");
    cover.append(key.dataset.wipes, document.createElement("strong"));
    const shown = cover.lastChild;
    shown.setAttribute("aria-hidden", "true");
    shown.textContent = left;
    document.body.append(cover);
    const tick = setInterval(() => {
      left -= 1;
      shown.textContent = left;
      if (left > 0) return;
      clearInterval(tick);
      cover.remove();
      wiping = false;
    }, 1000);
  }

  // A second touch on the same place within 400 ms is a drop or a double knock.
  let last = { at: 0, target: null };
  document.addEventListener("click", (event) => {
    // A key of the keyboard has no length, and is no drop.
    if (event.detail > 0 && (wiping || drop)) {
      event.preventDefault();
      event.stopPropagation();
      return;
    }
    const target = event.target.closest("button, a, summary");
    if (!target || target.matches(".step, [data-types]")) return;
    if (target === last.target && event.timeStamp - last.at < 400) {
      event.preventDefault();
      event.stopPropagation();
      return;
    }
    last = { at: event.timeStamp, target };
  }, true);

  // A form is sent once; the act's id makes it harmless, this makes it quiet.
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.method !== "post") return;
    if (form.dataset.sent) event.preventDefault();
    form.dataset.sent = "yes";
  });
  window.addEventListener("pageshow", () => {
    all("form").forEach((form) => { delete form.dataset.sent; });
    all(".going").forEach((key) => key.classList.remove("going"));
  });

  // A tap is answered at once, while the next page is on its way.
  const going = (key) => { if (key) key.classList.add("going"); };
  document.addEventListener("submit", (event) => {
    if (!event.defaultPrevented) going(event.submitter);
  });
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a.key, nav a");
    if (link && !event.defaultPrevented) going(link);
  });

  // Kinds and programmes are written in small letters, whatever the keyboard does.
  document.addEventListener("submit", (event) => {
    all("input[autocapitalize=none]", event.target).forEach((field) => {
      field.value = field.value.trim().toLowerCase();
    });
  }, true);

  document.addEventListener("click", (event) => {
    const key = event.target.closest("[data-step], [data-types], [data-fills], [data-prints], [data-wipes]");
    if (!key) return;
    if (key.dataset.step) {
      const field = key.parentElement.querySelector("input");
      const next = Number(field.value || 0) + Number(key.dataset.step);
      field.value = Math.min(Number(field.max), Math.max(Number(field.min), next));
    } else if (key.dataset.types !== undefined) {
      const field = key.form.elements.code;
      field.value = key.dataset.types === "" ? "" : (field.value + key.dataset.types).slice(-4);
      if (field.value.length === 4) key.form.requestSubmit();
    } else if (key.dataset.fills) {
      document.getElementById(key.dataset.fills).value = key.dataset.with;
    } else if (key.dataset.prints) {
      window.print();
    } else if (key.dataset.wipes) {
      wipe(key);
    }
  });

  // The undo key counts down and goes.
  all("form[data-left]").forEach((form) => {
    let left = Number(form.dataset.left);
    const shown = form.querySelector(".left");
    const tick = setInterval(() => {
      left -= 1;
      if (left <= 0) {
        clearInterval(tick);
        form.hidden = true;
      } else {
        shown.textContent = "0:" + String(left).padStart(2, "0");
      }
    }, 1000);
  });

  // Drop a file on its field.
  const over = (on) => (event) => {
    const place = event.target.closest && event.target.closest(".drop");
    if (!place) return null;
    event.preventDefault();
    place.classList.toggle("over", on);
    return place;
  };
  document.addEventListener("dragover", over(true));
  document.addEventListener("dragleave", over(false));
  document.addEventListener("drop", (event) => {
    const place = over(false)(event);
    if (place && event.dataTransfer.files.length > 0) {
      const field = place.querySelector("input[type=file]");
      field.files = event.dataTransfer.files;
      field.form.requestSubmit();
    }
  });

  if (document.body.dataset.buzz && navigator.vibrate) navigator.vibrate([300, 120, 300]);
})();
