// Who works here, in which units, and what this device keeps and has sent.
import { state } from './core.js';
import { button, fill, h } from './dom.js';
import { VERDICTS } from './decide.js';
import { clock } from './field.js';
import { listOf } from './begin.js';
import { onSync, run, sync } from './sync.js';
import { updates } from './update.js';
import { remember, yard } from './yard.js';
import { choose, language, LANGUAGES, t } from './words.js';

const CULTURES = [
  ['en-US', '1,234.5 (United States)'], ['en-GB', '1,234.5 (United Kingdom)'], ['de-DE', '1234,5 (Deutschland)'],
  ['fr-FR', '1234,5 (France)'], ['fr-CA', '1234,5 (Canada, français)'], ['fi-FI', '1234,5 (Suomi)'],
  ['nb-NO', '1234,5 (Norge)'], ['tr-TR', '1234,5 (Türkiye)'],
];

/** The question who is here; nothing can be written down without a name. */
export function who(go) {
  const signIn = yard.mode === 'accounts';
  const name = h('input', { id: 'person', autocomplete: 'off', enterkeyhint: 'go', maxlength: 60 });
  const say = h('p.say.wrong', { role: 'alert' });
  const take = async person => {
    const text = person.trim();
    if (!text) {
      say.textContent = t('Type a name or initials.');
      return;
    }
    await remember('person', text);
    go('#/');
  };
  return [
    h('h1', null, t('Who are you?')),
    signIn ? [h('p', null, t('This yard has accounts.')), h('p', null, h('a.button', { id: 'sign-in', href: '/sign-in?return=/yard/' }, t('Sign in')))] : [
      listOf('people').length ? h('ul.names', null, listOf('people').map(item => h('li', null, button(item.record.name, () => take(item.record.name), 'wide')))) : null,
      h('form', { on: { submit: event => { event.preventDefault(); take(name.value); } } },
        h('div.field', null, h('label', { for: 'person' }, t('Name or initials')), name), say,
        h('div.bar', null, h('button.main', { type: 'submit' }, t('Go on')))),
    ],
  ];
}

/** The screen. */
export function settings(go) {
  const own = h('div');
  draw(own);
  shown = own;
  return [
    h('h1', null, t('This device')),
    h('section', null, h('h2', null, t('Sending')),
      h('p', null, button(t('Send now'), () => run(), 'quiet'), ' ', button(t('Save a copy as a file'), () => saveFile(), 'quiet')), own),
    h('section', null, h('h2', null, t('Person and units')),
      h('p', null, h('strong', null, yard.person || t('Nobody yet')), ' ', yard.mode === 'accounts' ? [h('a', { href: '/sign-in?return=/yard/' }, t('Sign in as somebody else')), ' ', h('a', { href: '/sign-out' }, t('Sign out'))]
        : button(t('Somebody else'), async () => { await remember('person', ''); go('#/'); }, 'quiet')),
      select('units', t('Units of new tests'), [['us', 'lb, in, lb/ft³'], ['si', 'kg, mm, kg/m³']]),
      h('div.field', null, h('label', { for: 'set-language' }, 'Language · Langue · Kieli'), h('select', {
        id: 'set-language', on: { change: event => choose(event.target.value) },
      }, LANGUAGES.map(([value, text]) => h('option', { value, lang: value, selected: value === language }, text)))),
      select('culture', t('Decimal mark of new tests'), CULTURES),
      select('look', t('Colours'), [['device', t('as the device')], ['light', t('light')], ['dark', t('dark')]])),
    h('section', null, h('h2', null, t('What this device can do')), abilities()),
    h('div.bar', null, button(t('All tests'), () => go('#/'), 'main')),
  ];
}

const select = (key, label, choices) => h('div.field', null, h('label', { for: 'set-' + key }, label), h('select', {
  id: 'set-' + key, on: { change: event => remember('settings', { ...yard.settings, [key]: event.target.value }) },
}, choices.map(([value, text]) => h('option', { value, selected: value === yard.settings[key] }, text))));

// What was learned of the server is shown whoever asked for it: this button, another page, or the clock.
let shown = null;
onSync(() => { if (!sync.busy && shown?.isConnected) draw(shown); });

async function draw(box) {
  const refused = await yard.store.entriesIn('refused');
  const waiting = await yard.store.entriesIn('wait');
  fill(box,
    h('p', null, t`Not yet sent: ${yard.unsent}. `, sync.at ? t`Last confirmed exchange ${clock(sync.at)}.` : t('No exchange yet.')),
    sync.problem ? h('p.say.wrong', null, sync.problem) : null,
    sync.clock ? h('p.say.wrong', null, sync.clock > 0
      ? t`This device's clock is ${Math.round(sync.clock / 60000)} minutes ahead of the server's. The order of the records does not depend on it; the times shown do.`
      : t`This device's clock is ${Math.round(-sync.clock / 60000)} minutes behind the server's. The order of the records does not depend on it; the times shown do.`) : null,
    refused.length ? [h('h3', null, t('Not taken by the server')), h('p.hint', null, t('They stay on this device and hold up nothing.')), reasons(refused),
      h('p', null, button(t('Offer them again'), async () => {
        await yard.store.markEntries(refused.map(({ id }) => ({ id, state: 'phone' })));
        await run();
      }, 'quiet'))] : null,
    waiting.length ? [h('h3', null, t('Waiting')), reasons(waiting)] : null);
}

const reasons = records => h('ul', null, records.slice(0, 50).map(record => h('li', null,
  `${said(record.entry)}: `, record.reason ?? '')));

// What an entry says, in the words of the pages as far as they have one for it.
function said({ kind, payload }) {
  if (kind === 'test.decision') return `${VERDICTS.find(([value]) => value === payload.verdict)?.[1] ?? payload.verdict} ${payload.keyed ?? ''}`.trim();
  if (kind === 'test.begin') return `${t('New test')} ${payload.fields?.['spreader.id'] ?? ''}`.trim();
  const [, run, container, side] = /^runs\[(\d+)\]\.(?:containers\[(\d+)\]\.(tare|gross))?/.exec(payload.path ?? '') ?? [];
  const place = side ? `${t`Run ${Number(run) + 1}`}, ${side === 'tare' ? t`Empty (${Number(container) + 1})` : t`Full (${Number(container) + 1})`}` : payload.path ?? kind;
  return `${place} ${payload.text ?? payload.name ?? ''}`.trim();
}

function abilities() {
  const list = h('ul');
  Promise.all([yard.store.fact('persisted'), navigator.storage?.estimate?.() ?? {}]).then(([persisted, space]) => {
    fill(list,
      h('li', null, yard.store.lasting ? t('Keeps everything on this device.') : t`Keeps nothing: ${yard.store.trouble}`),
      h('li', null, persisted ? t('The browser promised not to clear it.')
        : t('The browser did not promise to keep it when space runs out. Add this page to the home screen, and send often.')),
      h('li', null, updates.offline ? t('Opens without a network.') : t`Does not open without a network: ${updates.why}`),
      h('li', null, state === true ? t('Computes the answer itself.') : state === null ? t('The computing part is starting.') : t`Does not compute: ${state}`),
      space.usage ? h('li', null, t`Uses ${(space.usage / 1e6).toFixed(1)} MB.`) : null,
      h('li', null, t`Device ${yard.device.slice(-12)}, pages ${updates.version}.`));
  });
  return list;
}

/** Everything this device wrote, as a file that `lanewright import` does not need: for the worst case. */
async function saveFile() {
  const entries = (await yard.store.allEntries()).map(record => ({ state: record.state, ...record.entry }));
  const blob = new Blob([JSON.stringify({ format: 'lanewright-device/1', device: yard.device, entries }, null, 1)], { type: 'application/json' });
  const link = h('a', { href: URL.createObjectURL(blob), download: `lanewright-${new Date().toISOString().slice(0, 10)}.json` });
  link.click();
}
