// What may be wrong, shown where the doubt arises: beside the answer. Core ranks the causes; earlier tests come from the server
// once and are kept for the time without a network.
import { ask } from './core.js';
import { button, fill, folded, h, picture } from './dom.js';
import { clock } from './field.js';
import { isCheck, textOf } from './fold.js';
import { call } from './sync.js';
import { write, yard } from './yard.js';
import { t } from './words.js';

const FIRST = 3;

/** The section; empty until there is something to say. */
export function diagnosis(page) {
  const box = h('section.diagnosis', { 'aria-live': 'polite' });
  let asked = '';
  const look = async now => {
    if (!now?.results?.length) return fill(box);
    const earlier = await earlierOf(page);
    const question = { ...page.question(), ...earlier };
    const text = JSON.stringify(question);
    if (text === asked) return null;
    asked = text;
    const found = await ask('Diagnose', question);
    return found ? fill(box, shown(page, found)) : null;
  };
  page.onAnswer(look);
  look(page.answer);
  return box;
}

async function earlierOf(page) {
  const spreader = textOf(page.fold, 'spreader.id');
  if (!spreader) return {};
  const key = `earlier ${spreader}`;
  // Once for each opening of a test; without a network what was fetched before.
  page.earlier ??= {};
  page.earlier[spreader] ??= call(`/api/earlier?${new URLSearchParams({ spreader, before: textOf(page.fold, 'date'), not: page.id })}`)
    .then(({ body: { facts, history } }) => { yard.store.setFact(key, { facts, history }); return { facts, history }; })
    .catch(async () => await yard.store.fact(key) ?? {});
  return page.earlier[spreader];
}

function shown(page, found) {
  const causes = found.causes.filter(cause => cause.code !== 'nothing-wrong');
  const calm = found.outcome === 'nothing-wrong';
  return [
    h('h2', null, calm ? t('Is something wrong?') : t('What may be wrong')),
    h(calm ? 'p' : 'p.say.wrong', null, found.headline),
    calm ? null : [
      picture(found.picture, t('Each run as it was and as the first cause would have it')),
      h('ul', null, found.evidence.map(line => h('li', null, line))),
      h('ol.causes', null, causes.slice(0, FIRST).map(one)),
      found.next.length ? [h('h3', null, t('The test that tells most for its time')), h('p', null, t`${found.next[0].how} (${Math.round(found.next[0].minutes)} minutes)`),
        h('p.hint', null, t('Lock out before reaching near auger, chain or spinner; local rules and the maker’s instructions stand first.'))] : null,
      folded(t('All that was considered'), [h('ol.causes', null, found.causes.map(one)),
        found.next.length > 1 ? [h('h3', null, t('Other tests')), h('ul', null, found.next.slice(1).map(test => h('li', null, t`${test.how} (${Math.round(test.minutes)} minutes)`)))] : null,
        h('p.hint', null, t('Chances rest on stated ranges and on how common each cause is taken to be; both are ours.'))]),
    ],
    known(page, found, calm),
    notes(page),
  ];
}

const one = cause => h('li', null, h('strong', null, `${cause.name}: ${cause.chanceText}`), h('p', null, cause.effect), h('p.hint', null, t('If so: '), cause.alsoSeen));

// What it turned out to be is written down, and the office counts it.
function known(page, found, calm) {
  const id = 'turned-out';
  const say = h('p.say', { role: 'status' });
  const list = h('select', { id }, h('option', { value: '' }, t('not known yet')), found.causes.map(cause => h('option', { value: cause.code }, cause.name)));
  return h('details', { open: !calm }, h('summary', null, t('What did it turn out to be?')),
    h('div.field', null, h('label', { for: id }, t('It turned out to be')), list), say,
    button(t('Write it down'), async () => {
      if (!list.value) { say.textContent = t('Choose what it was.'); return; }
      const name = found.causes.find(cause => cause.code === list.value).name;
      await write('test.note', page.id, { text: t`It turned out to be: ${name}.`, cause: list.value });
      await page.redraw();
    }, 'plain'));
}

function notes(page) {
  const said = page.fold.notes.filter(note => !isCheck(note));
  return said.length ? [h('h3', null, t('Notes')), h('ul', null, said.map(note => h('li', null, `${note.person}, ${clock(note.at)}: `, note.payload.text)))] : null;
}
