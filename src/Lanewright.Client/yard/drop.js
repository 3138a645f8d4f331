// Drop: one run at a time; big start and stop, the timer, what was counted, the settings.
import { warmUp } from './core.js';
import { button, h } from './dom.js';
import { field } from './field.js';
import { runsOf, textOf } from './fold.js';
import { yard } from './yard.js';
import { t } from './words.js';

const COUNTS = {
  pulses: { label: t('Pulses counted'), mode: 'numeric' },
  revolutions: { label: t('Turns of the shaft counted') },
  time: { label: t('Time it ran'), unit: 's' },
  delivered: { label: t('Delivered, as the controller says') },
};
const LIKE_BEFORE = ['setting', 'gate', 'engineSpeed', 'oil'];

/** What a run of this test counts with; null before the form of the constant is known. */
export function countOf(fold) {
  if (fold.kind === 'verification') return 'delivered';
  switch (textOf(fold, 'spreader.constant')) {
    case 'pulses-per-mass': case 'mass-per-pulse': return 'pulses';
    case 'mass-per-revolution': return 'revolutions';
    case 'mass-per-time': return 'time';
    default: return null;
  }
}

/** The run in hand: the one the address names, else the one named before on this page, which may be empty still, else the last. */
export function runInHand(page, named) {
  if (Number.isInteger(named)) page.run = named;
  return page.run ?? runsOf(page.fold).at(-1) ?? 0;
}

/** Buttons to choose a run, shared by the steps that show one run at a time. */
export function runChoice(page, run, go, step) {
  const runs = runsOf(page.fold);
  if (!runs.includes(run)) runs.push(run);
  const next = Math.max(...runs) + 1;
  const isEmpty = !runsOf(page.fold).includes(run);
  return h('nav.runs', { 'aria-label': t('Runs') },
    runs.map(n => h('a', { href: `#/test/${page.id}/${step}/${n}`, 'aria-current': n === run ? 'true' : null }, t`Run ${n + 1}`)),
    isEmpty ? null : button(t('+ next run'), async () => {
      await likeBefore(page, Math.max(...runs), next);
      go(`#/test/${page.id}/${step}/${next}`);
    }, 'quiet'));
}

// The next run begins with the settings of the one before; they can be changed.
async function likeBefore(page, from, to) {
  for (const name of LIKE_BEFORE) {
    const text = textOf(page.fold, `runs[${from}].${name}`);
    if (text) await page.set(`runs[${to}].${name}`, text, name, null, false);
  }
}

/** The screen. */
export function drop(page, run, go) {
  warmUp();
  const path = `runs[${run}]`;
  const count = countOf(page.fold);
  const open = textOf(page.fold, 'spreader.loop') === 'open';
  return [
    runChoice(page, run, go, 'drop'),
    h('p.hint', null, t('Everyone clear of auger, chain and spinner? Then start metering and the timer together.')),
    timer(page, run),
    count && count !== 'time' ? field(page, `${path}.${count}`, COUNTS[count]) : null,
    field(page, `${path}.time`, COUNTS.time),
    count === null ? h('p.say.wrong', null, t('Say in Prepare what the constant is: pulses, turns or time.')) : null,
    open ? field(page, `${path}.setting`, { label: t('Setting of the drive'), hint: t('Like 50 %.'), mode: 'text' }) : null,
    h('section', null, h('h2', null, t('Settings')),
      open ? null : field(page, `${path}.setting`, { label: t('Setting of the drive'), mode: 'text' }),
      field(page, `${path}.gate`, { label: t('Gate opening'), unit: textOf(page.fold, 'units') === 'us' ? 'in' : 'mm' }),
      field(page, `${path}.engineSpeed`, { label: t('Engine speed'), unit: 'rpm' }),
      field(page, `${path}.oil`, { label: t('Hydraulic oil'), choices: [['warm', t('warm')], ['cold', t('cold')]] }),
      field(page, `${path}.note`, { label: t('Note on this run'), lines: 2 }),
      clearRun(page, run)),
  ];
}

// The start is kept, so a reload or an empty battery does not stop the time.
function timer(page, run) {
  const key = `timer ${page.id} ${run}`;
  const face = h('output.time', { 'aria-live': 'off' }, '0.0 s');
  const box = h('div.timer', null, face);
  const say = h('p.say.wrong', { role: 'alert' });
  let began = null;
  // The page's own clock cannot be set back, but may stand still while the phone sleeps; after a reload only the device's knows
  // the start. The longer of both holds.
  let steady = null;
  const elapsed = () => Math.max(Date.now() - began, steady === null ? -Infinity : performance.now() - steady);
  const show = () => {
    if (!face.isConnected || began === null) return;
    face.textContent = elapsed() < 0 ? '? s' : `${(elapsed() / 1000).toFixed(1)} s`;
    requestAnimationFrame(show);
  };
  const draw = () => {
    box.replaceChildren(face, say, began === null
      ? button(t('Start'), async () => {
        began = Date.now();
        steady = performance.now();
        say.textContent = '';
        draw();
        show();
        await yard.store.setFact(key, began);
      }, 'start')
      : button(t('Stop'), async () => {
        const lasted = elapsed();
        const seconds = (lasted / 1000).toFixed(1);
        began = steady = null;
        if (lasted < 0) {
          await yard.store.setFact(key, null);
          draw();
          say.textContent = t('The clock of this device was set back while the time ran: it is not known. Type it from another watch, or drop again.');
          return;
        }
        const mark = ['en-US', 'en-GB', 'invariant'].includes(textOf(page.fold, 'culture') || yard.settings.culture) ? '.' : ',';
        await page.set(`runs[${run}].time`, seconds.replace('.', mark), COUNTS.time.label);
        await yard.store.setFact(key, null);
        draw();
        page.redraw();
      }, 'stop'));
  };
  yard.store.fact(key).then(value => {
    began = value;
    draw();
    show();
  });
  return box;
}

function clearRun(page, run) {
  const say = h('span');
  return h('p', null, button(t('Clear this run'), async event => {
    if (event.target.dataset.sure !== 'yes') {
      event.target.dataset.sure = 'yes';
      event.target.textContent = t('Clear it: press once more');
      return;
    }
    const paths = [...page.fold.fields.values()].filter(one => one.path.startsWith(`runs[${run}].`) && one.text !== '');
    for (const one of paths) await page.set(one.path, '', one.path, 'run cleared');
    page.redraw();
  }, 'quiet'), say);
}
