// Reads values off the curves of a figure, by pointer or by keyboard. The page says
// everything without it.
(() => {
  const make = (name, attributes) => {
    const e = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const key in attributes) e.setAttribute(key, attributes[key]);
    return e;
  };
  const axis = text => {
    const [scale, min, max, unit, factor, shift, prefix] = text.split(" ");
    return { log: scale === "log", min: +min, max: +max, unit: unit === "-" ? "" : unit, factor: +factor, shift: +shift, prefix: prefix === "prefix" };
  };
  const value = (a, share) => a.log ? a.min * (a.max / a.min) ** share : a.min + share * (a.max - a.min);
  const show = (a, v) => {
    let number, unit = a.unit;
    if (a.prefix) {
      const third = Math.max(-5, Math.min(3, Math.floor(Math.log10(Math.abs(v) * 1.0005) / 3)));
      number = String(+(v / 10 ** (3 * third)).toPrecision(3));
      unit = ["f", "p", "n", "µ", "m", "", "k", "M", "G"][third + 5] + unit;
    } else {
      const grain = (a.max - a.min) / a.factor / 200;
      number = (v / a.factor + a.shift).toFixed(Math.max(0, -Math.floor(Math.log10(grain))));
      if (+number === 0) number = number.replace("-", "");
    }
    return number.replace("-", "−") + (unit === "°" || !unit ? unit : "\u00a0" + unit);
  };
  // pieces turns the data of a path into lists of points.
  const pieces = path => {
    const all = [];
    let x = 0, y = 0;
    for (const [, verb, dx, dy] of path.getAttribute("d").matchAll(/([Ml])(-?[\d.]+) ?(-?[\d.]+)/g)) {
      if (verb === "M") { x = +dx; y = +dy; all.push([]); } else { x += +dx; y += +dy; }
      all[all.length - 1].push([x, y]);
    }
    return all;
  };
  const height = (curve, x) => {
    for (const piece of curve) for (let i = 1; i < piece.length; i++) {
      const [ax, ay] = piece[i - 1], [bx, by] = piece[i];
      if ((x - ax) * (x - bx) <= 0 && ax !== bx) return ay + (x - ax) / (bx - ax) * (by - ay);
    }
    return null;
  };
  const fields = svg => [...svg.querySelectorAll("g.field")].map(g => {
    const [left, top, right, bottom] = g.dataset.box.split(" ").map(Number);
    const curves = [...g.querySelectorAll("path[data-name]")].map(p => ({ name: p.dataset.name, row: p.getAttribute("class"), pieces: pieces(p) }));
    const cursor = make("g", { class: "cursor" });
    g.append(cursor);
    return { left, top, right, bottom, curves, cursor, x: axis(g.dataset.x), y: axis(g.dataset.y) };
  });
  let first = " first";
  const attach = plate => {
    if (plate.dataset.read) return;
    plate.dataset.read = "yes";
    const drawings = [...plate.querySelectorAll("svg")].filter(svg => svg.querySelector("g.field")).map(svg => ({ svg, fields: null }));
    if (!drawings.length) return;
    const read = d => d.fields ||= fields(d.svg); // when it is wanted: many figures are never read off
    const title = plate.querySelector("figcaption b").textContent;
    const readout = document.createElement("p");
    const rest = "Point at a curve to read it off, or use the arrow keys here.";
    for (const [key, text] of Object.entries({ class: "readout" + first, role: "slider", tabindex: "0", "aria-label": "Values of " + title, "aria-valuemin": "0", "aria-valuemax": "100" })) readout.setAttribute(key, text);
    first = "";
    plate.insertBefore(readout, plate.querySelector("figcaption"));
    let share = null;
    const draw = () => {
      let text = "";
      for (const d of drawings) {
        text = "";
        for (const f of share === null ? d.fields || [] : read(d)) {
          f.cursor.replaceChildren();
          if (share === null) continue;
          const x = f.left + share * (f.right - f.left);
          f.cursor.append(make("path", { class: "line quiet", "stroke-width": "1", d: "M" + x + " " + f.top + "V" + f.bottom }));
          if (!text) text = show(f.x, value(f.x, share)) + ":";
          for (const c of f.curves) {
            const y = height(c.pieces, x);
            if (y === null) continue;
            f.cursor.append(make("circle", { class: c.row.replace("line", "area"), cx: x, cy: y, r: "3.5" }));
            text += (text.endsWith(":") ? " " : ", ") + c.name + " " + show(f.y, value(f.y, (f.bottom - y) / (f.bottom - f.top)));
          }
        }
      }
      readout.textContent = text || rest;
      readout.classList.toggle("idle", !text);
      readout.setAttribute("aria-valuenow", share === null ? "0" : (100 * share).toFixed(1));
      readout.setAttribute("aria-valuetext", text || rest);
    };
    const go = to => { share = to === null ? null : Math.max(0, Math.min(1, to)); draw(); };
    readout.addEventListener("keydown", e => {
      const step = e.shiftKey ? 0.05 : 0.005, now = share === null ? 0.5 : share;
      const to = { ArrowRight: now + step, ArrowUp: now + step, ArrowLeft: now - step, ArrowDown: now - step, PageUp: now + 0.05, PageDown: now - 0.05, Home: 0, End: 1, Escape: null }[e.key];
      if (to === undefined) return;
      e.preventDefault();
      go(to);
    });
    for (const d of drawings) {
      const point = e => {
        const f = read(d)[0], box = d.svg.getBoundingClientRect();
        go(((e.clientX - box.left) * d.svg.viewBox.baseVal.width / box.width - f.left) / (f.right - f.left));
      };
      d.svg.addEventListener("pointermove", point);
      d.svg.addEventListener("pointerdown", point);
    }
    draw();
  };
  const all = () => document.querySelectorAll(".plate").forEach(attach);
  document.addEventListener("swapped", all);
  all();
})();
