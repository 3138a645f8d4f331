// Keeps the pages of the yard on the device. A set of pages is one cache, named by the hash of its list; it is complete and
// every file agrees with its hash, or it is not used. Data never goes through here: requests of the API pass untouched.

const PREFIX = 'lanewright-pages-';
const LIST = '/pages.json';

self.addEventListener('install', event => event.waitUntil(gather().then(name => use(name)).then(() => self.skipWaiting())));
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', event => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin) return;
  const path = url.pathname === '/yard/' || url.pathname === '/yard' ? '/yard/index.html' : url.pathname;
  if (!path.startsWith('/yard/') && !path.startsWith('/core/') && path !== LIST) return;
  event.respondWith(serve(path, event.request));
});

self.addEventListener('message', event => {
  if (event.data === 'look') event.waitUntil(look());
  if (event.data === 'use') event.waitUntil(takeNewer());
});

async function serve(path, request) {
  const name = await inUse();
  const kept = name ? await (await caches.open(name)).match(path) : null;
  return kept ?? fetch(request);
}

// The set in use is written into a cache of its own, since a worker has no other small store.
async function inUse() {
  const mark = await (await caches.open('lanewright-in-use')).match('/in-use');
  return mark ? mark.text() : null;
}

async function use(name) {
  await (await caches.open('lanewright-in-use')).put('/in-use', new Response(name));
  for (const key of await caches.keys()) if (key.startsWith(PREFIX) && key !== name) await caches.delete(key);
}

let turn = Promise.resolve();

/** Fetches a set of pages into a cache of its own; gives its name. One after the other: each tidies up what it left half done. */
function gather() {
  turn = turn.catch(() => {}).then(gatherNow);
  return turn;
}

async function gatherNow() {
  const list = await fetch(LIST, { cache: 'no-cache' });
  if (!list.ok) throw new Error('The list of the pages could not be read.');
  const text = await list.text();
  const files = Object.entries(JSON.parse(text).files).filter(([file]) => file.startsWith('yard/') || file.startsWith('core/'));
  const name = PREFIX + await sha256(new TextEncoder().encode(text));
  if (await caches.has(name)) {
    const there = await (await caches.open(name)).keys();
    if (there.length === files.length + 1) return name;
  }
  const cache = await caches.open(name);
  const had = await keptNow();
  const left = files[Symbol.iterator]();
  // A few at a time: one after the other is slow on a busy phone, all at once hold up what a person waits for.
  const some = async () => {
    for (const [file, hash] of left) await cache.put('/' + file, await had(file, hash) ?? await fetched(file, hash));
  };
  try {
    await Promise.all(Array.from({ length: 4 }, some));
  } catch (wrong) {
    await caches.delete(name);
    throw wrong;
  }
  await cache.put(LIST, new Response(text, { headers: { 'content-type': 'application/json' } }));
  return name;
}

// What the set in use has already, file by file, so that newer pages cost a network only what is new in them.
async function keptNow() {
  const name = await inUse();
  const cache = name && await caches.has(name) ? await caches.open(name) : null;
  const list = await (await cache?.match(LIST))?.json();
  return async (file, hash) => list?.files[file] === hash ? cache.match('/' + file) : null;
}

// A network's sign-in page, or a server renewed half way, must not become part of the pages.
async function fetched(file, hash) {
  const answer = await fetch('/' + file, { cache: 'no-cache' });
  const bytes = await answer.arrayBuffer();
  if (!answer.ok || await sha256(bytes) !== hash.toLowerCase()) throw new Error(`The page ${file} is not the one that was listed.`);
  return new Response(bytes, { headers: { 'content-type': answer.headers.get('content-type') ?? '', 'content-security-policy': answer.headers.get('content-security-policy') ?? '' } });
}

async function look() {
  try {
    const name = await gather();
    if (name !== await inUse()) await tell({ pages: 'newer' });
  } catch { /* no network: the pages in use stay */ }
}

async function takeNewer() {
  const name = await gather();
  await use(name);
  await tell({ pages: 'used' });
}

async function tell(message) {
  for (const client of await self.clients.matchAll({ type: 'window' })) client.postMessage(message);
}

async function sha256(bytes) {
  const digest = await crypto.subtle.digest('SHA-256', bytes);
  return [...new Uint8Array(digest)].map(byte => byte.toString(16).padStart(2, '0')).join('');
}
