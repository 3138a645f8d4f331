// Prepare: cautions first, then what the test needs to know, a checklist, and the plan.
import { ask } from './core.js';
import { groups, listOf, METHODS, take } from './begin.js';
import { button, fill, folded, h } from './dom.js';
import { field } from './field.js';
import { CHECKED, isCheck, textOf } from './fold.js';
import { write, yard } from './yard.js';
import { t } from './words.js';

const CHECKS = [
  t('Everyone near the truck knows that the auger or chain is about to run.'),
  t('Spinner off or moved clear; chute and catch in place, wheels chocked, brake set.'),
  t('Hopper filled with the material of the season, lumps out, gate set and its opening read.'),
  t('Hydraulic oil warm; engine at working speed for the test.'),
  t('Metering primed: material falls before the first run is counted.'),
  t('Scale level, free of snow, shows zero; its division read off the plate.'),
  t('Containers whole and dry; each will get its own tare.'),
];

const LOOPS = [['closed', t('Closed loop: it counts a sensor')], ['open', t('Open loop: it only sets the drive')]];
const CONSTANTS = [
  ['pulses-per-mass', t('Pulses per mass')], ['mass-per-pulse', t('Mass per pulse')],
  ['mass-per-revolution', t('Mass per turn')], ['mass-per-time', t('Mass per time at a setting')],
];
const UNITS = ['pulse/lb', 'pulse/kg', 'lb/pulse', 'g/pulse', 'kg/pulse', 'lb/rev', 'kg/rev', 'lb/min', 'kg/min', 'kg/s'];
const KINDS = [
  ['platform', t('platform')], ['floor', t('floor')], ['pallet', t('pallet')], ['forklift', t('forklift')], ['hanging', t('hanging')],
  ['vehicle', t('vehicle')], ['wheel-load', t('wheel-load')],
];
const CLASSES = [['iii', 'III'], ['iii-l', 'III L'], ['iiii', 'IIII']];
const YES = [['yes', t('yes')], ['no', t('no')]];

/** The screen. */
export function prepare(page) {
  const plan = h('div', { 'aria-live': 'polite' }, h('p.hint', null, t('The plan comes when the computing part has started.')));
  const cautions = h('ul.cautions', null, h('li', null, t('Local rules and the maker\'s instructions come first. Nobody near auger, chain or spinner while the engine runs.')));
  yard.store.fact('cautions').then(known => { if (known) drawCautions(cautions, known); });
  drawPlan(page, plan, cautions);
  page.onAnswer(() => drawPlan(page, plan, cautions));
  return [
    h('section', { 'aria-labelledby': 'cautions' }, h('h2', { id: 'cautions' }, t('Before anything runs')), cautions),
    group(t('What is tested'), spreaderFields(page)),
    group(t('What is dropped'), materialFields(page)),
    group(t('What weighs it'), scaleFields(page)),
    h('section', { 'aria-labelledby': 'plan' }, h('h2', { id: 'plan' }, t('Plan')), expected(page, plan, cautions), plan),
    checklist(page),
  ];
}

const group = (name, controls) => h('section', null, h('h2', null, name), controls);

const same = list => list.map(value => [value, value]);

function spreaderFields(page) {
  return [
    field(page, 'spreader.id', { label: t('Spreader'), mode: 'text' }),
    field(page, 'spreader.loop', { label: t('Controller'), choices: LOOPS }),
    field(page, 'spreader.constant', { label: t('The constant is'), choices: CONSTANTS }),
    field(page, 'spreader.unit', { label: t('Keyed in as'), choices: same(UNITS) }),
    folded(t('More about the spreader'), [
      field(page, 'spreader.current', { label: t('Value in the controller now') }),
      field(page, 'spreader.resolution', { label: t('Smallest step the controller takes') }),
      field(page, 'spreader.lowest', { label: t('Smallest value it takes') }),
      field(page, 'spreader.highest', { label: t('Largest value it takes') }),
      field(page, 'spreader.metering', { label: t('Auger, drag chain or belt'), mode: 'text' }),
      field(page, 'title', { label: t('Name of this test'), mode: 'text' }),
      field(page, 'date', { label: t('Day'), mode: 'text', hint: t('Like 2026-01-31.') }),
      field(page, 'place', { label: t('Place'), mode: 'text' }),
      field(page, 'people', { label: t('People'), mode: 'text' }),
    ]),
  ];
}

function materialFields(page) {
  return [
    fromRegister(page, 'materials', 'material', 'name', t('Take from the register')),
    field(page, 'material.name', { label: t('Material'), mode: 'text' }),
    folded(t('Density and moisture'), [
      field(page, 'material.bulkDensity', { label: t('Bulk density'), unit: page.fold.fields.get('units')?.text === 'us' ? 'lb/ft³' : 'kg/m³' }),
      field(page, 'material.moisture.share', { label: t('Water in it'), hint: t('Like 2 %. With it the constant is for dry material.') }),
      field(page, 'material.moisture.of', { label: t('Share of'), choices: [['wet', t('the wet mass')], ['dry', t('the dry mass')]] }),
    ]),
  ];
}

function scaleFields(page) {
  return [
    fromRegister(page, 'scales', 'scale', 'id', t('Take from the register')),
    field(page, 'scale.id', { label: t('Scale'), mode: 'text' }),
    field(page, 'scale.division', { label: t('Smallest step it shows') }),
    field(page, 'commonError', {
      label: t('Empty and full weighed on this scale within minutes?'), choices: YES,
      hint: t('Yes only when it stays in place and is not set in between.'),
    }),
    folded(t('More about the scale'), [
      field(page, 'scale.kind', { label: t('Kind'), choices: KINDS }),
      field(page, 'scale.capacity', { label: t('Most it may weigh') }),
      field(page, 'scale.class', { label: t('Class on the plate'), choices: CLASSES }),
      field(page, 'scale.rules', { label: t('Rules behind the class'), choices: [['handbook-44', 'NIST Handbook 44'], ['oiml', 'OIML R 76']] }),
      field(page, 'scale.tolerance', { label: t('Or a tolerance of its own') }),
      field(page, 'scale.verified', { label: t('Last verified'), mode: 'text', hint: t('Like 2026-01-31.') }),
    ]),
  ];
}

// A shortcut that writes a whole group of fields from a record of the register.
function fromRegister(page, list, name, key, label) {
  const items = listOf(list);
  if (!items.length) return null;
  const id = `from-${list}`;
  return h('div.field', null, h('label', { for: id }, label), h('select', {
    id,
    on: {
      change: async event => {
        const record = items.find(item => item.id === event.target.value)?.record;
        if (!record) return;
        const fields = {};
        take(fields, name, groups[name], record);
        for (const path of [...page.fold.fields.keys()].filter(path => path.startsWith(name + '.') && !(path in fields)))
          await page.set(path, '', path);
        for (const [path, text] of Object.entries(fields)) await page.set(path, text, path);
        page.redraw();
      },
    },
  }, h('option', { value: '' }, t('choose')), items.map(item =>
    h('option', { value: item.id, selected: String(item.record[key]) === textOf(page.fold, `${name}.${key}`) }, item.record[key]))));
}

function expected(page, plan, cautions) {
  const keep = change => {
    Object.assign(page.plan, change);
    yard.store.setFact(`plan ${page.id}`, page.plan);
    drawPlan(page, plan, cautions);
  };
  return [
    h('div.field', null, h('label', { for: 'plan-method' }, t('Weighed by')),
      h('select', { id: 'plan-method', on: { change: event => keep({ method: event.target.value }) } },
        METHODS.map(([value, text]) => h('option', { value, selected: value === page.plan.method }, text)))),
    h('div.field', null, h('label', { for: 'plan-delivery' }, t('What it delivers in a minute, roughly')),
      h('p.hint', { id: 'plan-delivery-hint' }, t('For the length of a run; leave it empty when nobody knows.')),
      h('input', {
        id: 'plan-delivery', inputmode: 'decimal', autocomplete: 'off', value: page.plan.delivery, 'aria-describedby': 'plan-delivery-hint',
        on: { input: event => keep({ delivery: event.target.value }) },
      })),
  ];
}

async function drawPlan(page, plan, cautions) {
  const answer = await ask('Plan', { ...page.question(), ...page.plan });
  if (!answer) return;
  drawCautions(cautions, answer.cautions);
  // They stand at once the next time, before Core has started.
  yard.store.setFact('cautions', answer.cautions);
  fill(plan,
    answer.best ? h('p.strong', null, answer.best) : h('p.hint', null, t('A plan needs the scale with its division.')),
    answer.containers ? h('p', null, answer.containers) : null,
    answer.time ? h('p', null, answer.time) : null,
    answer.grid?.length ? folded(t('Other ways to do it'), [table(answer.grid),
      h('ul', null, answer.practices.map(text => h('li', null, text)))]) : null);
}

const drawCautions = (box, list) => fill(box, list.map(caution => h('li', null, caution.text, h('small', null, ' ', caution.source))));

function table(grid) {
  const runs = [...new Set(grid.flatMap(row => row.choices.map(choice => choice.runs)))].sort((a, b) => a - b);
  return h('div.scroll', { tabindex: '0', role: 'region', 'aria-label': t('Interval to expect') }, h('table', null,
    h('caption', null, t('Interval to expect, ± %. Bold is enough.')),
    h('thead', null, h('tr', null, h('th', { scope: 'col' }, t('Mass a run')), runs.map(n => h('th', { scope: 'col' }, t`${n} run|${n} runs`)))),
    h('tbody', null, grid.map(row => h('tr', null, h('th', { scope: 'row' }, row.mass), runs.map(n => {
      const choice = row.choices.find(one => one.runs === n);
      return h('td', null, choice ? (choice.enough ? h('strong', null, choice.expected) : choice.expected) : '');
    }))))));
}

// The ticks are remembered on this device; the note that says everything was checked is part of the record.
function checklist(page) {
  const key = `checks ${page.id}`;
  const note = page.fold.notes.find(isCheck);
  const box = h('section', null, h('h2', null, t('Checklist')));
  if (note) {
    box.append(h('p', null, t`✓ Checked by ${note.person}.`));
    return box;
  }
  yard.store.fact(key).then(ticked => {
    const done = new Set(ticked ?? []);
    const say = h('p', { role: 'status' });
    const show = () => { say.textContent = t`${done.size} of ${CHECKS.length} checked`; };
    box.append(h('ul.checks', null, CHECKS.map((text, i) => h('li', null, h('label', null,
      h('input', {
        type: 'checkbox', checked: done.has(i),
        on: {
          change: event => {
            if (event.target.checked) done.add(i);
            else done.delete(i);
            yard.store.setFact(key, [...done]);
            show();
          },
        },
      }), h('span', null, text))))), say,
    button(t('Everything is checked: keep a note'), () => {
      const open = CHECKS.filter((_, i) => !done.has(i));
      write('test.note', page.id, { text: open.length ? `${CHECKED}, except: ${open.join(' ')}` : `${CHECKED}: everything on the list.` })
        .then(() => page.redraw());
    }, 'quiet'));
    show();
  });
  return box;
}
