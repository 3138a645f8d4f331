// The state of this page: who works on which device, the entries of the test in hand, and the one road by which anything
// is written down.
import { foldTest, textOf } from './fold.js';
import { newId } from './ids.js';
import { openStore } from './store.js';
import { t } from './words.js';

/** This page among the pages of the device: two pages may type into one field at once. */
export const pageId = newId();

export const yard = {
  /** @type {any} */ store: null,
  device: '',
  person: '',
  /** 'local' or 'accounts'. */ mode: 'local',
  signedIn: /** @type {string|null} */ (null),
  role: /** @type {string|null} */ (null),
  settings: { units: 'us', culture: 'en-US', look: 'device' },
  register: /** @type {any} */ (null),
  tests: /** @type {any[]} */ ([]),
  unsent: 0,
  waiting: 0,
  refused: 0,
};

const listeners = new Set();
const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('lanewright-yard') : null;

/** Listens for changes of what is stored: (subject or null for other facts, whether this page wrote it). */
export function onChange(listen) {
  listeners.add(listen);
}

/** Tells this page and the device's other pages that something was stored. */
export function changed(subject = null, own = true) {
  channel?.postMessage({ subject });
  tell(subject, own);
}

function tell(subject, own) {
  for (const listen of listeners) listen(subject, own);
}

/** Opens the store and reads what the page needs to begin. */
export async function openYard() {
  yard.store = await openStore();
  yard.device = await yard.store.settleFact('device', newId());
  await readFacts();
  if (channel) channel.onmessage = async ({ data }) => {
    await readFacts();
    tell(data.subject, false);
  };
  // Held as long as this page lives, so that another page knows whose drafts nobody types any more.
  navigator.locks?.request('page-' + pageId, () => new Promise(() => {}));
  await takeAhead();
  await adoptDrafts();
}

async function readFacts() {
  yard.person = await yard.store.fact('person') ?? '';
  yard.settings = { ...defaults(), ...await yard.store.fact('settings') };
  yard.register = await yard.store.fact('register');
  yard.tests = await yard.store.fact('tests') ?? [];
  await count();
}

/** Counts what the server does not have. */
export async function count() {
  const photos = (await yard.store.photos()).filter(photo => photo.state === 'phone').length;
  yard.unsent = await yard.store.count('phone') + photos;
  yard.waiting = await yard.store.count('wait');
  yard.refused = await yard.store.count('refused');
}

// The decimal mark and units that people in the browser's country use.
function defaults() {
  const known = ['en-US', 'en-GB', 'de-DE', 'fr-FR', 'fr-CA', 'fi-FI', 'nb-NO', 'tr-TR'];
  const language = navigator.language || 'en-US';
  const culture = known.find(name => name.toLowerCase() === language.toLowerCase())
    ?? known.find(name => name.slice(0, 2) === language.slice(0, 2).toLowerCase()) ?? 'en-US';
  return { culture, units: culture === 'en-US' ? 'us' : 'si', look: 'device' };
}

/** Remembers a fact of this device. */
export async function remember(key, value) {
  await yard.store.setFact(key, value);
  await readFacts();
  changed(null);
}

/** The device has no space left. */
export const isFull = wrong => wrong?.name === 'QuotaExceededError';

/** Writes an entry down; it is on this device's disk when the promise is kept. */
export async function write(kind, subject, payload, { id = null, parent = null, why = null, photo = null, draft = null } = {}) {
  const at = new Date();
  const entry = await yard.store.addEntry(seq => ({
    id: id ?? newId(at.getTime()),
    kind,
    subject,
    person: yard.person || t('not named'),
    device: yard.device,
    seq,
    at: at.toISOString(),
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone ?? null,
    parent,
    why,
    payload,
  }), photo, draft);
  await count();
  changed(subject);
  return entry;
}

/** Reads a test as this page sees it. */
export async function readTest(id) {
  const [records, drafts] = await Promise.all([yard.store.entriesOf(id), yard.store.drafts()]);
  return foldTest(id, records, drafts.filter(draft => draft.test === id && draft.page === pageId));
}

const draftKey = (test, path) => `${test} ${path} ${pageId}`;

/** Keeps what is being typed; `replaces` is what the person saw in the field when beginning to type. */
export async function keepDraft(test, path, text, { parent, over }) {
  const draft = { key: draftKey(test, path), test, path, text, page: pageId, parent, over };
  const written = JSON.stringify(draft);
  // IndexedDB is written a moment later; a page that goes away within it leaves the key here, which is written at once.
  ahead(() => localStorage.setItem(AHEAD + draft.key, written));
  await yard.store.putDraft(draft);
  ahead(() => { if (localStorage.getItem(AHEAD + draft.key) === written) localStorage.removeItem(AHEAD + draft.key); });
}

const AHEAD = 'lanewright-draft ';

// A browser may refuse this store; then the moment stays unguarded.
function ahead(work) {
  try { return work(); } catch { return null; }
}

async function takeAhead() {
  for (const key of ahead(() => Object.keys(localStorage)) ?? []) {
    if (!key.startsWith(AHEAD)) continue;
    const draft = ahead(() => JSON.parse(localStorage.getItem(key)));
    if (draft?.key) await yard.store.putDraft(draft);
    ahead(() => localStorage.removeItem(key));
  }
}

/**
 * What a new text in a field replaces: the entry seen, or all the entries seen when two texts stood. `stood` is the one text
 * that was seen.
 */
export function seen(fold, path) {
  const heads = fold.fields.get(path)?.heads ?? [];
  const stood = heads.length === 0 ? '' : heads.every(head => head.text === heads[0].text) ? heads[0].text : undefined;
  return { parent: heads.at(-1)?.entry.id ?? null, over: heads.slice(0, -1).map(head => head.entry.id), stood };
}

/** Makes an entry of a field's text; null, and nothing written, when it says what stood before. */
export function setField(test, path, text, why, { parent, over, stood }, id) {
  const draft = { key: draftKey(test, path), text };
  if (text === stood) {
    yard.store.dropDraft(draft).catch(() => { /* it becomes nothing anew when the page is next opened */ });
    return null;
  }
  return write('test.field', test, { path, text, ...(over.length ? { over } : {}) }, { id, parent, why, draft });
}

// Texts that a page left behind when it was closed or died become entries now: nothing typed is lost.
async function adoptDrafts(tries = 6) {
  const drafts = (await yard.store.drafts()).filter(draft => draft.page !== pageId);
  if (!drafts.length) return;
  const held = new Set((await navigator.locks?.query())?.held?.map(lock => lock.name) ?? []);
  let living = false;
  for (const draft of drafts) {
    if (held.has('page-' + draft.page)) {
      living = true;
      continue;
    }

    const fold = foldTest(draft.test, await yard.store.entriesOf(draft.test));
    if (textOf(fold, draft.path) === draft.text && !fold.fields.get(draft.path)?.conflict) {
      await yard.store.dropDraft(draft);
      continue;
    }
    const over = draft.over ?? [];
    await write('test.field', draft.test, { path: draft.path, text: draft.text, ...(over.length ? { over } : {}) },
      { parent: draft.parent, draft });
    changed(draft.test, false);
  }
  // A page that was just reloaded may be counted as living for a moment.
  if (living && tries > 0) setTimeout(() => adoptDrafts(tries - 1), 700);
}
