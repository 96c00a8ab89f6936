// Walks through the ask page where a server answers, as a homeowner does: by keyboard
// alone, without a script, on a phone of 320 px. First a server for anybody, then
// "swardbook ask" with a site file. It writes down every page that it meets, for
// check.mjs to look at, counts steps and keys, reads the QR code with another program's
// eyes, and follows the calendar with programs of the command line (../subscribe/follow).
//
//   node door.mjs SWARDBOOK FOLDER FOR THE PAGES
//
// It needs zbarimg (Debian: apt-get install zbar-tools).

import { chromium } from "playwright-core";
import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, mkdir, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const [swardbook, out] = process.argv.slice(2).map(f => resolve(f));
const artifacts = resolve(process.env.ARTIFACTS ?? "artifacts");
await mkdir(artifacts, { recursive: true });
await mkdir(out, { recursive: true });
let failed = 0;
const check = (ok, what) => { if (!ok) { failed++; console.log(`FAIL ask page of a server: ${what}`); } };

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"] });
const context = await browser.newContext({ viewport: { width: 320, height: 740 }, javaScriptEnabled: false, acceptDownloads: true });
const page = await context.newPage();
page.on("console", m => { if (!/favicon|status of 422/.test(m.text())) check(false, `console: ${m.text()}`); });
let steps = 0, keys = 0, tabs = 0;

// start runs swardbook until it says its address.
async function start(args, cwd) {
  const process = spawn(swardbook, args, { cwd });
  let said = "";
  for (const s of [process.stdout, process.stderr]) s.on("data", d => said += d);
  for (let i = 0; i < 200 && !/http:\/\/\S+/.test(said); i++) await new Promise(r => setTimeout(r, 50));
  return { process, at: said.match(/http:\/\/[^\s,]+/)[0].replace(/\/$/, ""), said: () => said };
}
async function stop(s) {
  const from = Date.now(), ended = once(s.process, "exit");
  s.process.kill("SIGINT");
  await ended;
  check(Date.now() - from < 1500, `it ended ${Date.now() - from} ms after Ctrl-C`);
}

// press sends keys, and counts them.
async function press(key) { keys++; await page.keyboard.press(key); }
async function type(text) { keys += text.length; await page.keyboard.type(text); }
// tab goes on to a field or button, as only the Tab key can.
async function tab(selector) {
  for (let i = 0; i < 120; i++) {
    if (await page.evaluate(s => document.activeElement?.matches(s), selector)) return;
    await press("Tab");
    tabs++;
  }
  check(false, `the Tab key never comes to ${selector}`);
}
const field = (name, text) => tab(`[name='${name}']`).then(() => type(text));
async function button(value) {
  await tab(`button[value='${value}']`);
  steps++;
  await Promise.all([page.waitForNavigation(), press("Enter")]);
}
// date types a day into the three parts of a field of days, in the order of en-US.
async function date(name, day) {
  const [y, m, d] = day.split("-");
  await field(name, m + d + y);
}

// seen writes a page down, and looks at it.
async function seen(name) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  check(wide <= 320, `${name} scrolls sideways: ${wide} px in 320`);
  await writeFile(join(out, `${name}.html`), await page.content());
  await page.screenshot({ path: join(artifacts, `${name}-320.png`), fullPage: true, caret: "initial" });
}

const port = await new Promise(done => import("node:net").then(({ createServer }) => {
  const s = createServer().listen(0, "127.0.0.1", () => { const { port } = s.address(); s.close(() => done(port)); });
}));
const server = await start(["serve", "--ask", "--addr", `127.0.0.1:${port}`, "--base", `http://127.0.0.1:${port}`]);
const base = `http://127.0.0.1:${port}`;
await page.goto(`${base}/ask`);
await seen("server-ask");
await field("place.zip", "44109");
await Promise.all([page.waitForNavigation(), press("Enter")]);
steps++;
check(/\/p\/[\w-]+\/ask\?go=grass-lawn#grass-lawn$/.test(page.url()), `Enter leads to ${page.url()}`);
check(/Understood: 44109, Cleveland OH/.test(await page.textContent("#where")), "the ZIP is not said back");
await field("area.lawn.size", "40 x 65 - 24 x 30");
await field("area.lawn.grass", "tall f");
await date("area.lawn.seeded", "2026-09-03");
await button("sheet-lawn");
check(page.url().endsWith("#sheet-lawn"), `on to ${page.url()}`);
await date("area.lawn.soil.sampled", "2026-09-29");
await field("area.lawn.soil.method", "mehlich-3");
await field("area.lawn.soil.ph", "5.2");
await field("area.lawn.soil.buffer.ph", "64"); // a slip
await field("area.lawn.soil.buffer.method", "smp");
await field("area.lawn.soil.phosphorus", "14");
await field("area.lawn.soil.potassium", "61");
await field("area.lawn.soil.magnesium", "48");
await button("shed");
check(/64 is outside 3 to 9/.test(await page.textContent("#q-area-lawn-soil-buffer-ph-err")), "the slip is not said at its field");
await seen("server-slip");
await tab("[name='area.lawn.soil.buffer.ph']");
await press("Control+a");
await type("6.4");
await field("material.bag1.kind", "lime");
await button("already"); // the fields of lime are shown by the choice; its value is still missing
await field("material.bag1.cce", "90");
await field("material.bag1.pack", "40 lb");
await field("material.bag1.on_hand", "3");
await button("more-bag");
check(await page.locator("[name='material.bag2.kind']").count() === 1, "no second bag");
await field("material.bag2.kind", "fert");
await field("form.material.bag2.n", "22");
await field("form.material.bag2.p", "2");
await field("form.material.bag2.k", "8");
await field("material.bag2.pack", "36 lb");
await field("material.bag2.on_hand", "0.5");
await button("already");
await field("record.1.material", "fert");
await date("record.1.date", "2026-10-04");
await field("record.1.amount", "9 lb");
const before = page.url();
await page.reload();
check(page.url() === before && await page.inputValue("[name='area.lawn.size']") === "40 x 65 - 24 x 30", "reload loses what was sent");
await tab("[name='record.1.material']");
await type("fert");
await date("record.1.date", "2026-10-04");
await tab("[name='record.1.amount']");
await press("Control+a");
await type("9 lb");
await button("who");
await button("program");
check(/\/p\/[\w-]+$/.test(page.url()), `the program is at ${page.url()}`);
console.log(`     ask page of a server: ${steps} steps and ${keys} keys to the program, ${tabs} of them Tab, one slip and a reload on the way`);
await seen("server-answer");
const link = page.url();
check(/pH 5.2, very low/.test(await page.textContent("#limits")), "nothing limits the grass");

// The QR code, to other eyes.
await page.locator("svg.code").screenshot({ path: join(artifacts, "server-code.png") });
const read = execFileSync("zbarimg", ["--raw", "-q", join(artifacts, "server-code.png")], { encoding: "utf8" }).trim();
check(read === link, `the QR code reads ${read}`);
console.log(`     ask page of a server: a link of ${link.length} characters, read off the screen by zbarimg`);

const subscribe = (await page.getAttribute("a[href^='webcal:']", "href")).replace("webcal:", "http:");
const ics = await (await fetch(subscribe)).text();
check(ics.startsWith("BEGIN:VCALENDAR") && ics.includes("BEGIN:VEVENT"), "the calendar is none");
const listed = execFileSync(join(import.meta.dirname, "../subscribe/follow"), [subscribe], { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] }).trim().split("\n");
check(listed.length === ics.split("BEGIN:VEVENT").length - 1 && listed.some(l => /Lime/.test(l)), `followed, the calendar lists ${listed}`);
console.log(`     ask page of a server: followed by vdirsyncer, khal lists ${listed.length} jobs:\n       ${listed.join("\n       ")}`);

// Back and forth, and another answer.
await page.goBack();
check(await page.inputValue("[name='area.lawn.soil.ph']") === "5.2", "back loses the answers");
await page.goForward();
await page.click("text=Change an answer");
await page.fill("[name='area.lawn.size']", "900 sq ft");
await page.click("button[value='sheet-lawn']");
await page.click("button[value='program']");
check(/\?was=[\w-]+$/.test(page.url()) && await page.locator("#moved").count() === 1, `what moved is not said: ${page.url()}`);
await seen("server-moved");
await page.reload();
check(await page.locator("#moved").count() === 1, "reload forgets what moved");
await stop(server);
const code = new URL(link).pathname.split("/").pop();
check(!server.said().includes(code) && !server.said().includes("44109"), "the log holds what was typed");

// At home, into a site file.
const home = await mkdtemp(join(tmpdir(), "ask-"));
const asked = await start(["ask", "--no-open"], home);
await page.goto(asked.at + "/");
await page.fill("[name='place.zip']", "44109");
await page.fill("[name='area.lawn.size']", "40 by 65");
await page.fill("[name='area.lawn.soil.ph']", "5.2");
await page.click("button[value='program']");
check(/at=wrong#wrong$/.test(page.url()) && await page.inputValue("[name='area.lawn.size']") === "40 by 65", `mistakes lead to ${page.url()}`);
await seen("home-slip");
await page.reload();
check(await page.locator("#wrong").count() === 1 && await page.inputValue("[name='area.lawn.soil.ph']") === "5.2", "reload loses what was typed");
await page.fill("[name='area.lawn.size']", "40 x 65");
await page.selectOption("[name='area.lawn.grass']", "tall fescue");
await page.fill("[name='area.lawn.soil.sampled']", "2026-09-29");
await page.click("button[value='program']");
check(page.url().endsWith("/program"), `the program is at ${page.url()}: ${await page.locator("#wrong").allTextContents()}`);
await seen("home-answer");
const file = await readFile(join(home, "lawn.toml"), "utf8");
check(/ph = 5.2/.test(file), `the site file:\n${file}`);
await page.click("text=Change an answer");
await page.fill("[name='area.lawn.soil.ph']", "5.8");
await page.click("button[value='program']");
check(await page.locator("#moved").count() === 1, "what moved is not said at home");
check(await readFile(join(home, "lawn.toml"), "utf8") === file.replace("ph = 5.2", "ph = 5.8"), "more changed in the file than the answer");
execFileSync(swardbook, ["check", join(home, "lawn.toml")]);
await stop(asked);
await browser.close();
process.exit(failed ? 1 : 0);
