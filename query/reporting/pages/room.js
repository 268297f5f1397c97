// The few things that a page cannot do by itself. Every page works without this file.
"use strict";

// A note on a reading goes away on Escape and comes back with the next look at it.
const hideNotes = (hide) => document.body.classList.toggle("dismissed", hide);
document.addEventListener("keydown", (event) => { if (event.key === "Escape") hideNotes(true); });
for (const kind of ["focusin", "mouseover"]) {
  document.addEventListener(kind, (event) => { if (event.target.closest && event.target.closest("a.reading")) hideNotes(false); });
}

// A correction is made where the reading stands: following a mark opens its form's row.
document.addEventListener("click", (event) => {
  const mark = event.target.closest && event.target.closest("a.reading");
  if (!mark) return;
  const row = document.querySelector(mark.getAttribute("href"));
  const details = row && row.querySelector("details");
  if (details) details.open = true;
});

// Years can be slid as well as written.
for (const field of document.querySelectorAll("input[data-least]")) {
  const least = Number(field.dataset.least), most = Number(field.dataset.most);
  if (!(most > least)) continue;
  const slider = document.createElement("input");
  slider.type = "range";
  slider.min = least;
  slider.max = most;
  slider.value = field.value || (field.name === "from" ? least : most);
  slider.setAttribute("aria-label", field.name === "from" ? "From the year" : "To the year");
  slider.addEventListener("input", () => { field.value = slider.value; });
  field.addEventListener("input", () => { if (field.value) slider.value = field.value; });
  field.after(slider);
}

// While a book is being indexed, look again.
const busy = document.querySelector("[data-busy]");
if (busy) {
  const look = async () => {
    const answer = await fetch("/api/jobs");
    if (answer.ok && !(await answer.json()).busy) location.reload();
    else setTimeout(look, 500);
  };
  setTimeout(look, 300);
}
