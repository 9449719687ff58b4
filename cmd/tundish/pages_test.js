// Looks over a page as laid out in the browser and gives a list of faults. It is
// evaluated by TestPages; phone says that the window is that of a phone.
((phone) => {
  "use strict";
  const faults = [];
  const fault = (s) => faults.length < 40 && faults.push(s);
  const name = (e) => (e.closest("figure")?.id || e.closest("section")?.id || e.tagName) + ": " + (e.textContent || "").trim().slice(0, 50);

  // The page is no wider than the window; only a figure may be, inside itself.
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth + 0.5) {
    const wide = [...document.querySelectorAll("body *")].filter((e) => !e.closest(".scroll") && e.getBoundingClientRect().right > root.clientWidth + 0.5);
    fault(`the page is ${root.scrollWidth} wide in a window of ${root.clientWidth}: ${wide.slice(0, 3).map(name).join(" | ")}`);
  }

  // Every link leads to a place on the page.
  for (const a of document.querySelectorAll("a")) {
    const to = a.getAttribute("href") || "";
    if (!to.startsWith("#") || !document.getElementById(decodeURIComponent(to.slice(1)))) fault(`the link ${to} leads nowhere: ${name(a)}`);
  }

  // Every figure is there, and not empty.
  for (const f of document.querySelectorAll("figure")) {
    const svg = f.querySelector("svg");
    const r = svg && svg.getBoundingClientRect();
    if (!svg || r.width < 200 || r.height < 80 || svg.querySelectorAll("path,rect,circle").length < 8 || svg.querySelectorAll("text").length < 6) fault(`${f.id} is empty`);
    if (!f.querySelector("figcaption")?.textContent) fault(`${f.id} has no caption`);
  }

  // No label lies over another, or over the edge of a symbol, or out of the
  // drawing; in a plot none lies over a curve.
  const over = (a, b, by) => a.left + by < b.right && b.left + by < a.right && a.top + by < b.bottom && b.top + by < a.bottom;
  const within = (a, b, by) => a.left >= b.left - by && a.right <= b.right + by && a.top >= b.top - by && a.bottom <= b.bottom + by;
  for (const svg of phone ? [] : document.querySelectorAll("svg")) {
    const where = svg.closest("figure")?.id || "a drawing";
    const frame = svg.getBoundingClientRect();
    const by = 0.6; // px: rounding of glyph boxes
    // The box of the letters: without the room that the font keeps over and under them.
    const box = (t) => {
      const r = t.getBoundingClientRect();
      const trim = r.height > r.width && t.textContent.length > 2 ? 0 : r.height * 0.12;
      return { left: r.left, right: r.right, top: r.top + trim, bottom: r.bottom - trim };
    };
    const texts = [...svg.querySelectorAll("text")].map((t) => ({ t, r: box(t), s: t.textContent }));
    texts.forEach(({ r, s }, i) => {
      if (!within(r, frame, 1)) fault(`${where}: "${s}" leaves the drawing`);
      for (const o of texts.slice(i + 1)) if (over(r, o.r, by)) fault(`${where}: "${s}" lies over "${o.s}"`);
    });
    for (const g of svg.querySelectorAll("g[transform*=translate]")) {
      if (g.querySelector("g,text")) continue;
      const r = g.getBoundingClientRect();
      for (const o of texts) if (over(o.r, r, 1.2) && !within(o.r, r, 1.2)) fault(`${where}: "${o.s}" lies over the edge of a symbol`);
    }
    if (svg.querySelector("g[transform*=scale]")) {
      for (const p of svg.querySelectorAll("path")) {
        const stroke = getComputedStyle(p).stroke;
        if (getComputedStyle(p).fill !== "none" || stroke === "none" || stroke === "rgb(221, 221, 221)") continue;
        const all = p.getBoundingClientRect();
        const near = texts.filter(({ r }) => over(r, { left: all.left, right: all.right + 1, top: all.top, bottom: all.bottom + 1 }, 0));
        if (!near.length) continue;
        const to = p.getScreenCTM();
        const n = p.getTotalLength();
        for (let d = 0; d <= n; d += Math.max(1, n / 400)) {
          const q = p.getPointAtLength(d).matrixTransform(to);
          const hit = near.find(({ r }) => q.x > r.left + 1 && q.x < r.right - 1 && q.y > r.top + 1 && q.y < r.bottom - 1);
          if (hit) {
            fault(`${where}: a line runs through "${hit.s}"`);
            break;
          }
        }
      }
    }
  }

  // Text stands out from what lies behind it by 4.5 to 1 at least.
  const rgba = (s) => {
    const m = /rgba?\(([^)]*)\)/.exec(s);
    if (!m) return null;
    const [r, g, b, a = 1] = m[1].split(/[ ,/]+/).map(Number);
    return { r, g, b, a };
  };
  const light = ({ r, g, b }) => {
    const f = (c) => ((c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
    return 0.2126 * f(r) + 0.7152 * f(g) + 0.0722 * f(b);
  };
  const ratio = (a, b) => {
    const [x, y] = [light(a), light(b)].sort((p, q) => q - p);
    return (x + 0.05) / (y + 0.05);
  };
  const behind = (e) => {
    for (; e; e = e.parentElement) {
      const s = getComputedStyle(e);
      if (s.backgroundImage !== "none") return null;
      const c = rgba(s.backgroundColor);
      if (c && c.a === 1) return c;
      if (c && c.a > 0) return null; // half clear: none of ours is
    }
    return { r: 255, g: 255, b: 255, a: 1 };
  };
  const filled = new Map(); // of each drawing, the shapes that cover what is behind them
  const behindText = (t) => {
    const svg = t.ownerSVGElement;
    if (!filled.has(svg)) {
      const list = [...svg.querySelectorAll("path,rect,circle")].map((s) => ({ s, fill: rgba(getComputedStyle(s).fill), r: s.getBoundingClientRect() }));
      filled.set(svg, list.filter(({ fill }) => fill && fill.a === 1));
    }
    const r = t.getBoundingClientRect();
    const at = new DOMPoint((r.left + r.right) / 2, (r.top + r.bottom) / 2);
    let back = behind(svg.parentElement);
    for (const { s, fill, r } of filled.get(svg)) {
      if (at.x < r.left || at.x > r.right || at.y < r.top || at.y > r.bottom) continue;
      if (!(s.compareDocumentPosition(t) & Node.DOCUMENT_POSITION_FOLLOWING)) continue;
      if (s.isPointInFill(at.matrixTransform(s.getScreenCTM().inverse()))) back = fill;
    }
    return back;
  };
  let least = Infinity;
  let counted = 0;
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let n = walk.nextNode(); n; n = walk.nextNode()) {
    const e = n.parentElement;
    if (!n.data.trim() || ["STYLE", "SCRIPT", "TITLE", "DESC"].includes(e.tagName.toUpperCase())) continue;
    const svg = e.closest("text");
    if (svg && phone) continue; // looked at on the desk
    const style = getComputedStyle(e);
    const ink = rgba(svg ? style.fill : style.color);
    const back = svg ? behindText(svg) : behind(e);
    if (!ink || !back || ink.a < 1 || Number(style.opacity) < 1) {
      fault(`the contrast of a text is not known: ${name(e)}`);
      continue;
    }
    counted++;
    const c = ratio(ink, back);
    least = Math.min(least, c);
    if (c < 4.5) fault(`contrast ${c.toFixed(2)} of ${name(e)}`);
    if (!svg && phone && parseFloat(style.fontSize) < 10) fault(`letters of ${style.fontSize} on a phone: ${name(e)}`);
  }
  if (counted < 20) fault(`only ${counted} texts`);
  return { faults, least, counted };
})
