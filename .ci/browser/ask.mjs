// Walks through the ask page as a homeowner does, in Chromium slowed four times, from
// static files alone: questions while the planner loads, a mistake at its field, the
// program, back and reload, the saved .ics, and all of it again without a network. It
// prints sizes and times, and fails if the first program takes over 3 s.
//
//   node ask.mjs FOLDER PAGES SWARDBOOK    the folder "publish --ask" wrote, where the pages
//                                          go that check.mjs is to look at, and the program

import { chromium } from "playwright-core";
import axe from "axe-core";
import { spawn } from "node:child_process";
import { createServer } from "node:http";
import { mkdir, readFile, stat, writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";

const [folder, out, swardbook] = process.argv.slice(2).map(f => resolve(f));
const artifacts = resolve(process.env.ARTIFACTS ?? "artifacts");
await mkdir(artifacts, { recursive: true });
let failed = 0;
const check = (ok, what) => { if (!ok) { failed++; console.log(`FAIL ask page: ${what}`); } };

const types = { html: "text/html; charset=utf-8", js: "text/javascript", bin: "application/octet-stream" };
const server = createServer(async (q, r) => {
  const name = new URL(q.url, "http://x").pathname.replace(/\/$/, "/index.html");
  try {
    const data = await readFile(join(folder, name));
    r.writeHead(200, { "content-type": types[name.split(".").pop()] ?? "text/plain" });
    r.end(data);
  } catch { r.writeHead(404); r.end(); }
}).listen(0, "127.0.0.1");
await new Promise(done => server.once("listening", done));
const at = `http://127.0.0.1:${server.address().port}/ask/`;

let size = 0;
for (const f of ["index.html", "ask.js", "sw.js", "wasm_exec.js", "planner.bin"]) size += (await stat(join(folder, "ask", f))).size;
console.log(`     ask page: ${(size / 1e6).toFixed(2)} MB in all, the planner packed, tables of climate and ZIP codes in it`);
check(size < 4.5e6, `${size} bytes`);

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"] });
const context = await browser.newContext({ viewport: { width: 320, height: 740 }, acceptDownloads: true });
const page = await context.newPage();
const slow = await context.newCDPSession(page);
await slow.send("Emulation.setCPUThrottlingRate", { rate: 4 });
page.on("pageerror", e => check(false, e.message));
page.on("console", m => { if (m.type() === "error" && !/favicon|404/.test(m.text())) check(false, `console: ${m.text()}`); });

const began = Date.now();
await page.goto(at);
await page.fill("[name='place.zip']", "44109");
await page.press("[name='place.zip']", "Enter"); // while the planner loads
check(page.url().endsWith("#grass-lawn"), `Enter leads to ${page.url()}`);
await page.waitForFunction(() => window.swardbook, null, { timeout: 120000 });
console.log(`     ask page: planner ready after ${((Date.now() - began) / 1000).toFixed(1)} s`);

const answers = { "area.lawn.size": "40 x 65 - 24 x 30", "area.lawn.soil.ph": "5.2", "area.lawn.soil.buffer.ph": "64",
  "area.lawn.soil.phosphorus": "14", "area.lawn.soil.potassium": "61", "area.lawn.soil.magnesium": "48", "area.lawn.soil.sampled": "2026-09-29",
  "area.lawn.seeded": "2026-09-03" };
for (const [name, text] of Object.entries(answers)) await page.fill(`[name='${name}']`, text);
await page.selectOption("[name='area.lawn.grass']", "tall fescue");
await page.selectOption("[name='area.lawn.soil.method']", "mehlich-3");
await page.selectOption("[name='area.lawn.soil.buffer.method']", "smp");
const program = () => page.locator("button[value=program]").click();
await program();
await page.waitForSelector("#wrong");
check(/64 is outside 3 to 9/.test(await page.textContent("#q-area-lawn-soil-buffer-ph-err")), "the mistake does not stand at its field");
check(await page.inputValue("[name='area.lawn.size']") === "40 x 65 - 24 x 30", "the size is lost");
await look("ask-wrong");

await page.reload();
await page.waitForFunction(() => window.swardbook);
await page.waitForTimeout(500);
check(await page.inputValue("[name='area.lawn.soil.buffer.ph']") === "64", "reload loses what was typed");
await page.fill("[name='area.lawn.soil.buffer.ph']", "6.4");
// The first program after the planner came.
const pressed = Date.now();
await program();
await page.waitForSelector("#keep");
const took = (Date.now() - pressed) / 1000;
console.log(`     ask page: first program ${took.toFixed(1)} s after the button`);
check(took < 3, `the first program takes ${took} s`);
check(/#\/[\w-]{60,}/.test(page.url()), `the address carries no answers: ${page.url()}`);
check(/pH 5.2, very low/.test(await page.textContent("#limits")), "nothing limits the grass");
await look("ask-answer");

const [saved] = await Promise.all([page.waitForEvent("download"), page.click("text=Save the .ics")]);
const ics = await readFile(await saved.path(), "utf8");
check(saved.suggestedFilename() === "lawn.ics" && ics.startsWith("BEGIN:VCALENDAR") && ics.includes("BEGIN:VEVENT"), "the .ics is no calendar");
console.log(`     ask page: ${ics.split("BEGIN:VEVENT").length - 1} events saved`);

const link = page.url();

// A server that is given the same code says the same: the files byte for byte, the calendar
// but for the addresses of the two.
const code = link.split("#/")[1];
const other = spawn(swardbook, ["serve", "--ask", "--addr", "127.0.0.1:0", "--quiet"], { stdio: ["ignore", "ignore", "pipe"] });
const there = await new Promise(done => other.stderr.on("data", d => { const m = /http:\/\/[\d.:]+/.exec(d); if (m) done(m[0]); }));
const get = async path => (await fetch(`${there}/p/${code}${path}`)).text();
const here = (what, link) => page.evaluate(q => JSON.parse(swardbook(JSON.stringify(q))).page,
  { what, code, link, id: "0".repeat(16), today: new Date().toLocaleDateString("sv") });
check(await get("/site.toml") === await here("site"), "a server writes another site file");
const events = async (ics, address) => ics.replace(/\r\n /g, "").replaceAll(address, "ADDRESS").replace(/ADDRESS#job-[\w-]*/g, "ADDRESS").split("\r\n").filter(l => !/^(SOURCE|URL|X-ORIGINAL-URL)[:;]/.test(l)).join("\n");
const [a, b] = [await events(await get(".ics"), `${there}/p/${code}/sheet`), await events(await here("calendar", at), `${at}#/${code}`)];
check(a.includes("BEGIN:VEVENT") && a === b, `a server writes another calendar: ${a.split("\n").find((l, i) => l !== b.split("\n")[i])}`);
other.kill();
console.log(`     ask page: a server gives the same site file, and the same calendar of ${a.length} characters but for addresses`);

await page.click("text=Change an answer");
await page.waitForSelector("#form");
await page.fill("[name='area.lawn.size']", "900");
await program();
await page.waitForSelector("#moved");
check(/#\/[\w-]+\/was\//.test(page.url()), "what moved is not in the address");
await look("ask-moved");
await page.goBack();
await page.waitForSelector("#form");
await page.goto("about:blank");

await context.setOffline(true);
await page.goto(link);
await page.waitForSelector("#keep", { timeout: 120000 });
check(true, "");
console.log("     ask page: works without a network");
await browser.close();
server.close();
process.exit(failed ? 1 : 0);

// look takes a picture, and holds the page to the width of the screen and to what the
// checker of accessibility finds.
async function look(name) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  check(wide <= 320, `${name} scrolls sideways: ${wide} px in 320`);
  await mkdir(out, { recursive: true });
  await writeFile(join(out, `${name}.html`), await page.content());
  await page.screenshot({ path: join(artifacts, `${name}.png`), fullPage: true, caret: "initial" });
  await page.evaluate(axe.source);
  const found = await page.evaluate(() => axe.run(document));
  for (const v of found.violations) check(false, `${name}: ${v.id}: ${v.nodes.map(n => n.html.slice(0, 120)).join(" | ")}`);
}
