// Reads a calendar with ical.js in its strict mode, and prints what it saw as
// JSON, as read.py does: read.mjs FILE.

import ICAL from "ical.js";
import { readFileSync } from "node:fs";

ICAL.design.strict = true;
const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(process.argv[2]));
const calendar = new ICAL.Component(ICAL.parse(text));

const singles = ["uid", "summary", "description", "location", "status", "transp", "url", "sequence",
  "dtstart", "dtend", "dtstamp", "last-modified"];

function seen(event) {
  const told = {};
  for (const name of singles) {
    const value = event.getFirstPropertyValue(name);
    if (value !== null) told[name] = value instanceof ICAL.Time ? value.toICALString() : String(value);
  }
  told.categories = event.getAllProperties("categories").flatMap(p => p.getValues());
  told.alarms = event.getAllSubcomponents("valarm").map(a =>
    [a.getFirstPropertyValue("trigger").toSeconds(), a.getFirstPropertyValue("description")]);
  return told;
}

console.log(JSON.stringify({
  name: calendar.getFirstPropertyValue("x-wr-calname"),
  events: calendar.getAllSubcomponents("vevent").map(seen),
  faults: [],
}));
