// The other calibrations: a sheet whose fields Core describes, and its answer. No kind is known here by name.
import { findingsOf } from './answer.js';
import { ask } from './core.js';
import { button, fill, folded, h, picture } from './dom.js';
import { field } from './field.js';
import { lengthOf } from './fold.js';
import { yard } from './yard.js';
import { language, t } from './words.js';

const KINDS = language === 'en' ? 'kinds' : `kinds ${language}`;
const DROP_TESTS = ['drop-test', 'verification'];
// Said by the test itself, or by the device's settings.
const SAID = ['$schema', 'kind', 'culture', 'units', 'invented'];
const LAST = ['title', 'date', 'place', 'people', 'spreader', 'probability', 'note'];

/** Whether a test is one of the other calibrations. */
export const isCalibration = fold => !DROP_TESTS.includes(fold.kind);

/** The kinds there are; those of the last time until Core has started. */
export async function kinds() {
  const known = await yard.store.fact(KINDS) ?? [];
  ask('Kinds', language).then(list => { if (list && JSON.stringify(list) !== JSON.stringify(known)) yard.store.setFact(KINDS, list); });
  return known.length ? known : await ask('Kinds', language) ?? [];
}

/** The fields of a kind's sheet, as a JSON Schema; null when neither Core nor this device knows them. */
export async function formOf(kind) {
  const key = `form ${kind}`;
  const form = await ask('Form', kind);
  if (form) {
    yard.store.setFact(key, form);
    return form;
  }
  return yard.store.fact(key);
}

/** The screen of the sheet's fields. */
export function sheet(page) {
  const box = h('div', null, h('p.hint', null, t('The fields come when the computing part has started.')));
  const draw = form => fill(box, content(page, form));
  if (page.form) draw(page.form);
  else formOf(page.fold.kind).then(form => {
    page.form = form;
    if (form) draw(form);
  });
  return [h('p.hint', null, t('Local rules and the maker\'s instructions come first. Nobody near auger, chain, spinner or spray while it runs.')), box];
}

function content(page, form) {
  const names = Object.keys(form.properties).filter(name => !SAID.includes(name));
  const own = names.filter(name => !LAST.includes(name));
  const last = names.filter(name => LAST.includes(name));
  return [group(page, form, own, ''), folded(t('About this calibration'), last.flatMap(name => one(page, form, name, '')))];
}

// What is needed first, what may be left out behind it.
function group(page, form, names, path) {
  const first = names.filter(name => form.required?.includes(name) || isList(form.properties[name]) || hasText(page, join(path, name)));
  // Where nothing is needed by itself, a person chooses among all.
  const needed = first.length || path !== '' ? first : names;
  const other = names.filter(name => !needed.includes(name));
  return [needed.flatMap(name => one(page, form, name, path)),
    other.length ? folded(path === '' ? t('More, when it is known') : t('More'), other.flatMap(name => one(page, form, name, path)), path) : null];
}

const isList = about => types(about).includes('array');
const types = about => [about.type ?? []].flat();
const join = (path, name) => path ? `${path}.${name}` : name;
const hasText = (page, path) => [...page.fold.fields.values()].some(one =>
  one.text !== '' && (one.path === path || one.path.startsWith(path + '.') || one.path.startsWith(path + '[')));

function one(page, form, name, path) {
  const about = form.properties[name];
  const here = join(path, name);
  const [label, ...rest] = (about.description ? t(about.description) : name).split(/(?<=\.)\s/);
  const title = label.replace(/\.$/, '');
  if (types(about).includes('object'))
    return [h('section', null, h('h2', null, title), group(page, about, Object.keys(about.properties), here))];
  if (isList(about)) return [list(page, about, here, title)];
  const choices = choicesOf(about);
  const example = about.examples?.[0];
  const number = types(about).some(type => type === 'number' || type === 'integer') || example;
  return [field(page, here, {
    label: title,
    choices,
    mode: choices ? undefined : types(about).includes('integer') ? 'numeric' : number ? 'decimal' : 'text',
    hint: example && !types(about).includes('number') ? t`With its unit, like ${example}.` : rest.length && !example ? rest[0] : undefined,
    lines: about.maxLength >= 1000 ? 2 : undefined,
  })];
}

function choicesOf(about) {
  if (about.enum?.includes('yes')) return [['yes', t('yes')], ['no', t('no')]];
  const words = (about.oneOf ?? []).filter(word => typeof word.const === 'string');
  return words.length ? words.map(word => [word.const, word.description ? t(word.description).replace(/\.$/, '') : word.const]) : null;
}

function list(page, about, path, title) {
  const there = lengthOf(page.fold, path);
  page.rows ??= new Map();
  const rows = Math.max(there, page.rows.get(path) ?? 0, 1);
  const isGroup = types(about.items).includes('object');
  return h('section', null, h('h2', null, title),
    h('ol.containers', null, Array.from({ length: rows }, (_, i) => h('li', null, h('h3', null, t`No. ${i + 1}`),
      isGroup ? group(page, about.items, Object.keys(about.items.properties), `${path}[${i}]`)
        : field(page, `${path}[${i}]`, { label: t`${title}, no. ${i + 1}` })))),
    button(t('+ one more'), () => {
      page.rows.set(path, rows + 1);
      page.redraw();
    }, 'quiet'));
}

/** The screen of the answer. */
export function calibrationAnswer(page) {
  const box = h('div');
  const draw = now => fill(box, answerOf(page, now));
  page.onAnswer(draw);
  if (page.answer) draw(page.answer);
  else fill(box, h('p.hint', null, t('Not computed on this device yet.')));
  return [box];
}

function answerOf(page, now) {
  const figures = now.figures ?? [];
  return [
    figures.map(figure => h('section.result', null, h('p.label', null, figure.name),
      h(figure.main ? 'p.key.sofar' : 'p', null, h('strong', null, figure.text)), figure.relative ? h('p', null, figure.relative) : null)),
    (now.lines ?? []).map(line => h('p.road', null, line)),
    now.todo.length ? h('section', null, h('h2', null, t('Still to do')), h('ul.todo', null, now.todo.map(one =>
      h('li', null, h('a', { href: `#/test/${page.id}/sheet` }, one.text))))) : null,
    findingsOf(now.findings),
    (now.pictures ?? []).map(one => h('section', null, h('h2', null, one.name), picture(one.svg, one.name))),
    (now.tables ?? []).map(table => h('div.scroll', { tabindex: '0', role: 'region', 'aria-label': table.caption }, h('table', null,
      h('caption', null, table.caption), h('thead', null, h('tr', null, table.columns.map(text => h('th', { scope: 'col' }, text)))),
      h('tbody', null, table.rows.map(row => h('tr', null, row.map((cell, i) => i === 0 ? h('th', { scope: 'row' }, cell) : h('td', null, cell)))))))),
  ];
}
