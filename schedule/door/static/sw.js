// Keeps the files of the ask page, so that it works without a network once it was
// opened. Another build of the page has another name, and takes the place of this one
// when the page is opened the next time.
"use strict";
const build = "BUILD";
const files = ["./", "ask.js", "wasm_exec.js", "planner.bin"];

addEventListener("install", e => e.waitUntil((async () => {
  const cache = await caches.open(build);
  await cache.addAll(files.map(f => new Request(f, { cache: "no-cache" })));
  await skipWaiting();
})()));

addEventListener("activate", e => e.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith("swardbook-ask-") && name !== build) await caches.delete(name);
  await clients.claim();
})()));

addEventListener("fetch", e => {
  if (e.request.method === "GET" && new URL(e.request.url).origin === location.origin) {
    e.respondWith((async () => (await (await caches.open(build)).match(e.request, { ignoreSearch: true })) ?? fetch(e.request))());
  }
});
