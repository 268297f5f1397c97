// The whole job as a cook does it, from the search to the dossier that is taken away.
import { check } from "./checks.mjs";
import { watched } from "./pages.mjs";
import { catalogue, gallipot, index } from "./room.mjs";

const text = (page) => page.locator("main").innerText();

async function download(page, words) {
  const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: words }).click()]);
  const pieces = [];
  for await (const piece of await file.createReadStream()) pieces.push(piece);
  return Buffer.concat(pieces).toString("utf8");
}

/** Answers the exports of the dossier that was made. */
export async function wholeJob(browser, address) {
  const context = await browser.newContext({ viewport: { width: 1200, height: 900 }, acceptDownloads: true });
  const page = await watched(context, address);
  await page.goto(address);
  await page.getByLabel("The dish, by any of its names").fill("pickeld damsons");
  await page.getByRole("button", { name: "Search the shelf" }).click();
  await page.getByRole("link", { name: "pickled damsons", exact: true }).first().click();
  check("a misspelt dish is offered rightly spelt", page.url().includes("pickled%20damsons"), page.url());
  await page.getByLabel("The dish, by any of its names").fill("damson catsup");
  await page.getByRole("button", { name: "Search the shelf" }).click();
  check("results say why", /named damson catsup/.test(await text(page)));
  check("the years are drawn", await page.locator("svg.years a").count() >= 3);
  await page.locator("svg.years a").first().click();
  check("a bar of the years narrows the search, in the address", /from=1\d\d0/.test(page.url()), page.url());
  await page.goBack();
  await page.getByRole("link", { name: "Gather the variants" }).click();
  const ticks = page.locator("input[type=checkbox][name=id]");
  check("variants are gathered", await ticks.count() >= 8, await ticks.count());
  const struck = page.locator("input[type=checkbox][name=id]:checked").last();
  const struckId = await struck.getAttribute("value");
  await struck.uncheck();
  await page.getByLabel(/Add by hand/).fill("oldacre-1838/0019");
  await page.getByRole("button", { name: "Compare those ticked" }).click();
  check("they are compared", /compared/.test(await page.title()), await page.title());
  check("what was struck is not compared", !(await page.content()).includes(`id=${struckId}"`));
  check("with plots", await page.locator("svg.plot").count() >= 2);
  const way = page.locator("a.to-print").first();
  if (await way.count() > 0) {
    await way.click();
    check("a cell leads to the words it came from", page.url().includes("/recipe?id="), page.url());
    await page.goBack();
  } else check("a cell leads to the words it came from", false);
  await page.getByLabel("A new dossier, called").fill("Damson catsup, for the autumn");
  await page.getByRole("button", { name: "Keep it in the dossier" }).click();
  check("the set is kept", page.url().includes("/dossier?name=damson-catsup-for-the-autumn"), page.url());

  const first = page.locator(".kept > li").first();
  await first.locator("summary").click();
  await first.getByLabel("Standing").selectOption("chosen");
  await first.getByLabel("Note").fill("The oldest of them; \"seven years\" is to be shown.");
  await first.getByLabel("Caption").fill("Store sauce, 1752");
  await first.getByRole("button").click();
  check("a note is kept", (await text(page)).includes("The oldest of them"));
  await page.getByLabel("Batch, times the last").fill("1/4");
  await page.getByRole("button", { name: "Work out the next trial" }).click();
  await page.getByLabel("What to change").fill("turn the ginger down by a third");
  await page.getByRole("button", { name: "Work out the next trial" }).click();
  const ginger = async (trial) => Number(await page.locator("article.trial", { hasText: `Trial ${trial},` }).locator("tr", { hasText: "ginger" }).locator("td").innerText().then((t) => t.replace(/[^0-9.]/g, "")));
  const [before, after] = [await ginger(1), await ginger(2)];
  check("the next trial is worked out from the last", Math.abs(after - before * 2 / 3) < before * 0.01, `${before} ${after}`);
  await page.getByLabel("What to change").fill("a little less ginger");
  await page.getByRole("button", { name: "Work out the next trial" }).click();
  check("what is not clear is asked back", (await text(page)).includes("by how much"));
  await page.goBack();
  const exports = {};
  for (const [name, words] of Object.entries({ html: "One page, HTML", markdown: "Markdown", csl: /CSL-JSON/, bibtex: "BibTeX", ris: "RIS", csv: "The table, CSV", json: /own file/ })) exports[name] = await download(page, words);
  const quiet = page.wrongs.filter((w) => !w.includes("400"));
  check("the whole job is quiet and asks no one else", quiet.length === 0, quiet.join("\n"));
  await context.close();
  return exports;
}

export async function correctionSurvives(browser, address) {
  const context = await browser.newContext();
  const page = await watched(context, address);
  const recipe = `${address}/recipe?id=oldacre-1838/0019`;
  await page.goto(recipe);
  const row = page.locator("ul.readings > li", { hasText: "ginger" }).first();
  await row.locator("summary").click();
  await row.getByLabel("From").fill("7");
  await row.getByLabel("to", { exact: true }).fill("");
  await row.getByLabel("measure").fill("ounce");
  await row.getByRole("button", { name: "Correct the amount" }).click();
  const shown = async () => (await page.locator("ul.readings > li", { hasText: "ginger" }).first().innerText());
  check("a correction shows at once, as a correction", /Corrected: .*is 7 ounce/.test(await shown()), await shown());
  check("and is marked in the print", await page.locator("a.reading.corrected").count() === 1);
  check("and counts in the comparison", /19[0-9]/.test(await page.goto(`${address}/api/recipe?id=oldacre-1838/0019`).then((a) => a.text()).then((t) => JSON.parse(t).ingredients.find((i) => i.name === "ginger").metric.likely.toFixed(0))));
  gallipot("index", "--catalogue", catalogue, "--index", index);
  await page.goto(recipe);
  check("it survives indexing again", /Corrected: .*is 7 ounce/.test(await shown()), await shown());
  await page.getByRole("button", { name: /Take correction/ }).first().click();
  check("it can be taken back", !/Corrected:/.test(await shown()), await shown());
  check("correcting is quiet", page.wrongs.length === 0, page.wrongs.join("\n"));
  await context.close();
}

export async function keyboardOnly(browser, address) {
  const context = await browser.newContext({ viewport: { width: 1000, height: 800 } });
  const page = await watched(context, address);
  await page.goto(address);
  const focused = () => page.evaluate(() => {
    const e = document.activeElement;
    return { name: (e.getAttribute("aria-label") || e.innerText || e.id || "").trim(), tag: e.tagName, href: e.getAttribute("href") || "", seen: getComputedStyle(e).outlineStyle !== "none" };
  });
  const step = async (wanted, most = 120) => {
    for (let i = 0; i < most; i += 1) {
      await page.keyboard.press("Tab");
      const at = await focused();
      if (at.tag !== "BODY" && !at.seen) check(`the focus on ${at.tag} ${at.name} is seen`, false);
      if (wanted(at)) return true;
    }
    return false;
  };
  await page.keyboard.press("Tab");
  check("the first step leads past the masthead", (await focused()).name === "To the page", (await focused()).name);
  check("the search field is reached", await step((at) => at.tag === "INPUT"));
  await page.keyboard.type("damson catsup");
  await page.keyboard.press("Enter");
  await page.waitForURL(/search/);
  check("a result is reached", await step((at) => at.href.startsWith("/recipe?id=")));
  await page.keyboard.press("Enter");
  await page.waitForURL(/recipe/);
  check("a reading in print is reached", await step((at) => at.href.startsWith("#reading-")));
  check("and its note shows", await page.locator(".reading-note:visible").count() === 1);
  await page.keyboard.press("Escape");
  check("and goes on Escape", await page.locator(".reading-note:visible").count() === 0);
  check("the variants are reached", await step((at) => at.name === "Gather its variants"));
  await page.keyboard.press("Enter");
  await page.waitForURL(/variants/);
  check("a tick is reached", await step((at) => at.tag === "INPUT"));
  await page.keyboard.press("Space");
  check("the comparison is reached", await step((at) => at.name === "Compare those ticked", 300));
  await page.keyboard.press("Enter");
  await page.waitForURL(/comparison/);
  check("the comparison is shown", /compared/.test(await page.title()));
  await context.close();
}

export async function withoutScripts(browser, address) {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(address);
  await page.getByLabel("The dish, by any of its names").fill("damson catsup");
  await page.getByRole("button", { name: "Search the shelf" }).click();
  await page.getByRole("link", { name: "Gather the variants" }).click();
  await page.getByRole("button", { name: "Compare those ticked" }).click();
  check("the job is done without scripts", /compared/.test(await page.title()), await page.title());
  await page.goto(`${address}/shelf`);
  await page.getByLabel("The file, plain text or HTML").setInputFiles({ name: "tidy.txt", mimeType: "text/plain", buffer: Buffer.from(newBook()) });
  await page.getByLabel("Title").fill("The Tidy Pantry");
  await page.getByLabel("Author").fill("Prudence Rillock");
  await page.getByLabel("Year of this edition").fill("1871");
  await page.getByRole("button", { name: "Add it to the shelf" }).click();
  for (let i = 0; i < 100 && /at work|waiting/.test(await page.locator(".jobs").innerText()); i += 1) {
    await new Promise((resolve) => setTimeout(resolve, 200));
    await page.reload();
  }
  check("a book is added and seen indexed", /The Tidy Pantry/.test(await page.locator("table").innerText()), await page.locator(".jobs").innerText());
  await page.goto(`${address}/search?dish=quince+jelly`);
  check("and searched a moment later, without a restart", (await page.content()).includes("rillock-1871/"));
  await context.close();
}

function newBook() {
  let out = "THE TIDY PANTRY\n\n\n";
  for (let i = 1; i <= 12; i += 1) out += `QUINCE JELLY, No. ${i}.\n\nTake four pounds of quinces and three pounds of sugar. Boil them for an hour, strain, and pot it.\n\n\n`;
  return out;
}
