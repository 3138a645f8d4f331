// Weigh: the containers of one run, one by one, with the running total; or the whole catch; or the truck.
import { METHODS } from './begin.js';
import { warmUp } from './core.js';
import { button, h } from './dom.js';
import { field } from './field.js';
import { lengthOf, textOf } from './fold.js';
import { addPhoto, photosOf } from './photo.js';
import { runChoice } from './drop.js';
import { yard } from './yard.js';
import { t } from './words.js';

/** How a run is weighed: as its fields say, else as the test began. */
export function methodOf(page, run) {
  const path = `runs[${run}]`;
  for (const [method, start] of [['containers', '.containers['], ['whole', '.whole.'], ['truck', '.truck.']]) {
    for (const one of page.fold.fields.values())
      if (one.path.startsWith(path + start) && (one.text !== '' || one.conflict)) return method;
  }
  return page.methods?.get(run) ?? page.plan.method;
}

/** The screen. */
export function weigh(page, run, go) {
  warmUp();
  const path = `runs[${run}]`;
  const method = methodOf(page, run);
  const isStarted = [...page.fold.fields.values()].some(one =>
    one.text !== '' && (one.path.startsWith(`${path}.containers[`) || one.path.startsWith(`${path}.whole.`) || one.path.startsWith(`${path}.truck.`)));
  const total = h('output.total', { 'aria-live': 'polite' });
  page.onAnswer(answer => tellTotal(total, answer, run));
  if (page.answer) tellTotal(total, page.answer, run);
  return [
    runChoice(page, run, go, 'weigh'),
    isStarted ? null : h('div.field', null, h('label', { for: 'method' }, t('This run is weighed by')), h('select', {
      id: 'method',
      on: {
        change: event => {
          page.methods ??= new Map();
          page.methods.set(run, event.target.value);
          page.redraw();
        },
      },
    }, METHODS.map(([value, text]) => h('option', { value, selected: value === method }, text)))),
    method === 'containers' ? containers(page, path, run)
      : method === 'whole' ? whole(page, path) : truck(page, path),
    h('p.totals', null, h('span', null, t`Run ${run + 1} so far`), total),
    photos(page, path),
  ];
}

const tellTotal = (total, answer, run) => {
  total.textContent = answer.runs.find(one => one.index === run)?.net ?? t('nothing weighed yet');
};

function containers(page, path, run) {
  const filled = parseInt(textOf(page.fold, `${path}.filled`), 10);
  const there = lengthOf(page.fold, `${path}.containers`);
  const wanted = Number.isInteger(filled) && filled > 0 && filled <= 200 ? filled : there + 1;
  const rows = Math.max(there, wanted, 1);
  return [
    field(page, `${path}.filled`, { label: t('How many containers did it fill?'), mode: 'numeric' }),
    h('ol.containers', null, Array.from({ length: rows }, (_, i) => container(page, path, run, i))),
  ];
}

function container(page, path, run, i) {
  const here = `${path}.containers[${i}]`;
  const net = h('p.net', { 'aria-live': 'off' });
  const show = answer => {
    const weighed = answer.runs.find(one => one.index === run)?.containers.find(one => one.index === i);
    net.textContent = weighed?.net ? t`net ${weighed.net}, together ${weighed.running}` : '';
  };
  page.onAnswer(show);
  if (page.answer) show(page.answer);
  return h('li', null, h('h2.item', null, t`Container ${i + 1}`),
    h('div.pair', null,
      field(page, `${here}.tare`, { label: t`Empty (${i + 1})`, narrow: true }),
      field(page, `${here}.gross`, { label: t`Full (${i + 1})`, narrow: true })),
    net);
}

const whole = (page, path) => h('div.pair', null,
  field(page, `${path}.whole.tare`, { label: t('Empty bin, pallet or tarpaulin'), narrow: true }),
  field(page, `${path}.whole.gross`, { label: t('With the catch'), narrow: true }));

function truck(page, path) {
  const changes = lengthOf(page.fold, `${path}.truck.changes`);
  const rows = Math.max(changes, page.extra?.get(path) ?? 0);
  return [
    field(page, `${path}.truck.before`, { label: t('Truck before the drop') }),
    field(page, `${path}.truck.after`, { label: t('Truck after the drop') }),
    field(page, `${path}.truck.samePeople`, { label: t('The same people in it both times?'), choices: [['yes', t('yes')], ['no', t('no')]] }),
    h('section', null, h('h2', null, t('What else changed in between')),
      field(page, `${path}.truck.fuelBurnt.amount`, { label: t('Fuel burnt'), hint: t('Its mass; a US gallon of diesel is about 7 lb, a litre 0.84 kg.') }),
      Array.from({ length: rows }, (_, i) => h('div.change', null,
        field(page, `${path}.truck.changes[${i}].what`, { label: t`Change ${i + 1}: what`, mode: 'text' }),
        field(page, `${path}.truck.changes[${i}].joined`, { label: t`Change ${i + 1}: came on or left`, choices: [['yes', t('came on')], ['no', t('left')]] }),
        field(page, `${path}.truck.changes[${i}].amount`, { label: t`Change ${i + 1}: how much` }))),
      button(t('+ snow, a person, a tool'), () => {
        page.extra ??= new Map();
        page.extra.set(path, changes + 1);
        page.redraw();
      }, 'quiet')),
  ];
}

function photos(page, path) {
  // What is said of a picture outlives a drawing of the screen that comes in between.
  page.said ??= new Map();
  const say = h('p.say', { id: 'photo-say', role: 'status' }, page.said.get(path));
  const tell = text => {
    page.said.set(path, text);
    const shown = document.getElementById('photo-say');
    if (shown) shown.textContent = text;
  };
  const list = h('ul.photos', { 'aria-label': t('Pictures of this run') });
  photosOf(page.fold, `${path}.`).forEach(async photo => {
    const kept = await yard.store.photo(photo.id);
    const source = kept ? URL.createObjectURL(kept.blob) : `/api/photos/${photo.id}`;
    list.append(h('li', null, h('img', { src: source, alt: t`Picture: ${photo.payload.name}`, loading: 'lazy' }),
      h('small', null, kept ? (kept.state === 'sent' ? t('confirmed') : kept.state === 'refused' ? t`not taken: ${kept.reason}` : t('on this device only')) : t('from the server'))));
  });
  const input = h('input', {
    id: 'photo', type: 'file', accept: 'image/*', capture: 'environment',
    on: {
      change: async event => {
        const [file] = event.target.files;
        if (!file) return;
        tell(t('Keeping the picture …'));
        try {
          await addPhoto(page.fold, `${path}.ticket`, file);
          tell('');
          page.redraw();
        } catch (wrong) {
          tell(wrong.message);
        }
      },
    },
  });
  return h('section', null, h('h2', null, t('Pictures')),
    h('div.field', null, h('label', { for: 'photo' }, t('Picture of the ticket or the display')), input), say, list);
}
