// Keeps a served page in step with its notebook, and tells the program when a knob turns.
(() => {
  const here = location.pathname.replace(/\/?$/, "/");
  const parts = root => [...root.querySelector("main").children];
  let main = parts(document).map(e => e.outerHTML), sum = {}, number = 0;
  const outer = ["header.title", ".methods", ".record"];
  for (const s of outer) sum[s] = (document.querySelector(s) || { outerHTML: "" }).outerHTML;
  const swap = (old, fresh) => {
    const a = old.querySelector(":scope > .results"), b = fresh.querySelector(":scope > .results");
    const code = e => (e.querySelector(":scope > pre") || { outerHTML: "" }).outerHTML;
    if (!a || !b || a.children.length !== b.children.length || code(old) !== code(fresh)) { old.replaceWith(fresh); return fresh; }
    return null;
  };
  // results holds what each result was written as, since scripts add to the drawn ones.
  const results = list => list.map(e => [...e.querySelectorAll(":scope > .results > *")].map(c => c.outerHTML));
  let was = results(parts(document));
  const patch = html => {
    const fresh = new DOMParser().parseFromString(html, "text/html"), next = parts(fresh), now = parts(document);
    const texts = next.map(e => e.outerHTML), lists = results(next);
    if (next.length !== now.length) {
      document.querySelector("main").replaceChildren(...next);
      document.dispatchEvent(new CustomEvent("swapped"));
    } else texts.forEach((text, i) => {
      if (text === main[i]) return;
      const whole = swap(now[i], next[i]);
      if (whole) { whole.dispatchEvent(new CustomEvent("swapped", { bubbles: true })); return; }
      const a = now[i].querySelector(":scope > .results"), b = [...next[i].querySelector(":scope > .results").children];
      b.forEach((child, k) => { if (lists[i][k] !== was[i][k]) a.replaceChild(child, a.children[k]); });
      a.dispatchEvent(new CustomEvent("swapped", { bubbles: true }));
    });
    main = texts; was = lists;
    for (const s of outer) {
      const old = document.querySelector(s), is = fresh.querySelector(s), text = (is || { outerHTML: "" }).outerHTML;
      if (text !== sum[s] && old && is) old.replaceWith(is);
      sum[s] = text;
    }
    document.title = fresh.title;
    knobs(fresh);
  };
  // trouble shows what went wrong above the last good page.
  const trouble = html => {
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
  let pending = null, busy = false;
  const send = async () => {
    if (busy) return;
    busy = true;
    while (pending) {
      const body = JSON.stringify(pending);
      pending = null;
      try { await fetch(here + "turn", { method: "POST", body, headers: { "Content-Type": "application/json" } }); } catch { break; }
    }
    busy = false;
  };
  const wire = () => {
    const section = document.querySelector(".turning");
    if (!section) return;
    const all = [...section.querySelectorAll("input")], back = section.querySelector("button");
    const base = all.map(i => +i.dataset.base);
    const move = () => {
      const values = {};
      for (const input of all) {
        const name = input.parentNode.querySelector("label").textContent, at = +input.value;
        input.parentNode.querySelector("output").textContent = JSON.parse(input.dataset.stops)[at];
        input.setAttribute("aria-valuetext", JSON.parse(input.dataset.stops)[at]);
        values[name] = JSON.parse(input.dataset.exact)[at];
      }
      back.hidden = all.every((input, i) => +input.value === base[i]);
      pending = { Number: ++number, Values: values };
      send();
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
  events.addEventListener("page", e => {
    const message = JSON.parse(e.data);
    patch(message.Page);
    trouble(message.Fault);
    document.documentElement.dataset.number = message.Number;
  });
  events.addEventListener("trouble", e => trouble(JSON.parse(e.data).Fault));
  events.onerror = () => { document.documentElement.dataset.lost = ""; };
  events.onopen = () => { delete document.documentElement.dataset.lost; };
})();
