// The first screen: tests on this device and on the server, and the way to a new one.
import { button, h } from './dom.js';
import { clock } from './field.js';
import { foldTest, textOf } from './fold.js';
import { sync } from './sync.js';
import { yard } from './yard.js';
import { t } from './words.js';

const WORDS = { adopt: t('adopted'), repeat: t('to be repeated'), reject: t('rejected') };

/** The screen. */
export async function home(go) {
  const bySubject = new Map();
  for (const record of await yard.store.allEntries()) {
    if (!record.entry.kind.startsWith('test.')) continue;
    if (!bySubject.has(record.subject)) bySubject.set(record.subject, []);
    bySubject.get(record.subject).push(record);
  }
  const here = [...bySubject].map(([id, records]) => foldTest(id, records))
    .sort((a, b) => (b.touched ?? '').localeCompare(a.touched ?? ''));
  const open = here.filter(test => !test.decisions.length);
  const decided = here.filter(test => test.decisions.length).slice(0, 20);
  const elsewhere = yard.tests.filter(test => test.state === 'open' && !bySubject.has(test.id)).slice(0, 50);
  return [
    h('h1', null, t('Tests')),
    button(t('New test'), () => go('#/new'), 'main wide'),
    list(t('In hand'), open.map(test => h('li', null, h('a.card', { href: `#/test/${test.id}/weigh` },
      h('strong', null, textOf(test, 'spreader.id') || t('not named')), h('span', null, textOf(test, 'material.name')),
      h('small', null, [test.kind === 'verification' ? t('check') : t('drop test'), test.touched ? clock(test.touched) : '',
        test.unsent ? t`${test.unsent} on this device only` : t('confirmed'), test.conflicts ? t`${test.conflicts} to settle` : ''].filter(Boolean).join(' · '))))),
    t('No test is in hand.')),
    list(t('On the server, begun elsewhere'), elsewhere.map(test => h('li', null, h('a.card', { href: `#/test/${test.id}/weigh` },
      h('strong', null, test.spreaderName || t('not named')), h('span', null, test.material),
      h('small', null, `${test.begunBy}, ${clock(test.begunAt)}`)))), sync.online ? null : t('Not known without the server.')),
    list(t('Decided'), decided.map(test => h('li', null, h('a.card', { href: `#/test/${test.id}/answer` },
      h('strong', null, textOf(test, 'spreader.id') || t('not named')),
      h('span', null, test.decision ? `${WORDS[test.decision.payload.verdict] ?? ''} ${test.decision.payload.keyed ?? ''}` : t('two decisions')),
      h('small', null, test.unsent ? t`${test.unsent} on this device only` : t('confirmed'))))), null),
    h('p', null, h('a.plain', { href: '#/settings' }, t`${yard.person}: units, sending, this device`), ' ',
      h('a.plain', { href: '#/practice' }, t('Practise finding a fault')), ' ', h('a.plain', { href: '/office' }, t('To the office'))),
  ];
}

const list = (name, items, empty) => items.length || empty
  ? h('section', null, h('h2', null, name), items.length ? h('ul.cards', null, items) : h('p.hint', null, empty)) : null;
