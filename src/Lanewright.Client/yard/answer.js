// Answer: the value to key in, how sure it is, what it means on the road, what is wrong, and what to do next.
import { state } from './core.js';
import { diagnosis } from './diagnosis.js';
import { button, fill, h, picture } from './dom.js';
import { t } from './words.js';

/** The short answer that stands above every step. */
export function strip(page) {
  const box = h('div.strip', { role: 'status', 'aria-live': 'polite', 'aria-atomic': 'true' });
  const tell = answer => {
    const parts = (answer.results ?? (answer.figures ?? []).filter(figure => figure.main).slice(0, 2).map(figure =>
      ({ setting: figure.name, constant: figure.text, relative: figure.relative ?? '' }))).map(result => [
      h('p.value', null, result.setting ? h('span.setting', null, result.setting + ' ') : null,
        h('strong', null, result.keyIn?.text ?? result.constant), ' ', h('span', null, result.relative)),
      result.more ? h('p', null, result.more) : null]);
    fill(box, parts.length ? parts : h('p', null, missing(answer)));
  };
  if (page.answer) tell(page.answer);
  else fill(box, h('p', null, typeof state === 'string'
    ? t('Not computed here: the computing part did not start. Everything is kept, the server computes it.') : t('Computing starts …')));
  page.onAnswer(tell);
  return box;
}

// Without an answer: what is missing for one, the first of it in words.
function missing(answer) {
  const needed = (answer.todo ?? []).filter(one => one.needed);
  return needed.length > 1 ? t`No answer yet. ${needed[0].text} And ${needed.length - 1} more to say.` : needed.length ? t`No answer yet. ${needed[0].text}` : t('No answer yet.');
}

/** The screen. */
export function answer(page, go) {
  const box = h('div');
  const more = h('div');
  const draw = now => {
    fill(box, content(page, now));
    fill(more, behind(page, now));
  };
  page.onAnswer(draw);
  if (page.answer) draw(page.answer);
  else fill(box, h('p.hint', null, t('Not computed on this device yet.')));
  return [box, diagnosis(page), more];
}

function content(page, now) {
  const needed = now.todo.filter(one => one.needed);
  return [
    now.results.map(result => resultOf(result, now.usable)),
    needed.length ? h('section', null, h('h2', null, now.results.length ? t('Not counted yet') : t('Still to do')), todo(page, needed)) : null,
    findingsOf(now.findings),
  ];
}

function behind(page, now) {
  const better = now.todo.filter(one => !one.needed);
  return [
    now.results.map(result => detail(result)),
    better.length ? h('section', null, h('h2', null, t('Makes it better')), todo(page, better)) : null,
  ];
}

function resultOf(result, usable) {
  return h('section.result', null,
    result.setting ? h('h2', null, t`At ${result.setting}`) : null,
    result.keyIn ? [h('p.label', null, usable ? t('Key in') : t('So far; not good enough to key in')), h(usable ? 'p.key' : 'p.key.sofar', null, h('strong', null, result.keyIn.number), ' ', h('span', null, result.unit)),
      result.keyIn.rounding ? h('p.hint', null, result.keyIn.rounding) : null] : null,
    h('p', null, h('strong', null, result.constant), ' ', result.relative, result.dry ? `, ${result.dry}` : null),
    h('p', null, result.interval),
    result.road ? h('p.road', null, result.road) : null,
    result.tolerance ? h('p', null, result.tolerance) : null,
    result.more ? h('p.more', null, result.more) : null);
}

function detail(result) {
  return h('section', null, h('h2', null, result.setting ? t`The runs at ${result.setting}` : t('The runs')),
    picture(result.pictures.runs, t('The runs')),
    h('div.scroll', { tabindex: '0', role: 'region', 'aria-label': t('The runs as a table') }, h('table', null,
      h('thead', null, h('tr', null, [t('Run'), t('Net'), t('Constant'), t('Off by')].map(text => h('th', { scope: 'col' }, text)))),
      h('tbody', null, result.runs.map(run => h('tr', null, h('th', { scope: 'row' }, run.name),
        h('td', null, run.net), h('td', null, run.ratio), h('td', null, run.deviation)))))),
    h('h3', null, t('Where the doubt comes from')),
    picture(result.pictures.budget, t('Where the doubt comes from')),
    h('p.hint', null, result.method));
}

const todo = (page, list) => h('ul.todo', null, list.map(one => h('li', null,
  h('a', { href: `#/test/${page.id}/${one.step}${place(one.path)}` }, one.text))));

const place = path => {
  const run = /^runs\[(\d+)\]/.exec(path);
  return run ? '/' + run[1] : '';
};

// Which setting or run it is about, where its own words do not say so.
function whereOf(finding) {
  const setting = /^runs at (.+)$/.exec(finding.field);
  const run = /^runs\[(\d+)\]/.exec(finding.field);
  return setting ? [' · ', t`At ${setting[1]}`] : run && finding.values?.run === undefined ? [' · ', t`Run ${Number(run[1]) + 1}`] : null;
}

/** What the person must know: what was found and what to do about it; nothing when nothing was. */
export const findingsOf = findings => findings.length ? h('section', null, h('h2', null, t('Look at this')), h('ul.findings', null, findings.map(finding =>
      h('li.' + finding.severity, null, h('strong', null, { stop: t('Stop'), warn: t('Doubt'), note: t('Note') }[finding.severity] ?? finding.severity, whereOf(finding)),
        h('p', null, finding.message), h('p.hint', null, finding.action))))) : null;
