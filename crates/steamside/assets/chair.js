// At a chair: a scanner types anywhere on the page, a photo is sent when it is taken, and the
// camera looks where the browser can read codes itself. Nothing but a code leaves the page.
"use strict";
(() => {
  const scan = document.querySelector("[data-scan]");
  if (!scan) return;
  const chosen = () => document.querySelector("input[name=chair]:checked");
  const label = (text) => /^s[0-9a-f]{32}$/i.test(text);
  const symbols = (text) => /^([2-9][2-9acdefhjkmprtuwxy]){2}$/i.test(text);

  const go = (code) => {
    const to = new URL(scan.dataset.scan, location.href);
    if (chosen()) to.searchParams.set("chair", chosen().value);
    to.searchParams.set("code", code);
    location.assign(to);
  };

  // A scanner is a quick keyboard that ends with Enter. Our own codes are taken at any speed; what
  // else came quickly is looked up as well, so that its Enter never presses a key of the page.
  let typed = "";
  let last = 0;
  let quick = true;
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    if (event.target.closest("input:not([type=radio], [type=checkbox], [type=file]), select, textarea")) return;
    const gap = event.timeStamp - last;
    if (gap > 3000) typed = "";
    if (event.key === "Enter") {
      const code = typed;
      typed = "";
      if (label(code) || symbols(code) || (quick && gap < 100 && code.length >= 4)) {
        event.preventDefault();
        event.stopPropagation();
        go(code);
      }
    } else if (event.key.length === 1) {
      if (typed === "") quick = true;
      else if (gap > 100) quick = false;
      else if (event.key === " ") event.preventDefault();
      typed = (typed + event.key).trimStart().slice(-80);
      last = event.timeStamp;
    }
  }, true);

  // What the keys have written so far is said.
  const said = document.querySelector("[data-typed]");
  const field = document.getElementById("code");
  document.addEventListener("click", (event) => {
    if (said && event.target.closest("[data-types]")) said.textContent = Array.from(field.value).join(" ");
  });

  const photo = document.querySelector(".photo-form");
  if (photo) {
    const chair = () => {
      if (!chosen()) return;
      const hidden = photo.elements.chair || photo.appendChild(document.createElement("input"));
      Object.assign(hidden, { type: "hidden", name: "chair", value: chosen().value });
    };
    photo.addEventListener("submit", chair, true);
    photo.classList.add("by-script");
    photo.elements.photo.addEventListener("change", () => photo.requestSubmit());
  }

  const camera = document.querySelector("[data-camera]");
  if (!camera || !("BarcodeDetector" in window) || !navigator.mediaDevices) return;
  const picture = camera.querySelector("video");
  const start = camera.querySelector("[data-camera-start]");
  const end = camera.querySelector("[data-camera-stop]");
  const says = camera.querySelector("[data-camera-says]");
  const say = (text) => { if (says.textContent !== text) says.textContent = text; };
  let detector = null;
  let stream = null;
  let wanted = false;

  const show = (on) => {
    picture.hidden = !on;
    end.hidden = !on;
    start.hidden = on;
  };

  const stop = () => {
    if (stream) stream.getTracks().forEach((track) => track.stop());
    stream = null;
    picture.srcObject = null;
    show(false);
    say("");
  };

  const look = async () => {
    if (!stream) return;
    const found = await detector.detect(picture).catch(() => []);
    if (!stream) return;
    const ours = new Set(found.map((code) => code.rawValue.trim().toUpperCase()).filter(label));
    if (ours.size === 1) {
      wanted = false;
      stop();
      go(Array.from(ours)[0]);
      return;
    }
    if (ours.size > 1) say(says.dataset.several);
    else say(found.length > 0 ? says.dataset.other : says.dataset.looking);
    setTimeout(look, 200);
  };

  const begin = async () => {
    if (stream) return;
    wanted = true;
    try {
      const opened = await navigator.mediaDevices.getUserMedia({
        video: { facingMode: "environment" }, audio: false,
      });
      if (!wanted || document.hidden || stream) {
        opened.getTracks().forEach((track) => track.stop());
        return;
      }
      stream = opened;
      picture.srcObject = stream;
      show(true);
      await picture.play();
      look();
    } catch (refused) {
      wanted = false;
      stop();
      photo.hidden = false;
      say(says.dataset.refused);
    }
  };

  const offer = () => {
    camera.hidden = false;
    photo.hidden = true;
    start.addEventListener("click", begin);
    end.addEventListener("click", () => { wanted = false; stop(); start.focus(); });
    document.addEventListener("visibilitychange", () => {
      if (document.hidden) stop();
      else if (wanted) begin();
    });
    window.addEventListener("pagehide", stop);
    // Who has said yes before is not asked to press a key again.
    const asked = navigator.permissions && navigator.permissions.query({ name: "camera" });
    if (asked) asked.then((answer) => { if (answer.state === "granted") begin(); }).catch(() => {});
  };

  window.BarcodeDetector.getSupportedFormats().then((formats) => {
    if (!formats.includes("qr_code")) return;
    detector = new window.BarcodeDetector({ formats: ["qr_code"] });
    offer();
  }).catch(() => {});
})();
