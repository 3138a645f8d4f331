// What a test is, from its entries: the same rules as on the server (docs/formats/entries.md, "What stands").

/** The entries that no other of them replaces, in order of time made; when they replace each other in a circle, all. */
export function standing(entries) {
  const replaced = new Set();
  for (const entry of entries) {
    for (const id of [entry.parent, ...over(entry)]) if (id && id !== entry.id) replaced.add(id);
  }
  const left = entries.filter(entry => !replaced.has(entry.id));
  return left.length ? left : entries;
}

const over = entry => Array.isArray(entry.payload?.over) ? entry.payload.over : [];

/**
 * @param {string} id The test.
 * @param {{entry: any, state: string, number?: number}[]} records Its entries.
 * @param {{path: string, text: string, parent: string|null}[]} drafts Texts being typed, which stand before the entries.
 */
export function foldTest(id, records, drafts = []) {
  const entries = records.map(record => record.entry)
    .sort((a, b) => a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
  const of = kind => entries.filter(entry => entry.kind === kind);
  const begins = of('test.begin');
  const byPath = new Map();
  const put = (path, entry, text) => {
    if (!byPath.has(path)) byPath.set(path, []);
    byPath.get(path).push({ entry, text: String(text) });
  };
  for (const begin of begins) for (const [path, text] of Object.entries(begin.payload.fields ?? {})) put(path, begin, text);
  for (const field of of('test.field')) put(field.payload.path, field, field.payload.text ?? '');

  const fields = new Map();
  for (const [path, all] of byPath) {
    const left = new Set(standing(all.map(one => one.entry)).map(entry => entry.id));
    const heads = all.filter(one => left.has(one.entry.id));
    const conflict = heads.some(head => head.text !== heads[0].text);
    fields.set(path, { path, heads, conflict, text: conflict ? '' : heads[0].text, typing: false });
  }
  for (const draft of drafts) {
    const field = fields.get(draft.path) ?? { path: draft.path, heads: [], conflict: false };
    if (!field.conflict) fields.set(draft.path, { ...field, text: draft.text, typing: true });
  }

  // What the server did not take is kept and shown, but decides nothing.
  const refused = new Map(records.filter(record => record.state === 'refused').map(record => [record.entry.id, record.reason]));
  const decisions = standing(of('test.decision').filter(one => !refused.has(one.id)));
  const said = new Set(decisions.map(one => JSON.stringify([one.payload.verdict, one.payload.keyed])));
  return {
    id,
    begun: begins[0] ?? null,
    kind: begins[0]?.payload.kind ?? 'drop-test',
    method: begins[0]?.payload.method ?? null,
    spreader: begins[0]?.payload.spreader ?? null,
    fields,
    notes: standing(of('test.note')),
    photos: standing(of('test.photo')),
    decisions,
    notTaken: of('test.decision').filter(one => refused.has(one.id)).map(entry => ({ entry, reason: refused.get(entry.id) })),
    decision: said.size === 1 ? decisions.at(-1) : null,
    conflicts: [...fields.values()].filter(field => field.conflict).length + (said.size > 1 ? 1 : 0),
    unsent: records.filter(record => record.state !== 'sent').length,
    last: Math.max(0, ...records.map(record => record.number ?? 0)),
    touched: entries.at(-1)?.at ?? null,
  };
}

/** The text of a field; empty when there is none or two differ. */
export const textOf = (fold, path) => fold.fields.get(path)?.text ?? '';

/** How the note begins that says what was checked before a drop. */
export const CHECKED = 'Checked before the drop';

/** Whether a note is that one. */
export const isCheck = note => String(note.payload.text).startsWith(CHECKED);

/** All fields that have a text, for the computation. */
export function texts(fold) {
  const all = {};
  for (const [path, field] of fold.fields) if (!field.conflict && field.text !== '') all[path] = field.text;
  return all;
}

/** The places of runs that have any text, in order. */
export function runsOf(fold) {
  const places = new Set();
  for (const [path, field] of fold.fields) {
    const place = /^runs\[(\d+)\]/.exec(path);
    if (place && (field.text !== '' || field.conflict)) places.add(Number(place[1]));
  }
  return [...places].sort((a, b) => a - b);
}

/** How many places a list has, those between counted too. */
export function lengthOf(fold, list) {
  let most = 0;
  for (const [path, field] of fold.fields) {
    if (!path.startsWith(list + '[') || (field.text === '' && !field.conflict)) continue;
    most = Math.max(most, parseInt(path.slice(list.length + 1), 10) + 1);
  }
  return most;
}
