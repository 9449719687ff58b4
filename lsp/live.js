// Renews the sheet in place when the server says that the text has changed, and
// keeps the reader at the same calculation.
addEventListener("DOMContentLoaded", () => {
  "use strict";
  const numberOf = (doc) => Number(doc.querySelector('meta[name="sheet-number"]').content);
  let shown = numberOf(document);
  let wanted = shown;
  let busy = false;

  // The place is an element that has an id and stands at the top of the window.
  function place() {
    for (const e of document.querySelectorAll("body [id]:not(#notice):not(#away)")) {
      const r = e.getBoundingClientRect();
      if (r.bottom > 0 && r.top > -innerHeight) return { id: e.id, top: r.top, x: scrollX, y: scrollY };
    }
    return { x: scrollX, y: scrollY };
  }

  function goTo(p) {
    const e = p.id && document.getElementById(p.id);
    scrollTo({ left: p.x, top: e ? scrollY + e.getBoundingClientRect().top - p.top : p.y, behavior: "instant" });
  }

  function away(text) {
    let e = document.getElementById("away");
    if (!text) {
      if (e) e.remove();
      return;
    }
    if (!e) {
      e = document.createElement("p");
      e.id = "away";
      e.setAttribute("role", "status");
      document.body.prepend(e);
    }
    e.textContent = text;
  }

  async function renew() {
    if (busy) return;
    busy = true;
    try {
      while (shown < wanted) {
        const answer = await fetch(location.pathname, { cache: "no-store" });
        if (answer.status === 404) {
          events.close();
          away("This sheet is not renewed any more. Open it anew from the editor.");
          return;
        }
        if (!answer.ok) throw new Error("status " + answer.status);
        const doc = new DOMParser().parseFromString(await answer.text(), "text/html");
        const next = numberOf(doc);
        const at = place();
        document.title = doc.title;
        document.body.replaceWith(document.adoptNode(doc.body));
        goTo(at);
        shown = next;
        if (next < wanted) await new Promise((done) => setTimeout(done, 200));
      }
    } catch (why) {
      away("The sheet could not be renewed: " + why.message + ".");
    } finally {
      busy = false;
    }
  }

  const events = new EventSource(location.pathname + "events");
  events.addEventListener("sheet", (e) => {
    away("");
    wanted = Math.max(wanted, Number(e.data));
    renew();
  });
  events.onerror = () => away("No connection to the editor: this sheet is not renewed.");
});
