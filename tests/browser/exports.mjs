// What is taken away is read again by programs that know nothing of this one.
import { Cite } from "@citation-js/core";
import "@citation-js/plugin-bibtex";
import "@citation-js/plugin-csl";
import "@citation-js/plugin-ris";
import { HtmlValidate } from "html-validate";
import { check } from "./checks.mjs";

const plain = (text) => text.replace(/[‘’]/g, "'").replace(/\s+/g, " ").trim().toLowerCase();

/** Titles, authors and years that a format yields, in order. */
function told(items) {
  return items.map((item) => ({ title: plain(item.title), book: plain(item["container-title"] || ""), author: plain((item.author || []).map((a) => a.family || a.literal || "").join(" ")), year: String(item.issued?.["date-parts"]?.[0]?.[0] ?? "") }));
}

export async function checkExports(exports) {
  const csl = new Cite(JSON.parse(exports.csl));
  check("CSL-JSON is read", csl.data.length >= 6, csl.data.length);
  const items = told(csl.data);
  const named = csl.data.find((item) => item.id === "wimbrell-1752/0017");
  check("a recipe is a chapter of its book", named?.type === "chapter" && named["container-title"] === "The Still-Room and Larder Laid Open", JSON.stringify(named));
  check("its author is parted", named?.author?.[0]?.family === "Wimbrell" && named.author[0].given === "Hester");
  const bibtex = told(new Cite(exports.bibtex, { forceType: "@bibtex/text" }).data);
  check("BibTeX is read and says the same", JSON.stringify(bibtex) === JSON.stringify(items), `${JSON.stringify(bibtex[0])} / ${JSON.stringify(items[0])}`);
  const ris = told(new Cite(exports.ris, { forceType: "@ris/file" }).data);
  check("RIS is read and says the same", ris.length === items.length && ris.every((one, i) => one.title === items[i].title && one.year === items[i].year), `${JSON.stringify(ris[0])} / ${JSON.stringify(items[0])}`);
  for (const template of ["apa", "vancouver"]) {
    const set = csl.format("bibliography", { format: "text", template, lang: "en-US" });
    check(`a published style sets it (${template})`, set.includes("Wimbrell") && set.includes("1752") && set.includes("The Still-Room"), set.slice(0, 400));
  }
  const report = await new HtmlValidate({ extends: ["html-validate:standard"], rules: { "long-title": "off", "no-trailing-whitespace": "off", "void-style": "off", "no-raw-characters": "off", "doctype-style": "off" } }).validateString(exports.html);
  check("the document is valid HTML", report.valid, JSON.stringify(report.results.flatMap((r) => r.messages.slice(0, 4).map((m) => `${m.line} ${m.ruleId} ${m.message}`))));
  check("it asks nothing of elsewhere", !/(src|href)="https?:/.test(exports.html));
  const marks = [...exports.markdown.matchAll(/\[\^(\d+)\](?!:)/g)].map((m) => m[1]);
  const notes = [...exports.markdown.matchAll(/^\[\^(\d+)\]: /gm)].map((m) => m[1]);
  check("every mark in the Markdown has its note", marks.length > 0 && marks.every((m) => notes.includes(m)), `${marks} / ${notes}`);
  check("the trials are in it", exports.markdown.includes("turn the ginger down by a third"));
  check("the table is CSV with CRLF", exports.csv.includes("\r\n") && exports.csv.startsWith("part,"), exports.csv.slice(0, 80));
  const own = JSON.parse(exports.json);
  check("the dossier's own file says what it is", own.gallipot === "dossier" && own.version === 1 && own.trials.length === 2);
}
