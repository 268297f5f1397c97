// Every page: accessible, valid, at home on a phone, in the dark and at twice the text; silent on the console, and asking
// nothing of any other host.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { HtmlValidate } from "html-validate";
import { check } from "./checks.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: {
    // The house's own ways of writing: what they forbid is valid HTML.
    "long-title": "off", "no-trailing-whitespace": "off", "void-style": "off", "attribute-boolean-style": "off",
    "no-implicit-button-type": "off", "no-raw-characters": "off", "doctype-style": "off",
    // A tooltip's element is described by the mark beside it.
    "prefer-native-element": "off",
  },
});

/** A browser's page that remembers what it should not have said or asked. */
export async function watched(context, address) {
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  page.wrongs = [];
  page.on("console", (message) => { if (["error", "warning"].includes(message.type())) page.wrongs.push(message.text()); });
  page.on("pageerror", (error) => page.wrongs.push(String(error)));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !url.startsWith("data:") && url !== "about:blank") page.wrongs.push(`asked ${url}`);
  });
  return page;
}

async function accessible(page, name) {
  // Run outside the page's own policy, which forbids scripts from elsewhere.
  await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const answer = await globalThis.axe.run(document, { preload: false, runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] });
    return answer.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => `${n.target.join(" ")} ${n.any.map((a) => a.message).join("; ")}`).join(" | ")}`);
  });
  check(`${name} is accessible`, found.length === 0, found.join("\n    "));
}

const overflow = (page) => page.evaluate(() => {
  const wide = document.documentElement.clientWidth;
  return document.documentElement.scrollWidth > wide + 1
    ? [...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > wide + 1 && !e.closest(".wide, .plot-frame, .histogram, .unseen, .skip, .reading-note")).slice(0, 4).map((e) => `${e.tagName}.${e.className} ${Math.round(e.getBoundingClientRect().right)}`).join(", ") || "wider"
    : "";
});

export async function checkPages(browser, address, paths) {
  const wide = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const phone = await browser.newContext({ viewport: { width: 320, height: 640 }, colorScheme: "dark" });
  for (const path of paths) {
    const page = await watched(wide, address);
    const answer = await page.goto(address + path);
    check(`${path} answers`, answer.status() === 200 || path.includes("no-such"), answer.status());
    const report = await validator.validateString(await answer.text());
    check(`${path} is valid HTML`, report.valid, report.results.flatMap((r) => r.messages.filter((m) => m.severity === 2).slice(0, 6).map((m) => `${m.line}: ${m.ruleId}: ${m.message}`)).join("\n    "));
    await accessible(page, `${path} in the light`);
    check(`${path} does not run over the side`, await overflow(page) === "", await overflow(page));
    await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
    check(`${path} holds at twice the text`, await overflow(page) === "", await overflow(page));
    const quiet = page.wrongs.filter((w) => !w.includes("inline style") && !(path.includes("no-such") && w.includes("404")));
    check(`${path} is quiet and asks no one else`, quiet.length === 0, quiet.join("\n    "));
    await page.close();
    const small = await watched(phone, address);
    await small.goto(address + path);
    await accessible(small, `${path} in the dark on a phone`);
    check(`${path} fits 320 pixels`, await overflow(small) === "", await overflow(small));
    await small.close();
  }
  await wide.close();
  await phone.close();
}
