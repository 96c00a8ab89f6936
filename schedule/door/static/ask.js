// The ask page in a browser that plans by itself. What a server would answer comes from
// the planner (cmd/askpage, as WebAssembly); this script sends it the form and shows the
// page that comes back. Where the reader stands is in the fragment of the address, which
// no browser sends anywhere:
//
//   #where            a screen of the questions; what was typed lies with the history entry
//   #/CODE            the program of the answers in the code
//   #/CODE/was/CODE   the same, and what moved since other answers
//   #/CODE/change     the questions, with the answers in them
//   #/CODE/sheet      the page to print
"use strict";
(() => {
  const begin = document.body.cloneNode(true);
  let ready = false;
  let waiting = null; // what is to be done as soon as the planner is here
  let was = "";       // the code of the answers that are being changed

  const two = n => String(n).padStart(2, "0");
  const today = () => {
    const t = new Date();
    return `${t.getFullYear()}-${two(t.getMonth() + 1)}-${two(t.getDate())}`;
  };
  const lot = () => [...crypto.getRandomValues(new Uint8Array(8))].map(b => b.toString(16).padStart(2, "0")).join("");
  const here = () => location.href.split("#")[0];

  const ask = question => {
    const reply = JSON.parse(swardbook(JSON.stringify({ today: today(), link: here(), id: lot(), ...question })));
    if (reply.error) throw new Error(reply.error);
    return reply;
  };

  const form = () => document.getElementById("form");
  const fields = () => [...new FormData(form())].map(([name, text]) => [name, String(text)]);

  // show puts a page in the place of the one that is there.
  function show(page) {
    const next = new DOMParser().parseFromString(page, "text/html");
    for (const s of next.querySelectorAll("script, noscript")) s.remove();
    document.title = next.title;
    document.body.replaceWith(next.body);
    say();
  }

  function say(text) {
    const p = document.getElementById("planner");
    if (!p) return;
    if (text) p.textContent = text;
    else if (ready) p.hidden = true;
  }

  // go brings a place of the page to the reader, by eye and by ear.
  function go(id) {
    const at = document.getElementById(id) ?? document.body;
    const fold = at.closest("details");
    if (fold) fold.open = true;
    if (at === document.body) scrollTo(0, 0);
    else at.scrollIntoView();
    const head = at.querySelector("h2[tabindex]") ?? at;
    if (head.tabIndex >= -1 && head !== document.body) head.focus({ preventScroll: true });
  }

  // fill puts texts into the fields of the page that is there.
  function fill(texts) {
    const left = texts.map(pair => [...pair]);
    for (const e of form()?.elements ?? []) {
      if (!e.name || e.type === "submit" || e.tagName === "FIELDSET") continue;
      const i = left.findIndex(([name, text]) => name === e.name && (!/radio|checkbox/.test(e.type) || text === e.value));
      if (/radio|checkbox/.test(e.type)) e.checked = i >= 0;
      else if (i >= 0) e.value = left[i][1];
      if (i >= 0 && e.type !== "radio") left.splice(i, 1);
    }
  }

  // keep lays what is typed with the history entry: reload and back bring it again.
  const keep = () => form() && history.replaceState({ fields: fields(), was, screen: screen() }, "");
  const screen = () => location.hash.startsWith("#/") ? "" : location.hash.slice(1);

  // route shows what the address names.
  function route() {
    const [, code, what, other] = location.hash.startsWith("#/") ? location.hash.split("/") : [];
    const state = history.state;
    if (code && !ready) {
      waiting = route;
      return say("The program follows as soon as the planner is loaded.");
    }
    try {
      if (what === "sheet") return show(ask({ what: "sheet", code }).page), go("");
      if (code && what !== "change") {
        show(ask({ what: "answer", code, was: what === "was" ? other : "" }).page);
        return go("");
      }
      was = state?.was ?? code ?? "";
      if (state?.fields && ready) {
        show(ask({ what: "press", fields: state.fields, press: state.press ?? state.screen ?? "", was }).page || begin.outerHTML);
      } else if (code) {
        show(ask({ what: "fill", code }).page);
      } else {
        document.body.replaceWith(begin.cloneNode(true));
        if (state?.fields) fill(state.fields);
        say();
      }
      go(state?.at ?? (code ? "" : screen()));
    } catch (e) {
      document.body.replaceWith(begin.cloneNode(true));
      say(`${e.message}. The questions start again.`);
    }
  }

  // press sends the form, as a button does.
  function press(button) {
    const typed = fields();
    if (!ready) {
      if (/^(program|enter|more-)/.test(button)) {
        waiting = () => press(button);
        return say("The planner is still loading; the answer follows as soon as it is ready.");
      }
      keep();
      history.pushState({ fields: typed, was }, "", "#" + button);
      return go(button);
    }
    let next;
    try {
      next = ask({ what: "press", fields: typed, press: button, was });
    } catch (e) {
      return alert(e.message);
    }
    keep();
    if (next.code) {
      history.pushState(null, "", "#/" + next.code + (was && was !== next.code ? "/was/" + was : ""));
      was = "";
      return route();
    }
    history.pushState({ fields: typed, was, press: button, at: next.screen }, "", was ? location.hash : "#" + next.screen);
    show(next.page);
    go(next.screen);
  }

  addEventListener("submit", e => {
    if (e.target !== form()) return;
    e.preventDefault();
    let button = e.submitter?.value ?? "enter";
    if (button === "enter") { // the Enter key: on, as the button of this screen does
      button = document.activeElement?.closest("section")?.querySelector("button.go:not(.two)")?.value ?? button;
    }
    press(button);
  }, true);

  let soon;
  addEventListener("input", () => { clearTimeout(soon); soon = setTimeout(keep, 300); }, true);
  addEventListener("pagehide", keep);

  addEventListener("change", e => {
    if (e.target.name !== "place.zip" || !ready) return;
    document.getElementById("q-place-zip-got")?.remove();
    const { said } = ask({ what: "where", fields: fields() });
    if (!said) return;
    const p = document.createElement("p");
    p.className = "got";
    p.id = "q-place-zip-got";
    p.setAttribute("role", "status");
    const b = document.createElement("b");
    b.textContent = said[0];
    p.append(b, " " + said.slice(1).join(" "));
    e.target.setAttribute("aria-describedby", p.id);
    e.target.after(p);
  }, true);

  addEventListener("click", e => {
    const a = e.target.closest?.("a[href^='#']");
    if (!a) return;
    const to = a.getAttribute("href");
    if (a.download && to.startsWith("#/")) { // a file to save
      e.preventDefault();
      const [, code, ...rest] = to.split("/");
      const name = rest.join("/");
      const what = name.endsWith(".ics") ? "calendar" : name.endsWith(".toml") ? "site" : "book";
      const part = rest.length > 1 ? name.slice(0, -4) : "";
      const url = URL.createObjectURL(new Blob([ask({ what, code, part }).page], { type: a.dataset.type + ";charset=utf-8" }));
      const save = document.createElement("a");
      save.href = url;
      save.download = a.download;
      save.click();
      setTimeout(() => URL.revokeObjectURL(url), 60000);
    } else if (!to.startsWith("#/") && to !== "#") { // a place of this page: the address stays
      e.preventDefault();
      go(to.slice(1));
    } else if (to === "#") {
      e.preventDefault();
      was = "";
      history.pushState(null, "", here());
      route();
    }
  }, true);

  addEventListener("popstate", route);

  document.addEventListener("planner", () => {
    ready = true;
    say();
    const then = waiting;
    waiting = null;
    if (then) then();
  });

  // The planner lies packed beside the page, and is unpacked as it arrives.
  async function load() {
    const response = await fetch(document.body.dataset.planner);
    if (!response.ok) throw new Error(`the planner could not be fetched (${response.status})`);
    const wasm = new Response(response.body.pipeThrough(new DecompressionStream("gzip")), { headers: { "Content-Type": "application/wasm" } });
    const runtime = new Go();
    const { instance } = await WebAssembly.instantiateStreaming(wasm, runtime.importObject);
    runtime.run(instance);
  }
  load().catch(e => say(`The planner could not be loaded, so this page can only be filled in: ${e.message}.`));

  route();
  if ("serviceWorker" in navigator && location.protocol !== "file:") navigator.serviceWorker.register("sw.js").catch(() => {});
})();
