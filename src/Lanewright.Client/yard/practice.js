// Practice: a spreader that is only arithmetic, with a counter, a scale and a fault that is known at the end. Core keeps the
// truth; the page keeps what was done and shows what comes back.
import { ask, onCore, state } from './core.js';
import { button, fill, folded, h } from './dom.js';
import { yard } from './yard.js';
import { language, t } from './words.js';

const FACT = 'practice';

/** The screen. */
export async function practice(go) {
  const box = h('div', null, h('p.hint', null, typeof state === 'string' ? t('The computing part did not start; practice needs it.') : t('Computing starts …')));
  let kept = await yard.store.fact(FACT);
  let lists = null;
  const draw = async (view = null) => {
    lists ??= await ask('PracticeLists', language);
    if (!lists) return;
    if (!kept) { fill(box, choose()); return; }
    view ??= await ask('Practice', { ...kept, language });
    if (view) fill(box, shown(view));
  };
  const keep = async (now, view = null) => {
    kept = now;
    await yard.store.setFact(FACT, now);
    await draw(view);
  };
  // What Core cannot do is said and not kept.
  let problems = [];
  const typed = { setting: null, seconds: '60' };
  const act = async action => {
    const next = { ...kept, actions: [...kept.actions, action] };
    const view = await ask('Practice', { ...next, language });
    problems = view?.problems ?? [];
    await (problems.length ? draw() : keep(next, view));
  };

  function choose() {
    const list = h('select', { id: 'exercise' }, lists.exercises.map(one => h('option', { value: one.number }, `${one.number}. ${one.title}`)),
      h('option', { value: 0 }, t('A spreader drawn by chance; a third are healthy')));
    return [h('p', null, t('Everything here is invented. Find what is wrong with the spreader, with as little work as you can.')),
      h('div.field', null, h('label', { for: 'exercise' }, t('Exercise, easy to hard')), list),
      button(t('Start it'), () => keep({
        exercise: Number(list.value), seed: 1 + crypto.getRandomValues(new Uint32Array(1))[0], culture: yard.settings.culture, actions: [],
      }), 'main')];
  }

  function shown(view) {
    return [
      h('p.road', null, view.story), h('p', null, view.task),
      problems.length ? h('div.say.wrong', { role: 'alert' }, problems.map(text => h('p', null, text))) : null,
      h('details', { open: !kept.actions.length }, h('summary', null, t('What is known')), h('ul', null, view.known.map(text => h('li', null, text)))),
      runs(view.fields),
      view.tests.length ? h('section', null, h('h2', null, t('Tests done')), h('ul', null, view.tests.map(text => h('li', null, text)))) : null,
      h('p', null, h('strong', null, t`Work so far: ${Math.round(view.minutes)} minutes`)),
      view.ended ? end(view) : [run(view), tests(), name()],
      h('p', null, button(view.ended ? t('Another one') : t('Stop this one'), () => keep(null), view.ended ? 'main' : 'quiet')),
    ];
  }

  function run(view) {
    const road = view.asksFor === 'speed';
    const setting = h('input', { id: 'practice-setting', inputmode: 'text', autocomplete: 'off', value: typed.setting ?? (road ? '30 mph' : '50 %') });
    const seconds = h('input', { id: 'practice-seconds', inputmode: 'decimal', autocomplete: 'off', value: typed.seconds });
    return h('section', null, h('h2', null, road ? t('Drive a pass') : t('Run it')),
      h('div.field', null, h('label', { for: 'practice-setting' }, road ? t('Speed') : t('Setting of the drive')), setting),
      road ? null : h('div.field', null, h('label', { for: 'practice-seconds' }, t('Time it runs'), h('span.unit', null, ' s')), seconds),
      button(road ? t('Drive') : t('Run'), () => { Object.assign(typed, { setting: setting.value, seconds: seconds.value }); act({ do: 'run', setting: setting.value, ...(road ? {} : { seconds: seconds.value.trim() ? seconds.value : null }) }); }, 'plain'));
  }

  function tests() {
    return folded(t('Do a test'), h('ul.todo', null, lists.tests.map(test => h('li', null,
      button(t`${test.how} (${Math.round(test.minutes)} minutes)`, () => act({ do: 'test', code: test.code }), 'quiet')))));
  }

  function name() {
    const list = h('select', { id: 'practice-cause' }, h('option', { value: '' }, t('choose')), lists.causes.map(cause => h('option', { value: cause.code }, cause.name)));
    return h('section', null, h('h2', null, t('What is it?')), h('div.field', null, h('label', { for: 'practice-cause' }, t('It is')), list),
      button(t('That is it'), () => { if (list.value) act({ do: 'name', code: list.value }); }, 'main'));
  }

  const end = view => h('section.result', null, h('h2', null, view.right ? t('Right') : t('Not this time')), view.end.map(text => h('p', null, text)),
    view.diagnosis ? h('p.hint', null, t('From your sheet the diagnosis says: '), view.diagnosis.headline) : null);

  onCore(() => { if (box.isConnected) draw(); });
  draw();
  return [h('h1', null, t('Practice')), box, h('div.bar', null, button(t('All tests'), () => go('#/'), 'plain'))];
}

// What the counter and the scale showed, run by run, as it would be typed.
function runs(fields) {
  const all = new Map();
  for (const [path, text] of Object.entries(fields)) {
    const place = /^runs\[(\d+)\]\.(.+)$/.exec(path);
    if (!place) continue;
    if (!all.has(place[1])) all.set(place[1], []);
    all.get(place[1]).push([place[2], text]);
  }
  if (!all.size) return null;
  return h('section', null, h('h2', null, t('The sheet so far')), [...all].map(([n, list]) => h('details', { open: true }, h('summary', null, t`Run ${Number(n) + 1}`),
    h('dl.facts', null, list.map(([path, text]) => [h('dt', null, words(path)), h('dd', null, text)])))));
}

const WORDS = {
  pulses: t('pulses counted'), revolutions: t('turns counted'), time: t('time it ran'), delivered: t('delivered, as the controller says'), setting: t('setting'),
  gate: t('gate'), engineSpeed: t('engine speed'), oil: t('oil'), filled: t('containers filled'), note: t('note'), tare: t('empty'), gross: t('full'), before: t('truck before'), after: t('truck after'),
};
const words = path => {
  const box = /^containers\[(\d+)\]\.(\w+)$/.exec(path);
  return box ? t`container ${Number(box[1]) + 1}, ${WORDS[box[2]] ?? box[2]}` : WORDS[path.split('.').at(-1)] ?? path;
};
