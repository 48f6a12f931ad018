// What is checked in a page beside axe: run inside the page by tests/it/access.rs.
window.own = (() => {
  const all = (selector) => Array.from(document.querySelectorAll(selector));
  const TAPPED = "a[href], button, summary, input:not([type=hidden]), select, textarea";
  const shown = (e) => e.checkVisibility({ visibilityProperty: true }) && !e.disabled && !e.closest(".unseen");
  const name = (e) => {
    const part = (e) => e.tagName.toLowerCase() + (e.className && e.className.baseVal === undefined ? "." + e.className.trim().replace(/\s+/g, ".") : "");
    const label = e.labels && e.labels[0] ? e.labels[0].innerText : e.innerText;
    const said = (e.getAttribute("aria-label") || label || e.name || "").trim().slice(0, 30).replace(/\s+/g, " ");
    return (e.parentElement ? part(e.parentElement) + " > " : "") + part(e) + ' "' + said + '"';
  };
  // A control inside its label is tapped by tapping the label.
  const area = (e) => {
    const label = e.closest("label");
    if (label && e.matches("[type=checkbox], [type=radio]")) return label.getBoundingClientRect();
    // A file's control that is not seen is tapped by its label.
    const unseen = e.matches("[type=file]") && getComputedStyle(e).opacity === "0" && e.labels[0];
    return (unseen || e).getBoundingClientRect();
  };
  const ringed = (e) => {
    const has = (x) => {
      const style = getComputedStyle(x);
      return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 4;
    };
    return has(e) || (e.closest("label") && has(e.closest("label")));
  };
  // One radio of a group takes the focus for all.
  const stops = () => {
    const groups = new Set();
    return all(TAPPED + ", [tabindex]").filter((e) => {
      if (!shown(e) || e.tabIndex < 0) return false;
      if (e.type !== "radio") return true;
      const group = all("form").indexOf(e.form) + " " + e.name;
      return !groups.has(group) && groups.add(group);
    });
  };
  const scrolls = (e) => {
    for (let up = e.parentElement; up && up !== document.body; up = up.parentElement) {
      const style = getComputedStyle(up);
      if (style.overflowX !== "visible" || style.position === "absolute") return true;
    }
    return false;
  };
  return {
    open() { all("details").forEach((e) => { e.open = true; }); return null; },
    wide(width) {
      const out = all("body *").filter((e) => shown(e) && e.getBoundingClientRect().right > width + 1 && !scrolls(e))
        .map((e) => "wider than the screen: " + name(e) + " to " + Math.round(e.getBoundingClientRect().right));
      if (document.documentElement.scrollWidth > width && out.length === 0) {
        const widest = all("body *").filter((e) => !e.closest("svg svg, .scroll, .tape")).map((e) => [e.getBoundingClientRect().right, name(e)]).sort((a, b) => b[0] - a[0]);
        out.push("wider than the screen: the page, " + document.documentElement.scrollWidth + " " + widest.slice(0, 4).join("; "));
      }
      const cut = all("a, button, summary, .state, .code").filter((e) => shown(e) && e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1)
        .map((e) => "its text does not fit: " + name(e));
      return out.slice(0, 3).concat(cut);
    },
    small(main) {
      return all(TAPPED).filter(shown).flatMap((e) => {
        const { width, height } = area(e);
        let wanted = e.matches("p a:not(.key), li > a:not([class]), dd a") ? 44 : 64;
        if (e.matches(".main-key, .sign, .ways .key")) wanted = main;
        if (e.matches(".skip")) return [];
        // Half a pixel is rounding.
        return width + 0.5 < wanted || height + 0.5 < wanted
          ? ["smaller than " + wanted + ": " + name(e) + " " + Math.round(width) + "x" + Math.round(height)] : [];
      });
    },
    ringless() {
      return stops().filter((e) => { e.focus(); return !ringed(e); }).map((e) => "no ring: " + name(e));
    },
    // Before and after every press of Tab.
    begin() { window.unreached = new Set(stops()); window.count = window.unreached.size; document.activeElement.blur(); return window.count; },
    pressed() {
      const e = document.activeElement;
      if (e === document.body) return null;
      if (e.type === "radio") window.unreached.forEach((x) => { if (x.type === "radio" && x.name === e.name && x.form === e.form) window.unreached.delete(x); });
      window.unreached.delete(e);
      const { left, top, right, bottom } = area(e);
      const seen = [[left + 3, top + 3], [right - 3, bottom - 3], [(left + right) / 2, (top + bottom) / 2]].some(([x, y]) => {
        const at = document.elementFromPoint(x, y);
        return at && (e.contains(at) || at.contains(e) && at.closest("label"));
      });
      return (ringed(e) ? [] : ["no ring: " + name(e)]).concat(seen ? [] : ["covered while it has the focus: " + name(e)]);
    },
    end() { return Array.from(window.unreached, (e) => "not reached by Tab: " + name(e)); },
  };
})();
