// Asks Core, which computes beside the page. Of several questions of one kind only the latest is worth an answer.
import { t } from './words.js';

let worker = null;
let next = 1;
const waiting = new Map();
const latest = new Map();

/** null while it starts, then true; a text when it could not start: the page still keeps everything. */
export let state = null;
/** Whether its answers have become quick. */
export let warm = false;
let isWarmWished = false;
const listeners = new Set();

/** Starts Core. It takes a second or more; nothing waits for it. */
export function startCore() {
  if (worker) return;
  try {
    worker = new Worker('/yard/core-worker.js', { type: 'module' });
  } catch (wrong) {
    settle(String(wrong.message));
    return;
  }
  if (isWarmWished) worker.postMessage({ call: 'warm' });
  worker.onerror = event => settle(event.message || t('The computing part could not be loaded.'));
  worker.onmessage = ({ data }) => {
    if (data.ready) settle(true);
    else if (data.failed) settle(data.failed);
    else if (data.warm) warm = true;
    else {
      waiting.get(data.id)?.(data.wrong || !data.answer ? null : JSON.parse(data.answer), data.wrong);
      waiting.delete(data.id);
    }
  };
}

// A line cut off while Core came over it must not leave the page without an answer for good.
addEventListener('online', () => {
  if (typeof state !== 'string') return;
  worker?.terminate();
  worker = null;
  state = null;
  latest.clear();
  startCore();
});

/** Makes later answers quick; called when a person is about to type, perhaps before Core starts. */
export function warmUp() {
  isWarmWished = true;
  worker?.postMessage({ call: 'warm' });
}

/** Kept when Core is ready or has failed. */
export const coreSettled = () => new Promise(done => {
  if (state !== null) done();
  else listeners.add(done);
});

/** Listens for Core being ready or failing. */
export function onCore(listen) {
  listeners.add(listen);
}

/**
 * Asks Core. Gives null when a later question of the same kind came in between, or when Core cannot compute.
 * @param {'Live'|'Plan'|'Keyed'|'Form'|'Kinds'|'Diagnose'|'Practice'|'PracticeLists'} call
 * @param {string|object} question Texts go as they are, anything else as JSON.
 */
export function ask(call, question) {
  if (!worker || typeof state === 'string') return Promise.resolve(null);
  return new Promise(done => {
    latest.get(call)?.queued?.(null);
    const slot = latest.get(call) ?? {};
    latest.set(call, slot);
    if (slot.busy) {
      // One at a time: what is typed meanwhile replaces what waits.
      slot.queued = done;
      slot.question = question;
      return;
    }
    send(call, slot, question, done);
  });
}

function send(call, slot, question, done) {
  const id = next++;
  slot.busy = true;
  slot.queued = null;
  waiting.set(id, (answer, wrong) => {
    slot.busy = false;
    if (wrong) console.error(wrong);
    done(answer);
    if (slot.queued) send(call, slot, slot.question, slot.queued);
  });
  worker.postMessage({ id, call, json: typeof question === 'string' ? question : JSON.stringify(question) });
}

function settle(now) {
  state = now;
  if (now !== true) {
    for (const done of waiting.values()) done(null);
    waiting.clear();
  }
  for (const listen of listeners) listen(now);
}
