// Opens each HTML file in Chromium and checks it as a reader would meet it:
//
//   phone 360 × 740, the same with letters twice as large, a desktop, a desktop
//   at 200 %, dark, forced colours, without colour, printed on A4 and on Letter.
//
// Scripts are off on every page but the one on which the accessibility checker
// runs. A file that ends in -print.html is only printed. A page fails on any console
// message or failed request, on sideways
// scrolling, on anything the checkers of accessibility and of HTML find, on words
// that are cut off or run into each other in a drawing, on a drawing whose letters
// do not grow with the reader's, and on more printed pages than its kind may have.
//
//   node check.mjs FILE.html…
//
// ARTIFACTS  where pictures and print files go (default ./artifacts)
// CHROMIUM   the browser (default /usr/bin/chromium)

import { chromium } from "playwright-core";
import axe from "axe-core";
import { HtmlValidate } from "html-validate";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const files = process.argv.slice(2);
if (files.length === 0) {
  console.error("usage: node check.mjs FILE.html…");
  process.exit(2);
}
const artifacts = resolve(process.env.ARTIFACTS ?? "artifacts");
const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
const flags = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync"];

const views = [
  { name: "phone", width: 360, height: 740, mobile: true },
  { name: "narrow", width: 320, height: 640, mobile: true },
  { name: "phone-large-letters", width: 360, height: 740, letters: 32 },
  { name: "desktop", width: 1280, height: 900 },
  { name: "desktop-200", width: 640, height: 450, scale: 2 }, // 1280 × 900 at 200 %
  { name: "dark", width: 360, height: 740, colorScheme: "dark" },
  { name: "forced-colors", width: 1280, height: 900, forcedColors: "active" },
  { name: "gray", width: 360, height: 740, sees: "achromatopsia" }, // for its picture: nothing may hang on colour
];

// How many pages may be printed, by the end of a file's name.
const mostPages = { "-sheet.html": 1, "-print.html": 1, "-grounds.html": 3, "-worksheet.html": 3, "-sets.html": 6, "-key.html": 3 };

const tallest = 9000; // px of a picture; the rest of a long page is more of the same

let failed = 0;
function fail(file, view, what) {
  failed++;
  console.log(`FAIL ${basename(file)} [${view}] ${what}`);
}

// launch starts a browser with a fresh profile. Letters twice as large are a
// setting of the browser, not of a page, so they take one of their own.
const launch = letters => chromium.launch({
  executablePath, headless: true,
  args: letters ? [...flags, `--blink-settings=defaultFontSize=${letters}`] : flags,
});
const browsers = new Map();

// open gives an empty page as the view has it.
async function open(view, scripts) {
  const letters = view.letters ?? 0;
  if (!browsers.has(letters)) browsers.set(letters, launch(letters));
  const browser = await browsers.get(letters);
  const context = await browser.newContext({
    viewport: { width: view.width, height: view.height },
    deviceScaleFactor: view.scale ?? 1,
    isMobile: view.mobile ?? false, hasTouch: view.mobile ?? false,
    javaScriptEnabled: scripts,
    colorScheme: view.colorScheme ?? "light",
    forcedColors: view.forcedColors ?? "none",
  });
  const page = await context.newPage();
  if (view.sees) {
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setEmulatedVisionDeficiency", { type: view.sees });
  }
  return { page, close: () => context.close() };
}

// watch reports whatever the page says or asks for.
function watch(page, file, view) {
  const own = pathToFileURL(resolve(file)).href;
  page.on("console", m => fail(file, view, `console: ${m.text()}`));
  page.on("pageerror", e => fail(file, view, `error: ${e.message}`));
  page.on("request", r => { if (r.url().split("#")[0] !== own) fail(file, view, `asks for ${r.url()}`); });
}

// pages counts the sheets of a print file.
const pages = pdf => (pdf.toString("latin1").match(/\/Type\s*\/Page(?![a-zA-Z])/g) ?? []).length;

async function look(file, view) {
  const { page, close } = await open(view, false);
  try {
    watch(page, file, view.name);
    await page.goto(pathToFileURL(resolve(file)).href);
    const size = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth, high: document.documentElement.scrollHeight, room: document.documentElement.clientWidth,
      cut: [...document.querySelectorAll("svg.drawing text")].filter(t => {
        const svg = t.ownerSVGElement.getBoundingClientRect(), b = t.getBoundingClientRect();
        return b.left < svg.left - 1 || b.right > svg.right + 1 || b.top < svg.top - 1 || b.bottom > svg.bottom + 1;
      }).map(t => t.textContent),
      mixed: [...document.querySelectorAll("svg.drawing")].flatMap(svg => {
        const words = [...svg.querySelectorAll("text")].map(t => [t.textContent, t.getBoundingClientRect()]).filter(([, b]) => b.width);
        return words.flatMap(([a, b], i) => words.slice(i + 1)
          .filter(([, c]) => b.left < c.right - 1 && c.left < b.right - 1 && b.top + 3 < c.bottom - 3 && c.top + 3 < b.bottom - 3)
          .map(([c]) => `${a} / ${c}`));
      }),
      small: [...document.querySelectorAll("svg.drawing text")].filter(t => t.getBoundingClientRect().width).map(t => {
        const svg = t.ownerSVGElement;
        return parseFloat(getComputedStyle(t).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      }).reduce((a, b) => Math.min(a, b), 99),
    }));
    if (size.wide > size.room) fail(file, view.name, `scrolls sideways: ${size.wide} px in ${size.room}`);
    for (const w of size.cut) fail(file, view.name, `a word runs out of the drawing: ${w}`);
    for (const w of size.mixed) fail(file, view.name, `words run into each other in the drawing: ${w}`);
    const least = 9.5 * (view.letters ?? 16) / 16;
    if (size.small < least) fail(file, view.name, `letters of ${size.small.toFixed(1)} px in the drawing, want ${least}`);
    const name = `${basename(file, ".html")}-${view.name}`;
    await page.screenshot({ path: join(artifacts, `${name}.png`), fullPage: true, caret: "initial",
      clip: { x: 0, y: 0, width: view.width, height: Math.min(size.high, tallest) } });
    if (view.name === "desktop") await printed(page, file);
  } finally {
    await close();
  }
}

// printed counts the pages of both sizes of paper.
async function printed(page, file) {
  for (const format of ["A4", "Letter"]) {
    const pdf = await page.pdf({ path: join(artifacts, `${basename(file, ".html")}-${format}.pdf`), format, preferCSSPageSize: false });
    console.log(`     ${basename(file)} prints on ${pages(pdf)} pages of ${format}`);
    const most = Object.entries(mostPages).find(([end]) => file.endsWith(end))?.[1] ?? Infinity;
    if (pages(pdf) > most) fail(file, format, `prints on ${pages(pdf)} pages, want ${most}`);
  }
}

// print looks at nothing but the paper.
async function print(file) {
  const { page, close } = await open(views[2], false);
  try {
    await page.goto(pathToFileURL(resolve(file)).href);
    await printed(page, file);
  } finally {
    await close();
  }
}

// validate holds the markup to the HTML standard. The page is written by a
// template, so that what only concerns its style of writing is left aside.
const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: {
    "no-inline-style": "off", "void-style": "off", "attribute-boolean-style": "off", "no-trailing-whitespace": "off",
    "doctype-style": "off", "long-title": "off", "no-raw-characters": "off", "require-sri": "off",
    // Roles are said where the style sheet changes what a table is displayed as.
    "no-redundant-role": "off", "prefer-native-element": "off",
  },
});
async function validate(file) {
  const report = await validator.validateString(await readFile(file, "utf8"));
  for (const m of report.results.flatMap(r => r.messages)) fail(file, "html", `${m.line}:${m.column} ${m.ruleId}: ${m.message}`);
}

async function axeCheck(file, view) {
  const { page, close } = await open(view, true);
  try {
    // The page's own policy lets no script run; only the checker's copy is
    // opened without it.
    const html = (await readFile(file, "utf8")).replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, "");
    await page.setContent(html);
    await page.evaluate(axe.source);
    const found = await page.evaluate(() => globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }));
    for (const v of found.violations) fail(file, `axe ${view.name}`, `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(" | ")}`);
    console.log(`     ${basename(file)} [axe ${view.name}] ${found.passes.length} rules hold`);
  } finally {
    await close();
  }
}

await mkdir(artifacts, { recursive: true });
async function check(file) {
  if (file.endsWith("-print.html")) return print(file);
  await validate(file);
  for (const view of views) await look(file, view);
  for (const view of views.filter(v => ["phone", "dark", "desktop"].includes(v.name))) await axeCheck(file, view);
}
const waiting = [...files];
await Promise.all(Array.from({ length: 2 }, async () => { // as many at once as the smallest machine has processors
  while (waiting.length > 0) await check(waiting.shift());
}));
for (const b of browsers.values()) await (await b).close();
await writeFile(join(artifacts, "result.txt"), failed ? `${failed} failures\n` : "clean\n");
console.log(failed ? `${failed} failures` : `clean: ${files.length} pages`);
process.exit(failed ? 1 : 0);
