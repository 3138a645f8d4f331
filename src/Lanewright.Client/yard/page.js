// The test in hand as the steps see it: its fold, the answer beside it, and what can be undone.
import { ask, onCore } from './core.js';
import { texts } from './fold.js';
import { newId } from './ids.js';
import { language } from './words.js';
import { keepDraft, onChange, readTest, seen, setField, yard } from './yard.js';

const IDLE = 1500;

export class Page {
  fold = null;
  answer = null;
  /** How it will be weighed and what to expect: questions of the plan, no observations, so they stay on this device. */
  plan = { method: 'containers', delivery: '' };
  /** Fields changed on this page, the latest last: {path, before, label}. */ undo = [];
  #timers = new Map();
  #keeping = new Map();
  /** By path, texts that the device did not keep; they stay on the screen. */ #unkept = new Map();
  /** The screen is being drawn anew; the field in hand comes back. */ drawing = false;
  /** By path, what the person saw and what a text typed there replaces, as long as the field is in hand. */ #base = new Map();
  #queue = Promise.resolve();
  #answered = new Set();
  #redraw;
  #busy = 0;
  #drawn = '';

  /** @param {string} id @param {() => void} redraw Called when the shape of the page may have changed. */
  constructor(id, redraw) {
    this.id = id;
    this.#redraw = redraw;
  }

  async open() {
    await this.#read();
    this.plan = await yard.store.fact(`plan ${this.id}`) ?? { method: this.fold.method ?? 'containers', delivery: '' };
    onChange(async (subject, own) => {
      if (subject !== this.id || this.closed) return;
      if (own) return;
      await this.#read();
      if (this.closed) return;
      this.redrawIfChanged();
      this.showTexts();
      this.compute();
    });
    onCore(() => { if (!this.closed) this.compute(); });
    this.compute();
    return this;
  }

  // What is being typed in this moment stands before what is stored: a stored draft may be a key behind.
  async #read() {
    const fold = await readTest(this.id);
    const unwritten = [...this.#unkept, ...this.#timers].map(([path, { text }]) => [path, text]);
    for (const [path, text] of unwritten) {
      const field = fold.fields.get(path) ?? { path, heads: [] };
      fold.fields.set(path, { ...field, conflict: false, text, typing: true });
    }
    // The field in hand stays as it is until it is left, whatever comes for it from elsewhere; what is typed on replaces
    // only what the person saw.
    const inHand = document.activeElement;
    const path = inHand?.dataset?.path;
    const field = path && !this.#timers.has(path) ? fold.fields.get(path) : null;
    if (field && (field.conflict || field.text !== inHand.value)) {
      if (this.fold && !this.#base.has(path)) this.#base.set(path, seen(this.fold, path));
      fold.fields.set(path, { ...field, conflict: false, text: inHand.value, typing: true, held: true });
    }
    this.fold = fold;
    for (const one of [...this.#base.keys()]) this.#letGo(one);
  }

  /** Reads the entries anew, after they came from the server. */
  async reopen() {
    await this.#read();
    this.compute();
  }

  /** Makes entries of everything typed. */
  settleAll() {
    return Promise.all([...this.#timers.keys()].map(path => this.settle(path)));
  }

  close() {
    this.closed = true;
    this.settleAll();
  }

  /** Calls back after every answer of Core; the redrawn page listens anew. */
  onAnswer(listen) {
    this.#answered.add(listen);
  }

  /** A new drawing of the screen begins. */
  forget() {
    this.#answered.clear();
    this.#drawn = this.#shape();
  }

  redrawIfChanged() {
    if (!this.closed && this.#drawn !== this.#shape()) this.#redraw();
  }

  #shape() {
    return shapeOf(this.fold) + this.undo.length;
  }

  /** What is asked of Core: everything typed, in the test's own units and decimal mark. */
  question() {
    return { language, culture: yard.settings.culture, units: yard.settings.units, kind: this.fold.kind, fields: texts(this.fold) };
  }

  async compute() {
    const turn = ++this.#busy;
    const answer = await ask('Live', this.question());
    if (!answer || this.closed || turn !== this.#busy) return;
    this.answer = answer;
    for (const listen of this.#answered) listen(answer);
  }

  /** A key was pressed in a field: kept at once, an entry when the person pauses or leaves the field. */
  type(path, text, label) {
    const field = this.fold.fields.get(path) ?? { path, heads: [], conflict: false };
    const base = this.#replaces(path);
    this.fold.fields.set(path, { ...field, text, typing: true });
    keepDraft(this.id, path, text, base).catch(wrong => this.onTrouble?.(wrong));
    clearTimeout(this.#timers.get(path)?.timer);
    this.#timers.set(path, { text, label, timer: setTimeout(() => this.settle(path, false), IDLE) });
    this.onTyping?.();
    this.compute();
  }

  #replaces(path) {
    if (!this.#base.has(path)) this.#base.set(path, seen(this.fold, path));
    return this.#base.get(path);
  }

  // A field that is neither in hand nor being written down shows whatever stands.
  #letGo(path) {
    if (!this.#timers.has(path) && !this.#keeping.has(path) && document.activeElement?.dataset?.path !== path) this.#base.delete(path);
  }

  /** How many fields hold a text that is kept on this device but is no entry yet. */
  get typing() {
    return new Set([...this.#timers.keys(), ...this.#keeping.keys()]).size;
  }

  /** Makes the entry of what was typed into a field; the screen may change only when the person left the field. */
  async settle(path, left = true) {
    if (this.drawing) return;
    const typed = this.#timers.get(path);
    if (!typed) {
      if (left) this.#letGo(path);
      if (left && this.fold.fields.get(path)?.held) {
        await this.#read();
        this.redrawIfChanged();
        this.showTexts();
        this.compute();
      }
      return;
    }
    clearTimeout(typed.timer);
    this.#timers.delete(path);
    await this.#keep(path, typed.text, typed.label, null, true);
    if (left) this.redrawIfChanged();
  }

  /** Writes a field down at once. */
  async set(path, text, label = '', why = null, undoable = true) {
    clearTimeout(this.#timers.get(path)?.timer);
    this.#timers.delete(path);
    this.#replaces(path);
    if (document.activeElement?.dataset?.path === path) document.activeElement.value = text;
    await this.#keep(path, text, label, why, undoable);
    this.redrawIfChanged();
  }

  // One after the other, so that each text replaces the one before it and not its predecessor.
  #keep(...about) {
    this.#keeping.set(about[0], (this.#keeping.get(about[0]) ?? 0) + 1);
    this.#queue = this.#queue.then(() => this.#write(...about));
    return this.#queue;
  }

  async #write(path, text, label, why, undoable) {
    const base = this.#replaces(path);
    const id = newId();
    try {
      const written = setField(this.id, path, text, why, base, id);
      // What is typed from here on replaces this text: the store keeps the order.
      if (written) this.#base.set(path, { parent: id, over: [], stood: text });
      await written;
      this.#unkept.delete(path);
      if (written && undoable) this.undo.push({ path, before: base.stood ?? '', label });
      if (written) this.#retry();
    } catch (wrong) {
      if (this.#base.get(path)?.parent === id) this.#base.set(path, base);
      this.#unkept.set(path, { text, label, why, undoable });
      this.onTrouble?.(wrong);
    }
    const left = this.#keeping.get(path) - 1;
    if (left) this.#keeping.set(path, left);
    else this.#keeping.delete(path);
    this.#letGo(path);
    // A reading that fails must not hold up the texts behind it.
    await this.#read().catch(wrong => this.onTrouble?.(wrong));
    this.onTyping?.();
    this.compute();
  }

  // The device keeps again: what it did not keep before is written down now.
  #retry() {
    for (const [path, { text, label, why, undoable }] of this.#unkept)
      if (!this.#timers.has(path) && !this.#keeping.has(path)) this.#keep(path, text, label, why, undoable);
  }

  /** Takes back the latest change made on this page; as an entry of its own, since nothing is removed. */
  async takeBack() {
    await this.settleAll();
    const last = this.undo.pop();
    if (!last) return null;
    await this.set(last.path, last.before, last.label, 'taken back', false);
    await this.redraw();
    return last;
  }

  /** Puts texts that came from elsewhere into the fields on the screen, except the one that is being typed in. */
  showTexts() {
    for (const control of document.querySelectorAll('[data-path]')) {
      const field = this.fold.fields.get(control.dataset.path);
      if (field && !field.typing && control.value !== undefined && control.value !== field.text && !this.#timers.has(field.path))
        control.value = field.text;
    }
  }

  /** Draws the screen anew, from what is stored now. */
  async redraw() {
    await this.#read();
    this.#redraw();
  }
}

// What decides which fields a page shows: the fields there are and where two texts stand.
function shapeOf(fold) {
  return [...fold.fields.values()].filter(field => field.text !== '' || field.conflict)
    .map(field => field.path + (field.conflict ? '!' : '')).sort().join('\n')
    + fold.photos.map(photo => photo.id) + fold.decisions.map(one => one.id) + fold.notes.length;
}
