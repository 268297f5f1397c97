// What a kitchen sheet gives to other programs is read by them: schema.org's linked data expanded by a JSON-LD processor,
// the plan by a second reader of iCalendar (RFC 5545).
import ICAL from "ical.js";
import jsonld from "jsonld";
import { check } from "./checks.mjs";
import { gallipot, index } from "./room.mjs";

const recipe = "wimbrell-1752/0017";
const vocabulary = "https://schema.org/";

/** schema.org's context as far as expansion needs it: every term is one of its vocabulary. Nothing is fetched. */
const documentLoader = async (url) => {
  if (new URL(url).hostname !== "schema.org") throw new Error(`asked for ${url}`);
  return { contextUrl: null, documentUrl: url, document: { "@context": { "@vocab": vocabulary } } };
};

export async function checkKitchen() {
  const expanded = await jsonld.expand(JSON.parse(gallipot("cook", "--index", index, recipe, "--linked")), { documentLoader, safe: true });
  check("the sheet's linked data is one thing", expanded.length === 1, expanded.length);
  const sheet = expanded[0];
  const of = (thing, term) => thing?.[vocabulary + term];
  check("it is a Recipe", sheet["@type"]?.[0] === `${vocabulary}Recipe`, JSON.stringify(sheet["@type"]));
  check("its ingredients and steps come through", of(sheet, "recipeIngredient")?.length >= 8 && of(sheet, "recipeInstructions")?.length >= 8);
  const based = of(sheet, "isBasedOn")?.[0];
  check("the citation is what it is based on", of(based, "citation")?.[0]["@value"].includes("The Still-Room and Larder Laid Open"), JSON.stringify(based));
  const quantity = of(of(sheet, "supply")?.[0], "requiredQuantity")?.[0];
  const value = (term) => of(quantity, term)?.[0]["@value"];
  check("amounts keep their interval and a UCUM unit", value("minValue") <= value("value") && value("value") <= value("maxValue") && value("unitCode") === "ucum:g", JSON.stringify(quantity));

  const calendar = gallipot("cook", "--index", index, recipe, "--calendar", "--start", "2027-09-04T09:00");
  const events = new ICAL.Component(ICAL.parse(calendar)).getAllSubcomponents("vevent").map((one) => new ICAL.Event(one));
  check("a second reader finds the sitting before the night and the one after", events.length === 2, events.length);
  const starts = events.map((one) => one.startDate.toString()).sort();
  check("they begin when they were told to", starts[0]?.startsWith("2027-09-04T09:00"), starts[0]);
  check("none ends before it begins", events.every((one) => one.endDate.compare(one.startDate) >= 0));
  check("there are reminders", events.some((one) => one.component.getAllSubcomponents("valarm").length > 0));
}
