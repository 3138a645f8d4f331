// Begins a test: which spreader, which question, how the catch is weighed.
import { button, h } from './dom.js';
import { formOf, kinds } from './calibration.js';
import { newId } from './ids.js';
import { write, yard } from './yard.js';
import { t } from './words.js';

const SPREADER = ['id', 'metering', 'loop', 'constant', 'unit', 'resolution', 'lowest', 'highest', 'current'];
const SCALE = ['id', 'kind', 'capacity', 'division', 'class', 'rules', 'tolerance', 'relativeTolerance', 'verified'];
const MATERIAL = ['name', 'bulkDensity', 'moisture'];
const DROP_TESTS = ['drop-test', 'verification'];
const COMMA = ['de-DE', 'fr-FR', 'fr-CA', 'fi-FI', 'nb-NO', 'tr-TR'];

export const METHODS = [
  ['containers', t('Containers, one by one on a scale')],
  ['whole', t('The whole catch at once: bin, pallet, tarpaulin')],
  ['truck', t('The truck before and after')],
];

/** The lists of the register that are in use, or empty ones before the first contact with a server. */
export function listOf(name) {
  return (yard.register?.[name] ?? []).filter(item => !item.retired);
}

/** The screen. */
export function begin(go) {
  const spreaders = listOf('spreaders').sort((a, b) => String(a.record.id).localeCompare(String(b.record.id), undefined, { numeric: true }));
  const spreader = h('input', { id: 'spreader', list: 'spreaders', autocomplete: 'off', autocapitalize: 'characters', enterkeyhint: 'next' });
  const kind = pick('kind', [['drop-test', t('Find the constant (drop test)')], ['verification', t('Check the constant in the controller')]]);
  kinds().then(list => kind.append(...list.map(one => h('option', { value: one.word }, `${one.name}: ${one.doc}`))));
  const method = pick('method', METHODS);
  const methodRow = row('method', t('How the catch is weighed'), method);
  kind.addEventListener('change', () => { methodRow.hidden = !DROP_TESTS.includes(kind.value); });
  const scale = h('select', { id: 'scale' }, h('option', { value: '' }, t('choose later')),
    listOf('scales').map(item => h('option', { value: item.id }, item.record.id)));
  const material = h('select', { id: 'material' }, h('option', { value: '' }, t('as the spreader usually carries')),
    listOf('materials').map(item => h('option', { value: item.id }, item.record.name)));
  const say = h('p.say.wrong', { role: 'alert' });
  const start = async () => {
    const number = spreader.value.trim();
    if (!number) {
      say.textContent = t('Which spreader is it? Type the number on its door.');
      spreader.focus();
      return;
    }
    const known = spreaders.find(item => String(item.record.id).toLowerCase() === number.toLowerCase());
    const id = newId();
    const isDrop = DROP_TESTS.includes(kind.value);
    await write('test.begin', id, {
      kind: kind.value,
      ...(isDrop ? { method: method.value } : {}),
      spreader: known?.id ?? null,
      fields: await firstFields(kind.value, known?.record ?? { id: number }, listOf('scales').find(item => item.id === scale.value)?.record,
        materialOf(known?.record, material.value)),
    });
    go(`#/test/${id}/${isDrop ? 'prepare' : 'sheet'}`);
  };
  return h('form', { on: { submit: event => { event.preventDefault(); start(); } } },
    h('h1', null, t('New test')),
    row('spreader', t('Spreader'), spreader, h('datalist', { id: 'spreaders' },
      spreaders.map(item => h('option', { value: item.record.id }, [item.record.depot, item.record.body].filter(Boolean).join(', '))))),
    row('kind', t('Question'), kind),
    methodRow,
    row('scale', t('Scale'), scale),
    row('material', t('Material'), material),
    say,
    h('div.bar', null, button(t('Back'), () => go('#/'), 'plain'), h('button.main', { type: 'submit' }, t('Begin'))));
}

const row = (id, label, ...controls) => h('div.field', null, h('label', { for: id }, label), controls);

const pick = (id, choices) => h('select', { id }, choices.map(([value, text]) => h('option', { value }, text)));

function materialOf(spreader, chosen) {
  const materials = listOf('materials');
  return (materials.find(item => item.id === chosen)
    ?? materials.find(item => item.record.name === spreader?.material))?.record
    ?? (spreader?.material ? { name: spreader.material } : undefined);
}

/** The fields a sheet begins with, from the records of the register. */
async function firstFields(kind, spreader, scale, material) {
  const now = new Date();
  const two = number => String(number).padStart(2, '0');
  const fields = {
    culture: yard.settings.culture,
    units: yard.settings.units,
    date: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
    people: yard.person,
  };
  if (spreader.depot) fields.place = spreader.depot;
  if (material) fields.title = `${spreader.id}, ${material.name}`;
  const invented = [spreader, scale, material].some(record => record?.note === 'invented');
  if (invented) fields.invented = 'yes';
  if (!DROP_TESTS.includes(kind)) {
    // Another calibration asks for what it needs; of the register it takes what its sheet knows.
    fields['spreader.id'] = String(spreader.id);
    fields.title = `${spreader.id}, ${kind.replace('-', ' ')}`;
    const form = await formOf(kind);
    for (const [group, names, record] of [['scale', SCALE, scale], ['material', MATERIAL, material]]) {
      const known = form?.properties[group]?.properties;
      if (known) take(fields, group, names.filter(name => name in known), record);
    }
    if (form?.properties.loop && spreader.loop) fields.loop = spreader.loop;
    if (form?.properties.material && !form.properties.material.properties && material) fields.material = material.name;
    return fields;
  }
  const tolerance = listOf('rules')[0]?.record.tolerance;
  if (tolerance) fields.tolerance = written(tolerance);
  take(fields, 'spreader', SPREADER, spreader);
  take(fields, 'scale', SCALE, scale);
  take(fields, 'material', MATERIAL, material);
  return fields;
}

/** Puts what a record of the register says of a group into fields. */
export function take(fields, group, names, record) {
  for (const name of names) {
    const value = record?.[name];
    if (value === null || value === undefined || value === '') continue;
    if (typeof value === 'object') take(fields, `${group}.${name}`, Object.keys(value), value);
    else fields[`${group}.${name}`] = written(value);
  }
}

// The register's texts have a decimal point; the sheet's are read with the decimal mark of its culture.
function written(value) {
  const text = typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
  return COMMA.includes(yard.settings.culture) && /^[\d.]+(\s|$)/.test(text) && !/^\d{4}-/.test(text)
    ? text.replace('.', ',') : text;
}

export const groups = { spreader: SPREADER, scale: SCALE, material: MATERIAL };
