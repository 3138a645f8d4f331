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

/** Fetches a set of pages into a cache of its own; gives its name. */
async function gather() {
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
  for (const [file, hash] of files) {
    // A network's sign-in page, or a server renewed half way, must not become part of the pages.
    const answer = await fetch('/' + file, { cache: 'no-cache' });
    const bytes = await answer.arrayBuffer();
    if (!answer.ok || await sha256(bytes) !== hash.toLowerCase()) {
      await caches.delete(name);
      throw new Error(`The page ${file} is not the one that was listed.`);
    }
    await cache.put('/' + file, new Response(bytes, { headers: { 'content-type': answer.headers.get('content-type') ?? '', 'content-security-policy': answer.headers.get('content-security-policy') ?? '' } }));
  }
  await cache.put(LIST, new Response(text, { headers: { 'content-type': 'application/json' } }));
  return name;
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
