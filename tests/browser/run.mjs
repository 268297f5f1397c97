// Opens the reading room of the sample shelf in a real browser and does the whole job there. Ends with 1 where a check
// does not hold, with 77 where there is no browser.
import { existsSync } from "node:fs";
import { chromium } from "playwright-core";
import { check, outcome } from "./checks.mjs";
import { checkExports } from "./exports.mjs";
import { correctionSurvives, keyboardOnly, wholeJob, withoutScripts } from "./job.mjs";
import { checkKitchen } from "./kitchen.mjs";
import { checkPages } from "./pages.mjs";
import { catalogue, clearUp, gallipot, index, openRoom } from "./room.mjs";

const executablePath = process.env.CHROMIUM || "/usr/bin/chromium";
if (!existsSync(executablePath)) {
  console.log("There is no Chromium here; nothing was checked.");
  process.exit(77);
}
const late = setTimeout(() => { console.log("FAILED: the checks took too long"); process.exit(1); }, 420_000);

/** Pages of A4 that a page prints on. */
async function printed(browser, address, path) {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(address + path);
  const pdf = (await page.pdf({ format: "A4", preferCSSPageSize: true })).toString("latin1");
  await context.close();
  return (pdf.match(/\/Type\s*\/Page[^s]/g) || []).length;
}

let room;
const browser = await chromium.launch({ executablePath, timeout: 20_000, args: ["--no-sandbox", "--disable-dev-shm-usage"] });
try {
  gallipot("index", "--catalogue", catalogue, "--index", index);
  room = await openRoom();
  const exports = await wholeJob(browser, room.address);
  await checkExports(exports);
  await checkKitchen();
  await checkPages(browser, room.address, [
    "/", "/shelf", "/book?id=oldacre-1838", "/search", "/search?dish=damson+catsup", "/search?dish=zzyzx", "/families", "/borrowings?book=oldacre-1857",
    "/recipe?id=oldacre-1838/0019", "/variants?of=oldacre-1838/0019", "/comparison?id=oldacre-1838/0019&id=wimbrell-1752/0017&id=dalgarnoch-1808/0015&id=pellowe-1884/0014",
    "/sheet?id=oldacre-1838/0019&start=2027-09-04T09:00", "/lineage?of=oldacre-1857/0028", "/measures", "/measures?words=half+a+small+teacup&year=1885&country=GB&of=cream",
    "/measures?words=a+slow+oven", "/dossiers", "/dossier?name=damson-catsup-for-the-autumn", "/corrections", "/api", "/no-such-page",
  ]);
  for (const path of ["/sheet?id=oldacre-1838/0019", "/recipe?id=oldacre-1838/0019"]) {
    const pages = await printed(browser, room.address, path);
    check(`${path} prints on one page`, pages === 1, pages);
  }
  await keyboardOnly(browser, room.address);
  await withoutScripts(browser, room.address);
  await correctionSurvives(browser, room.address);
} catch (error) {
  check("nothing is thrown", false, error.stack);
} finally {
  await browser.close();
  if (room) await room.close();
  clearUp();
  clearTimeout(late);
}
process.exit(outcome() ? 0 : 1);
