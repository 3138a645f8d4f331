// What this device keeps, in IndexedDB: entries (only added; what changes is whether the server has them), photos, texts
// that are being typed, and small facts such as the device's identity.
//
// A record of `entries` is { id, subject, state, entry, number, reason }; state is one of
//   phone    on this device only
//   sent     confirmed: on the server's disk
//   wait     the server wants another person to sign in first
//   refused  the server did not take it; the reason stands beside it

const NAME = 'lanewright';
const VERSION = 1;
const STORES = ['entries', 'photos', 'drafts', 'facts'];

/** Opens the store; without IndexedDB it keeps everything in memory and says so in `lasting`. */
export async function openStore() {
  try {
    return new Store(await openDatabase());
  } catch (wrong) {
    return new MemoryStore(wrong);
  }
}

function openDatabase() {
  return new Promise((done, fail) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      const db = request.result;
      const entries = db.createObjectStore('entries', { keyPath: 'id' });
      entries.createIndex('subject', 'subject');
      entries.createIndex('state', 'state');
      db.createObjectStore('photos', { keyPath: 'id' });
      db.createObjectStore('drafts', { keyPath: 'key' });
      db.createObjectStore('facts', { keyPath: 'key' });
    };
    request.onblocked = () => fail(new Error('Another page of Lanewright holds an older store open. Close the other pages.'));
    request.onerror = () => fail(request.error);
    request.onsuccess = () => {
      // A newer page in another tab may need to change the store.
      request.result.onversionchange = () => request.result.close();
      done(request.result);
    };
  });
}

/** A promise for a request. */
const result = request => new Promise((done, fail) => {
  request.onsuccess = () => done(request.result);
  request.onerror = () => fail(request.error);
});

// A draft is done with only when its text was not typed on meanwhile.
async function drop(transaction, { key, text }) {
  const drafts = transaction.objectStore('drafts');
  if ((await result(drafts.get(key)))?.text === text) drafts.delete(key);
}

class Store {
  lasting = true;
  trouble = null;
  #db;

  constructor(db) {
    this.#db = db;
  }

  /** Runs work in one transaction and waits until it is on the disk. */
  #write(stores, work) {
    return new Promise((done, fail) => {
      const transaction = this.#db.transaction(stores, 'readwrite', { durability: 'strict' });
      let value;
      transaction.oncomplete = () => done(value);
      transaction.onabort = () => fail(transaction.error ?? new Error('The device did not store it.'));
      transaction.onerror = () => {};
      Promise.resolve(work(transaction)).then(answer => { value = answer; }, wrong => {
        fail(wrong);
        try { transaction.abort(); } catch { /* it has ended already */ }
      });
    });
  }

  #read(store) {
    return this.#db.transaction(store, 'readonly').objectStore(store);
  }

  /**
   * Adds an entry made on this device, numbered by the device's own count, and removes the draft it came from.
   * @param {(seq: number) => object} make
   */
  addEntry(make, photo = null, draft = null) {
    return this.#write(STORES, async transaction => {
      const facts = transaction.objectStore('facts');
      const seq = (await result(facts.get('seq')))?.value ?? 0;
      const entry = make(seq);
      facts.put({ key: 'seq', value: seq + 1 });
      transaction.objectStore('entries').add({ id: entry.id, subject: entry.subject, state: 'phone', entry });
      if (photo) transaction.objectStore('photos').add({ id: entry.id, state: 'phone', blob: photo });
      if (draft) await drop(transaction, draft);
      return entry;
    });
  }

  /** Takes in entries that came from the server. */
  takeEntries(list) {
    return this.#write(['entries'], transaction => {
      const entries = transaction.objectStore('entries');
      for (const entry of list) entries.put({ id: entry.id, subject: entry.subject, state: 'sent', number: entry.number, entry });
    });
  }

  /** Writes down what the server said of entries: [{ id, state, number, reason }]. */
  markEntries(list) {
    return this.#write(['entries'], async transaction => {
      const entries = transaction.objectStore('entries');
      for (const { id, state, number, reason } of list) {
        const record = await result(entries.get(id));
        if (record) entries.put({ ...record, state, number: number ?? record.number, reason: reason ?? null });
      }
    });
  }

  entriesOf(subject) {
    return result(this.#read('entries').index('subject').getAll(subject));
  }

  entriesIn(state) {
    return result(this.#read('entries').index('state').getAll(state));
  }

  allEntries() {
    return result(this.#read('entries').getAll());
  }

  count(state) {
    return result(this.#read('entries').index('state').count(state));
  }

  photo(id) {
    return result(this.#read('photos').get(id));
  }

  photos() {
    return result(this.#read('photos').getAll());
  }

  markPhoto(id, state, reason = null) {
    return this.#write(['photos'], async transaction => {
      const photos = transaction.objectStore('photos');
      const record = await result(photos.get(id));
      if (record) photos.put({ ...record, state, reason });
    });
  }

  /** Keeps a text that is being typed. */
  putDraft(draft) {
    return this.#write(['drafts'], transaction => { transaction.objectStore('drafts').put(draft); });
  }

  dropDraft(draft) {
    return this.#write(['drafts'], transaction => drop(transaction, draft));
  }

  drafts() {
    return result(this.#read('drafts').getAll());
  }

  async fact(key) {
    return (await result(this.#read('facts').get(key)))?.value ?? null;
  }

  setFact(key, value) {
    return this.#write(['facts'], transaction => { transaction.objectStore('facts').put({ key, value }); });
  }

  /** Sets a fact unless it is there already; gives what stands. */
  settleFact(key, value) {
    return this.#write(['facts'], async transaction => {
      const facts = transaction.objectStore('facts');
      const there = await result(facts.get(key));
      if (there) return there.value;
      facts.put({ key, value });
      return value;
    });
  }
}

/** The same in memory, for a browser that stores nothing; the page warns that closing it loses what was not sent. */
class MemoryStore {
  lasting = false;
  #entries = new Map();
  #photos = new Map();
  #drafts = new Map();
  #facts = new Map();

  constructor(trouble) {
    this.trouble = String(trouble?.message ?? trouble);
  }

  async addEntry(make, photo = null, draft = null) {
    const seq = this.#facts.get('seq') ?? 0;
    const entry = make(seq);
    this.#facts.set('seq', seq + 1);
    this.#entries.set(entry.id, { id: entry.id, subject: entry.subject, state: 'phone', entry });
    if (photo) this.#photos.set(entry.id, { id: entry.id, state: 'phone', blob: photo });
    if (draft) await this.dropDraft(draft);
    return entry;
  }

  async takeEntries(list) {
    for (const entry of list) this.#entries.set(entry.id, { id: entry.id, subject: entry.subject, state: 'sent', number: entry.number, entry });
  }

  async markEntries(list) {
    for (const { id, state, number, reason } of list) {
      const record = this.#entries.get(id);
      if (record) this.#entries.set(id, { ...record, state, number: number ?? record.number, reason: reason ?? null });
    }
  }

  async entriesOf(subject) { return [...this.#entries.values()].filter(record => record.subject === subject); }
  async entriesIn(state) { return [...this.#entries.values()].filter(record => record.state === state); }
  async allEntries() { return [...this.#entries.values()]; }
  async count(state) { return (await this.entriesIn(state)).length; }
  async photo(id) { return this.#photos.get(id); }
  async photos() { return [...this.#photos.values()]; }
  async markPhoto(id, state, reason = null) { this.#photos.set(id, { ...this.#photos.get(id), state, reason }); }
  async putDraft(draft) { this.#drafts.set(draft.key, draft); }
  async dropDraft({ key, text }) { if (this.#drafts.get(key)?.text === text) this.#drafts.delete(key); }
  async drafts() { return [...this.#drafts.values()]; }
  async fact(key) { return this.#facts.get(key) ?? null; }
  async setFact(key, value) { this.#facts.set(key, value); }
  async settleFact(key, value) { if (!this.#facts.has(key)) this.#facts.set(key, value); return this.#facts.get(key); }
}
