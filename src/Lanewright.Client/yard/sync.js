// Brings what this device wrote to the server, and what the server has to this device. Nothing leaves the device before the
// server has confirmed it, and sending again is harmless.
import { changed, count, isFull, onChange, remember, yard } from './yard.js';
import { language, t } from './words.js';

const MOST = 200;
const MOST_CHARACTERS = 700_000;
const EVERY = 30_000;
const TURN = 1_000;
const CLOCK_LIMIT = 5 * 60_000;

export const sync = {
  /** Why the last try did not succeed; null when it did. */ problem: /** @type {string|null} */ (t('Not tried yet.')),
  online: false,
  busy: false,
  at: /** @type {Date|null} */ (null),
  clock: 0,
  serverVersion: /** @type {string|null} */ (null),
};

const listeners = new Set();
let soon = 0;
let again = false;

/** Listens for a change of the state of sending. */
export function onSync(listen) {
  listeners.add(listen);
}

/** Starts to send by itself: after each change, when the network comes back, when the page is looked at, and now and then. */
export function startSync(version) {
  pageVersion = version;
  onChange((subject, own) => { if (subject && own) later(400); });
  addEventListener('online', () => later(0));
  document.addEventListener('visibilitychange', () => { if (!document.hidden) later(0); });
  setInterval(() => { if (!document.hidden) later(0); }, EVERY);
  later(0);
}

let pageVersion = '';

/** Sends after a while. */
export function later(delay) {
  clearTimeout(soon);
  soon = setTimeout(() => run(), delay);
}

/** Sends now, or soon when another page of this device is at it. */
export async function run() {
  if (sync.busy) {
    again = true;
    return;
  }
  sync.busy = true;
  tell();
  try {
    // While another page of this device is at it this one waits for its turn: what it shows of the server it must learn itself.
    if (navigator.locks) await navigator.locks.request('lanewright-sync', { ifAvailable: true }, lock => lock ? exchange() : later(TURN));
    else await exchange();
  } catch (wrong) {
    const full = isFull(wrong);
    sync.problem = wrong instanceof Trouble ? wrong.message
      : full ? t('This device is full: what the server says cannot be kept. Free some space.')
        : t('The server could not be reached. Everything is kept on this device.');
    if (!(wrong instanceof Trouble) && !full) sync.online = false;
  }
  sync.busy = false;
  await count();
  tell();
  if (again) {
    again = false;
    later(200);
  }
}

async function exchange() {
  const hello = await call('/api/hello');
  if (hello.body?.lanewright !== 1)
    throw new Trouble(t('Something other than Lanewright answered, perhaps a sign-in page of the network. Nothing was sent.'));
  sync.serverVersion = hello.body.version;
  const date = Date.parse(hello.headers.get('date') ?? '');
  const off = Number.isNaN(date) ? 0 : Date.now() - date;
  sync.clock = Math.abs(off) > CLOCK_LIMIT ? off : 0;
  const me = (await call('/api/me')).body;
  yard.mode = me?.mode ?? 'local';
  yard.signedIn = me?.person ?? null;
  yard.role = me?.role ?? null;
  sync.online = true;
  if (yard.mode === 'accounts') {
    if (!yard.signedIn) throw new Trouble(t('Sign in to send. Everything is kept on this device.'));
    if (yard.signedIn !== yard.person) await remember('person', yard.signedIn);
  }
  await send();
  await sendPhotos();
  await fetchLists();
  await fetchTests();
  sync.problem = null;
  sync.at = new Date();
}

async function send() {
  const waiting = [...await yard.store.entriesIn('phone'), ...await yard.store.entriesIn('wait')]
    .map(record => record.entry).sort((a, b) => a.seq - b.seq);
  for (let from = 0; from < waiting.length;) {
    const batch = [];
    for (let size = 0; from < waiting.length && batch.length < MOST; from++) {
      size += JSON.stringify(waiting[from]).length;
      if (batch.length && size > MOST_CHARACTERS) break;
      batch.push(waiting[from]);
    }
    const answer = await call('/api/entries', { method: 'POST', body: JSON.stringify({ entries: batch }) });
    if (!Array.isArray(answer.body?.results)) throw new Trouble(t('The server answered in a way this page does not know. Everything is kept here.'));
    const marks = [];
    answer.body.results.forEach((one, i) => {
      const id = one.id ?? batch[i]?.id;
      if (one.status === 'accepted' || one.status === 'have') marks.push({ id, state: 'sent', number: one.number });
      else if (one.status === 'wait') marks.push({ id, state: 'wait', reason: one.reason });
      else marks.push({ id, state: 'refused', reason: one.reason ?? one.status });
    });
    await yard.store.markEntries(marks);
    await count();
    tell();
    for (const subject of new Set(batch.map(entry => entry.subject))) changed(subject, false);
  }
}

async function sendPhotos() {
  for (const photo of await yard.store.photos()) {
    if (photo.state !== 'phone') continue;
    const answer = await call('/api/photos/' + photo.id, { method: 'PUT', body: photo.blob, type: photo.blob.type, take: [404, 413, 422, 403] });
    if (answer.ok) await yard.store.markPhoto(photo.id, 'sent');
    else if (answer.status !== 404) await yard.store.markPhoto(photo.id, 'refused', answer.body?.title ?? `status ${answer.status}`);
    await count();
    tell();
  }
}

async function fetchLists() {
  const register = (await call('/api/register')).body;
  if (JSON.stringify(register) !== JSON.stringify(yard.register)) await remember('register', register);
  const tests = (await call('/api/tests?state=all&most=100')).body.tests.map(one => ({ ...one.test, results: one.results }));
  if (JSON.stringify(tests) !== JSON.stringify(yard.tests)) await remember('tests', tests);
}

/**
 * Takes in what others wrote about the tests that this device holds. They are counted: the number of the latest entry says
 * nothing of those that others sent before it.
 */
async function fetchTests() {
  const held = new Map();
  for (const record of await yard.store.allEntries()) {
    if (!record.entry.kind.startsWith('test.')) continue;
    held.set(record.subject, (held.get(record.subject) ?? 0) + (record.state === 'sent' ? 1 : 0));
  }
  for (const test of yard.tests) {
    if (held.has(test.id) && held.get(test.id) < test.entries) await fetchTest(test.id);
  }
}

/** Takes in all entries of one test; false when the server does not have it. */
export async function fetchTest(id) {
  const answer = await call(`/api/tests/${encodeURIComponent(id)}/entries`, { take: [404] });
  if (!answer.ok) return false;
  const own = new Map((await yard.store.entriesOf(id)).map(record => [record.id, record]));
  const news = answer.body.entries.filter(entry => own.get(entry.id)?.state !== 'sent');
  if (news.length) {
    await yard.store.takeEntries(news);
    changed(id, false);
  }
  return true;
}

/** Asks the server; throws with words for the person when something else answers or it refuses. */
export async function call(path, { method = 'GET', body = undefined, type = 'application/json', take = [] } = {}) {
  const headers = { 'x-lanewright-page': pageVersion, 'x-lanewright-language': language, ...(body === undefined ? {} : { 'content-type': type }) };
  const answer = await fetch(path, { method, body, headers, cache: 'no-store', credentials: 'same-origin', redirect: 'error' });
  const isOurs = answer.headers.has('x-lanewright');
  const parsed = await answer.json().catch(() => null);
  if (!isOurs) throw new Trouble(t('Something other than Lanewright answered, perhaps a sign-in page of the network. Nothing was lost.'));
  if (answer.ok || take.includes(answer.status)) return { ok: answer.ok, status: answer.status, headers: answer.headers, body: parsed };
  if (answer.status === 401) throw new Trouble(t('Sign in to send. Everything is kept on this device.'));
  throw new Trouble(parsed?.title ? t`${parsed.title} Everything is kept on this device.` : t`The server answered ${answer.status}. Everything is kept on this device.`);
}

/** A trouble with words for the person. */
class Trouble extends Error {}

function tell() {
  for (const listen of listeners) listen(sync);
}
