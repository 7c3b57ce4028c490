// Keeps a served page in step with its notebook, and tells the program when a knob turns.
(() => {
  const here = location.pathname.replace(/\/?$/, "/");
  const parts = root => [...root.querySelector("main").children];
  // results holds what each result was written as, since scripts add to the drawn ones.
  const results = list => list.map(e => [...e.querySelectorAll(":scope > .results > *")].map(c => c.outerHTML));
  const outer = ["header.title", ".methods", ".record"];
  const told = root => {
    const list = parts(root), sum = {};
    for (const s of outer) sum[s] = (root.querySelector(s) || { outerHTML: "" }).outerHTML;
    return { main: list.map(e => e.outerHTML), lists: results(list), sum };
  };
  const first = told(document);
  // kept is the page as the program cut it: texts around the elements that may change.
  let kept = null, number = 0;
  const parse = pieces => new DOMParser().parseFromString(pieces.Around.map((text, i) => text + (pieces.Elements[i] || "")).join(""), "text/html");
  const elements = root => [...root.querySelectorAll("main > .cell > .results > *, body > .turning, body > .record")];
  const swapped = e => e.dispatchEvent(new CustomEvent("swapped", { bubbles: true }));
  // put replaces an element, and leaves open what was.
  const put = (old, fresh) => {
    const open = [...old.querySelectorAll("details")].map(d => d.open);
    fresh.querySelectorAll("details").forEach((d, i) => { d.open = !!open[i]; });
    old.replaceWith(fresh);
  };
  const swap = (old, fresh) => {
    const a = old.querySelector(":scope > .results"), b = fresh.querySelector(":scope > .results");
    const code = e => (e.querySelector(":scope > pre") || { outerHTML: "" }).outerHTML;
    if (!a || !b || a.children.length !== b.children.length || code(old) !== code(fresh)) { old.replaceWith(fresh); return fresh; }
    return null;
  };
  // whole goes over to a page with another text.
  const whole = pieces => {
    if (waiting) rest();
    const was = kept ? told(parse(kept)) : first, fresh = parse(pieces), is = told(fresh), next = parts(fresh), now = parts(document);
    kept = pieces;
    if (next.length !== now.length) {
      document.querySelector("main").replaceChildren(...next);
      swapped(document);
    } else is.main.forEach((text, i) => {
      if (text === was.main[i]) return;
      const changed = swap(now[i], next[i]);
      if (changed) { swapped(changed); return; }
      const a = now[i].querySelector(":scope > .results"), b = [...next[i].querySelector(":scope > .results").children];
      b.forEach((child, k) => { if (is.lists[i][k] !== was.lists[i][k]) put(a.children[k], child); });
      swapped(a);
    });
    for (const s of outer) {
      const old = document.querySelector(s), now = fresh.querySelector(s);
      if (is.sum[s] === was.sum[s]) continue;
      if (old && now) old.replaceWith(now);
      else if (now) [...document.body.children].filter(e => e.matches("main, .turning, .methods, .record")).pop().after(now);
      else old?.remove();
    }
    document.title = fresh.title;
    knobs(fresh);
  };
  // some puts the elements that changed in their places: at once what is in sight or near, the
  // others when there is time.
  let later = new Map(), waiting = 0;
  const place = changes => {
    const list = elements(document), box = document.createElement("template"), touched = new Set();
    if (list.length !== kept.Elements.length) { location.reload(); return; }
    for (const [i, html] of changes) {
      box.innerHTML = html;
      touched.add(list[i].parentNode);
      put(list[i], box.content.firstElementChild);
    }
    touched.forEach(swapped);
  };
  const rest = () => {
    if (!waiting) return; // done already
    const changes = later;
    later = new Map();
    waiting = 0;
    place(changes);
  };
  const some = changed => {
    const list = elements(document), near = new Map(), height = innerHeight;
    for (const [i, html] of Object.entries(changed)) {
      kept.Elements[i] = html;
      if (!list[i] || list[i].matches(".turning")) continue;
      const { top, bottom } = list[i].getBoundingClientRect();
      if (bottom > -height / 2 && top < 1.5 * height) {
        near.set(i, html);
        later.delete(i);
      } else later.set(i, html);
    }
    place(near);
    if (later.size && !waiting) waiting = setTimeout(() => (window.requestIdleCallback || setTimeout)(rest, { timeout: 200 }), 50);
  };
  // trouble shows what went wrong above the last good page.
  let fault = "";
  const trouble = html => {
    if (html === fault) return;
    fault = html;
    document.querySelector(".trouble")?.remove();
    if (!html) return;
    const box = document.createElement("div");
    box.className = "trouble";
    box.setAttribute("role", "alert");
    box.innerHTML = html;
    document.querySelector("main").before(box);
  };
  const names = root => [...root.querySelectorAll(".knob")].map(k => k.querySelector("label").textContent + k.querySelector("input").dataset.exact).join("\n");
  let shape = null;
  const knobs = root => {
    const section = document.querySelector(".turning"), fresh = root.querySelector(".turning");
    if (shape === null || names(root) !== shape) {
      shape = names(root);
      if (root !== document) {
        section?.remove();
        if (fresh) document.querySelector("main").after(fresh);
      }
      wire();
    }
  };
  // order is that of this page's last turn among those of all pages; a turn of another page
  // that came later moves the knobs here as well.
  let pending = null, busy = false, order = 0, latest = { Order: 0 }, adopt = () => {};
  const follow = () => { if (latest.Order > order) { order = latest.Order; adopt(latest.Values || {}); } };
  const send = async () => {
    if (busy) return;
    busy = true;
    order = Infinity;
    let answered = latest.Order;
    while (pending) {
      const body = JSON.stringify(pending);
      pending = null;
      try {
        const answer = await fetch(here + "turn", { method: "POST", body, headers: { "Content-Type": "application/json" } });
        answered = (await answer.json()).Order;
      } catch { break; }
    }
    busy = false;
    order = answered;
    follow();
  };
  const wire = () => {
    const section = document.querySelector(".turning");
    if (!section) return;
    const all = [...section.querySelectorAll("input")], back = section.querySelector("button");
    const base = all.map(i => +i.dataset.base), name = input => input.parentNode.querySelector("label").textContent;
    const show = () => {
      for (const input of all) {
        const text = JSON.parse(input.dataset.stops)[+input.value];
        input.parentNode.querySelector("output").textContent = text;
        input.setAttribute("aria-valuetext", text);
      }
      back.hidden = all.every((input, i) => +input.value === base[i]);
    };
    const move = () => {
      show();
      const values = {};
      for (const input of all) values[name(input)] = JSON.parse(input.dataset.exact)[+input.value];
      pending = { Number: ++number, Values: values };
      send();
    };
    adopt = values => {
      all.forEach((input, i) => {
        const at = JSON.parse(input.dataset.exact).indexOf(values[name(input)]);
        input.value = at < 0 ? base[i] : at;
      });
      show();
    };
    back.hidden = all.every((input, i) => +input.value === base[i]);
    for (const input of all) {
      input.disabled = false;
      input.addEventListener("input", move);
    }
    back.addEventListener("click", () => {
      all.forEach((input, i) => { input.value = base[i]; });
      move();
      all[0].focus();
    });
    section.dataset.ready = "";
  };
  knobs(document);
  const events = new EventSource(here + "events");
  events.onmessage = e => {
    const message = JSON.parse(e.data);
    if (message.Page) whole(message.Page);
    else if (message.Changed) some(message.Changed);
    trouble(message.Fault);
    latest = message;
    follow();
    document.documentElement.dataset.number = message.Number;
  };
  events.onerror = () => { document.documentElement.dataset.lost = ""; };
  events.onopen = () => { delete document.documentElement.dataset.lost; };
})();
