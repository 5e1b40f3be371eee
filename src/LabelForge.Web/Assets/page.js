"use strict";
// The page's own few lines: starting, losing touch, keeping the cursor.
(function () {
  const lost = document.getElementById("components-reconnect-modal");
  document.getElementById("lost-again").addEventListener("click", () => location.reload());
  lost.addEventListener("components-reconnect-state-changed", (event) => {
    const state = event.detail.state;
    if (state === "show") {
      lost.dataset.state = "trying";
      if (!lost.open) lost.showModal();
    } else if (state === "hide") {
      lost.close();
      // Whether the last press arrived is not known: it may be pressed again, and the books know its key.
      sent = new WeakMap();
      for (const holder of document.querySelectorAll("[data-once]")) busy(holder, false);
    } else if (state === "failed") {
      lost.dataset.state = "gone";
    } else if (state === "rejected") {
      // The program was started anew, or the lid was closed for long: everything typed is in the files.
      location.reload();
    }
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && lost.open && lost.dataset.state === "gone") {
      Blazor.reconnect().then((ok) => { if (ok) lost.close(); else location.reload(); }, () => { });
    }
  });
  // Ctrl-Z and Ctrl-Y outside a field of text take the page's own steps back.
  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const field = event.target instanceof HTMLElement && event.target.matches("input:not([type=radio]):not([type=checkbox]), textarea, select");
    if (field) return;
    const which = key === "z" && !event.shiftKey ? "undo" : key === "y" || (key === "z" && event.shiftKey) ? "redo" : null;
    const button = which && document.querySelector(`[data-step="${which}"]:not([disabled])`);
    if (button) { event.preventDefault(); button.click(); }
  });
  // What writes into the books is sent once for its key, however often it is pressed. A new key says that the answer is there.
  let sent = new WeakMap();
  const busy = (holder, is) => {
    for (const button of holder.matches("form") ? holder.querySelectorAll("button[type=submit]") : [holder]) {
      if (is) button.setAttribute("aria-busy", "true"); else button.removeAttribute("aria-busy");
    }
  };
  const once = (event) => {
    const holder = event.target instanceof Element ? event.target.closest(event.type === "submit" ? "form[data-once]" : "button[data-once]") : null;
    if (!holder) return;
    if (sent.get(holder) === holder.dataset.once) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    sent.set(holder, holder.dataset.once);
    busy(holder, true);
  };
  window.addEventListener("submit", once, true);
  window.addEventListener("click", once, true);
  new MutationObserver((changes) => { for (const c of changes) busy(c.target, false); }).observe(document, { subtree: true, attributes: true, attributeFilter: ["data-once"] });
  // A page may move under a press: the field that is left says what is wrong with it, and what stands below goes down before the
  // button of the mouse comes up. What was pressed and moved away is pressed all the same; whoever moves off it calls the press back.
  // So it is where what lies under the pointer is drawn anew, a picture or a figure on a tile: no browser clicks for what is gone.
  let held = null;
  window.addEventListener("pointerdown", (event) => {
    const what = event.isPrimary && event.button === 0 && event.target instanceof Element && event.target.closest("button, a[href], summary");
    held = what ? { what, on: event.target, x: event.clientX, y: event.clientY } : null;
  }, true);
  window.addEventListener("pointerup", (event) => {
    const was = held;
    held = null;
    const within = was && event.target instanceof Node && was.what.contains(event.target);
    if (!was || (within && was.on.isConnected) || !was.what.isConnected) return;
    if (!within && Math.hypot(event.clientX - was.x, event.clientY - was.y) >= 4) return;
    let clicked = false;
    const heard = () => { clicked = true; };
    was.what.addEventListener("click", heard, { capture: true, once: true });
    setTimeout(() => {
      was.what.removeEventListener("click", heard, true);
      if (!clicked && was.what.isConnected) was.what.click();
    }, 0);
  }, true);
  window.addEventListener("pointercancel", () => { held = null; }, true);
  // The key / looks for anything, from every page; what is typed stays typed.
  document.addEventListener("keydown", (event) => {
    const typing = event.target instanceof HTMLElement && (event.target.matches("input, textarea, select") || event.target.isContentEditable);
    if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
      const find = document.querySelector("[data-find]");
      if (find) { event.preventDefault(); find.click(); }
    }
    // What a word means is put away with Escape.
    if (event.key === "Escape" && event.target instanceof HTMLElement && event.target.matches(".term-word")) event.target.blur();
    // Arrows walk from a field through the links below it.
    const walk = event.target instanceof HTMLElement && /^Arrow(Up|Down)$/.test(event.key) && event.target.closest("[data-arrows]");
    if (walk) {
      const stops = [...walk.querySelectorAll("input, ul a")];
      const next = stops[stops.indexOf(event.target) + (event.key === "ArrowDown" ? 1 : -1)];
      if (next) { event.preventDefault(); next.focus(); }
    }
    // Alt with an arrow moves the row that the cursor is in, and the cursor with it.
    const row = event.altKey && event.target instanceof HTMLElement && /^Arrow(Up|Down)$/.test(event.key) && event.target.closest("[data-row]");
    if (row) {
      const by = event.key === "ArrowDown" ? 1 : -1;
      const button = row.querySelector(by > 0 ? "[data-move=down]" : "[data-move=up]");
      event.preventDefault();
      if (button && !button.disabled) {
        const there = event.target.id.replace(/[0-9]+$/, (n) => String(Number(n) + by));
        button.click();
        document.getElementById(there)?.focus();
      }
    }
  });
  // A row is dragged by its grip; where it is let go it is moved to, step by step, as its arrows would.
  document.addEventListener("pointerdown", (event) => {
    const row = event.target instanceof Element && event.button === 0 && event.target.closest(".grip")?.closest("[data-row]");
    if (!row) return;
    event.preventDefault();
    const rows = [...row.parentElement.querySelectorAll(":scope > [data-row]")];
    const from = rows.indexOf(row);
    let to = from;
    row.classList.add("dragged");
    const over = (e) => {
      const under = rows.findIndex((r) => e.clientY < r.getBoundingClientRect().bottom);
      to = under < 0 ? rows.length - 1 : under;
      rows.forEach((r, i) => r.classList.toggle("drop-here", i === to && i !== from));
    };
    const end = (e) => {
      for (const what of ["pointermove", "pointerup", "pointercancel"]) window.removeEventListener(what, what === "pointermove" ? over : end);
      for (const r of rows) r.classList.remove("dragged", "drop-here");
      for (let at = from; e.type === "pointerup" && at !== to; at += to > from ? 1 : -1) {
        const button = rows[at].querySelector(to > from ? "[data-move=down]" : "[data-move=up]");
        if (!button || button.disabled) break;
        button.click();
      }
    };
    for (const what of ["pointermove", "pointerup", "pointercancel"]) window.addEventListener(what, what === "pointermove" ? over : end);
  });
  // On a narrow page a table's row is a card: each cell says what its column is called, and is a cell to a screen reader still.
  const cards = () => {
    for (const table of document.querySelectorAll("main table")) {
      const heads = [...table.querySelectorAll("thead th")].map((h) => h.textContent.trim());
      if (heads.length < 3) continue;
      table.classList.add("cards");
      const role = (e, r) => { if (e.getAttribute("role") !== r) e.setAttribute("role", r); };
      role(table, "table");
      for (const part of table.querySelectorAll("thead, tbody, tfoot")) role(part, "rowgroup");
      for (const row of table.querySelectorAll("tr")) {
        role(row, "row");
        let at = 0;
        for (const cell of row.children) {
          role(cell, cell.tagName === "TD" ? "cell" : cell.closest("thead") ? "columnheader" : "rowheader");
          if (!cell.closest("thead") && cell.dataset.label !== heads[at]) cell.dataset.label = heads[at] ?? "";
          at += cell.colSpan;
        }
      }
    }
  };
  let carding = 0;
  new MutationObserver(() => { if (!carding) carding = requestAnimationFrame(() => { carding = 0; cards(); }); }).observe(document.body, { subtree: true, childList: true });
  // The arrows choose a position on the sheet; they do not scroll the page then.
  document.addEventListener("keydown", (event) => {
    if (event.target instanceof SVGElement && event.target.matches("[role=radio], [data-arrows]") && /^(Arrow|Home$|End$)/.test(event.key)) event.preventDefault();
  });
  document.addEventListener("click", (event) => {
    if (event.target instanceof HTMLElement && event.target.matches("a.skip")) { event.preventDefault(); document.getElementById("work").focus(); }
  }, true);
  window.labelforge = {
    open: (address) => { window.open(address, "_blank"); },
    save: (address, name) => { const a = document.createElement("a"); a.href = address; a.download = name; a.click(); },
    scheme: (scheme) => { document.documentElement.dataset.scheme = scheme; },
    // Where reading begins; who is typing already is left alone, since the page is seen before it is told of here.
    arrive: () => {
      if (document.activeElement?.matches("main :is(input, select, textarea)")) return;
      const first = document.querySelector("main [data-first] input") ?? document.querySelector("h1");
      if (first?.matches("h1") && !first.hasAttribute("tabindex")) first.tabIndex = -1;
      first?.focus();
    },
    // How many dots of the screen a drawing's unit takes.
    dots: (selector) => document.querySelector(selector)?.getScreenCTM()?.a ?? 0,
    copy: (text) => navigator.clipboard.writeText(text),
    // The field that work goes on in; who went to another one meanwhile is left there.
    goOn: (id) => { if (!document.activeElement?.matches(`main :is(input, select, textarea):not(#${id})`)) labelforge.focus(id); },
    // Who is typing there already is left alone: what is selected would be typed over.
    focus: (id) => { const e = document.getElementById(id); if (e && e !== document.activeElement) { e.focus(); if (e.select) e.select(); } },
  };
  // Nothing is drawn without the first socket, and on a machine that is busy it may fail: the page is opened again, at ever longer
  // waits, and says so where that does not help. What fails later is taken up again by its own way.
  const opened = "labelforge-opened";
  const isDrawn = () => document.querySelector("h1") !== null;
  class Way extends WebSocket {
    constructor(...where) {
      super(...where);
      this.addEventListener("close", () => {
        if (isDrawn()) { sessionStorage.removeItem(opened); return; }
        const times = Number(sessionStorage.getItem(opened) ?? 0);
        if (times >= 5) {
          sessionStorage.removeItem(opened);
          lost.dataset.state = "gone";
          if (!lost.open) lost.showModal();
          return;
        }
        sessionStorage.setItem(opened, times + 1);
        setTimeout(() => location.reload(), 250 * 2 ** times);
      });
    }
  }
  // The socket is the one way here, and it is on this machine: nothing is asked about ways first, nor for starters, since there are
  // none. A program that has ended closes it at once; one that is silent for long is busy.
  Blazor.start({
    circuit: {
      initializers: { beforeStart: [], afterStarted: [] },
      configureSignalR: (way) => way.withUrl("/_blazor", { skipNegotiation: true, transport: 1, WebSocket: Way }).withServerTimeout(120000),
    },
  });
})();
