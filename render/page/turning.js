// Turns the knobs of a page that carries its positions. The page says everything without it.
(() => {
  const section = document.querySelector(".turning"), data = document.getElementById("positions");
  if (!section || !data || typeof DecompressionStream === "undefined") return;
  const knobs = [...section.querySelectorAll("input")].map(input => ({ input, output: input.parentNode.querySelector("output"), stops: JSON.parse(input.dataset.stops), base: +input.value }));
  const back = section.querySelector("button"), status = section.querySelector("[role=status]"), note = status.textContent;
  const cells = new Map([...document.querySelectorAll(".results")].map(e => [e.dataset.cell, { e, base: [...e.children].map(c => c.outerHTML), now: null }]));
  for (const c of cells.values()) c.now = c.base.slice();
  const place = (cell, list) => {
    if (list.length !== cell.now.length) {
      cell.e.innerHTML = list.join("\n");
    } else {
      list.forEach((html, i) => {
        if (html === cell.now[i]) return;
        const box = document.createElement("template");
        box.innerHTML = html;
        cell.e.replaceChild(box.content.firstElementChild, cell.e.children[i]);
      });
    }
    cell.now = list;
    cell.e.dispatchEvent(new CustomEvent("swapped", { bubbles: true }));
  };
  const unpack = async () => {
    const bytes = Uint8Array.from(atob(JSON.parse(data.textContent)), c => c.charCodeAt(0));
    return JSON.parse(await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text());
  };
  unpack().then(table => {
    const find = () => table.At[JSON.stringify(knobs.map(k => +k.input.value))];
    const show = () => {
      const at = find();
      for (const [number, cell] of cells) {
        const list = at && at[number];
        const next = list ? list.map((n, i) => n < 0 ? cell.base[i] : table.Pieces[n]) : cell.base;
        if (next.length !== cell.now.length || next.some((html, i) => html !== cell.now[i])) place(cell, next.slice());
      }
      for (const k of knobs) {
        k.output.textContent = k.stops[+k.input.value];
        k.input.setAttribute("aria-valuetext", k.output.textContent);
      }
      back.hidden = knobs.every(k => +k.input.value === k.base);
    };
    const move = turned => {
      // Where the page has no such combination, the others go back to their own values.
      if (!find() && knobs.some(k => +k.input.value !== k.base)) for (const k of knobs) if (k !== turned) k.input.value = k.base;
      show();
    };
    for (const k of knobs) {
      k.input.disabled = false;
      k.input.value = k.base;
      k.input.addEventListener("input", () => move(k));
    }
    back.addEventListener("click", () => {
      for (const k of knobs) k.input.value = k.base;
      show();
      knobs[0].input.focus();
    });
    section.dataset.ready = "";
  });
})();
