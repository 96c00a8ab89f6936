// Makes the picture of the README: a homeowner's three minutes, on a phone, from the pages
// that door.mjs wrote down.
//
//   node picture.mjs FOLDER OF PAGES PICTURE.png

import { chromium } from "playwright-core";
import { resolve, join } from "node:path";
import { pathToFileURL } from "node:url";

const [folder, picture] = process.argv.slice(2).map(f => resolve(f));
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
const phone = await browser.newContext({ viewport: { width: 320, height: 620 }, deviceScaleFactor: 1.5, javaScriptEnabled: false });
const page = await phone.newPage();
const screens = [];
for (const [file, at, says] of [["server-slip", "#where", "1. The ZIP is said back"], ["server-slip", "#grass-lawn", "2. Size, grass, sown when"],
  ["server-slip", "#sheet-lawn", "3. The lab’s numbers"], ["server-answer", "h1", "4. What to do, and when"], ["server-answer", "#keep", "5. The link, the calendar"]]) {
  await page.goto(pathToFileURL(join(folder, file + ".html")).href);
  await page.evaluate(s => document.querySelector(s).scrollIntoView(), at);
  screens.push([says, (await page.screenshot({ caret: "initial" })).toString("base64")]);
}
const sheet = await browser.newPage({ viewport: { width: 5 * 250 + 20, height: 505 } });
await sheet.setContent(`<body style="margin:10px;background:#fff;font:700 15px sans-serif;display:flex;gap:14px">` +
  screens.map(([says, png]) => `<div style="width:236px"><p style="margin:0 0 6px">${says}</p><img style="width:234px;border:1px solid #888" src="data:image/png;base64,${png}"></div>`).join(""));
await sheet.screenshot({ path: picture });
await browser.close();
