// How fast does a page come with eight readers at once, while a book is being indexed? By hand:
//   node tests/browser/speed.mjs http://127.0.0.1:8461 BOOK.txt [seconds]
// reads pages of the room's own shelf in turns and tells p50, p90 and p99 of each kind and of all, in milliseconds.
import { readFileSync } from "node:fs";
import http from "node:http";

const [address, book, seconds = "20"] = process.argv.slice(2);
const agent = new http.Agent({ keepAlive: true, maxSockets: 12 });

const get = (path) => new Promise((resolve, reject) => {
  const asked = performance.now();
  http.get(address + path, { agent }, (answer) => {
    const pieces = [];
    answer.on("data", (piece) => pieces.push(piece));
    answer.on("end", () => resolve({ status: answer.statusCode, took: performance.now() - asked, body: Buffer.concat(pieces).toString() }));
  }).on("error", reject);
});

const dishes = ["walnut catsup", "mushroom ketchup", "seed cake", "pea soup", "apple pudding", "pickled onions", "gingerbread", "calf's foot jelly"];
const ids = [];
for (const dish of dishes) ids.push(...JSON.parse((await get(`/api/search?dish=${encodeURIComponent(dish)}&limit=12`)).body).results.map((hit) => hit.id));
const pick = (list, n) => list[n % list.length];
const kinds = {
  search: (n) => `/search?dish=${encodeURIComponent(pick(dishes, n))}`,
  recipe: (n) => `/recipe?id=${pick(ids, n)}`,
  variants: (n) => `/variants?of=${pick(ids, n * 7)}`,
  comparison: (n) => `/comparison?${ids.slice((n % dishes.length) * 12, (n % dishes.length) * 12 + 8).map((id) => `id=${id}`).join("&")}`,
  shelf: () => "/shelf",
  sheet: (n) => `/sheet?id=${pick(ids, n * 5)}`,
};

const took = Object.fromEntries(Object.keys(kinds).map((kind) => [kind, []]));
let wrong = 0, indexed = 0, ending = false;
const until = performance.now() + Number(seconds) * 1000;

async function reader(first) {
  for (let n = first; performance.now() < until; n += 1) {
    const kind = pick(Object.keys(kinds), n);
    const answer = await get(kinds[kind](n + first * 31));
    if (answer.status !== 200) wrong += 1;
    took[kind].push(answer.took);
    await new Promise((resolve) => setTimeout(resolve, 40));  // a reader turns the page, too
  }
}

async function indexing() {
  const bytes = readFileSync(book);
  for (let n = 0; !ending && performance.now() < until; n += 1) {
    const secret = /name="secret" value="([0-9a-f]+)"/.exec((await get("/shelf")).body)[1];
    const form = new FormData();
    for (const [name, value] of [["secret", secret], ["title", `Speed ${n}`], ["id", `speed-${process.pid}-${n}`], ["date", "1850"]]) form.append(name, value);
    form.append("file", new Blob([bytes]), book.endsWith(".txt") ? "book.txt" : "book.htm");
    await fetch(`${address}/write/book`, { method: "POST", body: form, redirect: "manual" });
    while (JSON.parse((await get("/api/jobs")).body).busy && performance.now() < until) await new Promise((resolve) => setTimeout(resolve, 200));
    indexed += 1;
  }
}

await Promise.all([...Array(8).keys()].map(reader).concat(indexing()));
ending = true;
agent.destroy();
const at = (list, p) => list.length === 0 ? NaN : list[Math.min(list.length - 1, Math.floor(list.length * p))];
const row = (name, list) => { list.sort((a, b) => a - b); console.log(`${name.padEnd(12)}${String(list.length).padStart(6)}${[0.5, 0.9, 0.99].map((p) => at(list, p).toFixed(1).padStart(9)).join("")}`); };
console.log("page         asked      p50      p90      p99  (ms)");
for (const [kind, list] of Object.entries(took)) row(kind, list);
row("all", Object.values(took).flat());
console.log(`${wrong} answers were not 200; ${indexed} books were indexed meanwhile.`);
