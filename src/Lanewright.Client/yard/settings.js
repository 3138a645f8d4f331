// Who works here, in which units, and what this device keeps and has sent.
import { state } from './core.js';
import { button, fill, h } from './dom.js';
import { clock } from './field.js';
import { listOf } from './begin.js';
import { run, sync } from './sync.js';
import { updates } from './update.js';
import { remember, yard } from './yard.js';

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
      say.textContent = 'Type a name or initials.';
      return;
    }
    await remember('person', text);
    go('#/');
  };
  return [
    h('h1', null, 'Who are you?'),
    signIn ? [h('p', null, 'This yard has accounts.'), h('p', null, h('a.button', { href: '/sign-in?return=/yard/' }, 'Sign in'))] : [
      listOf('people').length ? h('ul.names', null, listOf('people').map(item => h('li', null, button(item.record.name, () => take(item.record.name), 'wide')))) : null,
      h('form', { on: { submit: event => { event.preventDefault(); take(name.value); } } },
        h('div.field', null, h('label', { for: 'person' }, 'Name or initials'), name), say,
        h('div.bar', null, h('button.main', { type: 'submit' }, 'Go on'))),
    ],
  ];
}

/** The screen. */
export function settings(go) {
  const own = h('div');
  draw(own);
  return [
    h('h1', null, 'This device'),
    h('section', null, h('h2', null, 'Sending'), own),
    h('section', null, h('h2', null, 'Person and units'),
      h('p', null, h('strong', null, yard.person || 'Nobody yet'), ' ', yard.mode === 'accounts' ? [h('a', { href: '/sign-in?return=/yard/' }, 'Sign in as somebody else'), ' ', h('a', { href: '/sign-out' }, 'Sign out')]
        : button('Somebody else', async () => { await remember('person', ''); go('#/'); }, 'quiet')),
      select('units', 'Units of new tests', [['us', 'lb, in, lb/ft³'], ['si', 'kg, mm, kg/m³']]),
      select('culture', 'Decimal mark of new tests', CULTURES),
      select('look', 'Colours', [['device', 'as the device'], ['light', 'light'], ['dark', 'dark']])),
    h('section', null, h('h2', null, 'What this device can do'), abilities()),
    h('div.bar', null, button('All tests', () => go('#/'), 'main')),
  ];
}

const select = (key, label, choices) => h('div.field', null, h('label', { for: 'set-' + key }, label), h('select', {
  id: 'set-' + key, on: { change: event => remember('settings', { ...yard.settings, [key]: event.target.value }) },
}, choices.map(([value, text]) => h('option', { value, selected: value === yard.settings[key] }, text))));

async function draw(box) {
  const refused = await yard.store.entriesIn('refused');
  const waiting = await yard.store.entriesIn('wait');
  fill(box,
    h('p', null, `Not yet sent: ${yard.unsent}. `, sync.at ? `Last confirmed exchange ${clock(sync.at)}.` : 'No exchange yet.'),
    sync.problem ? h('p.say.wrong', null, sync.problem) : null,
    sync.clock ? h('p.say.wrong', null, `This device's clock is ${Math.round(Math.abs(sync.clock) / 60000)} minutes ${sync.clock > 0 ? 'ahead of' : 'behind'} the server's. The order of the records does not depend on it; the times shown do.`) : null,
    h('p', null, button('Send now', async () => { await run(); draw(box); }, 'quiet'), ' ',
      button('Save a copy as a file', () => saveFile(), 'quiet')),
    refused.length ? [h('h3', null, 'Not taken by the server'), h('p.hint', null, 'They stay on this device and hold up nothing.'), reasons(refused)] : null,
    waiting.length ? [h('h3', null, 'Waiting'), reasons(waiting)] : null);
}

const reasons = records => h('ul', null, records.slice(0, 50).map(record => h('li', null,
  `${record.entry.payload.path ?? record.entry.kind} ${record.entry.payload.text ?? ''}: `, record.reason ?? '')));

function abilities() {
  const list = h('ul');
  Promise.all([yard.store.fact('persisted'), navigator.storage?.estimate?.() ?? {}]).then(([persisted, space]) => {
    fill(list,
      h('li', null, yard.store.lasting ? 'Keeps everything on this device.' : `Keeps nothing: ${yard.store.trouble}`),
      h('li', null, persisted ? 'The browser promised not to clear it.'
        : 'The browser did not promise to keep it when space runs out. Add this page to the home screen, and send often.'),
      h('li', null, updates.offline ? 'Opens without a network.' : `Does not open without a network: ${updates.why}`),
      h('li', null, state === true ? 'Computes the answer itself.' : state === null ? 'The computing part is starting.' : `Does not compute: ${state}`),
      space.usage ? h('li', null, `Uses ${(space.usage / 1e6).toFixed(1)} MB.`) : null,
      h('li', null, `Device ${yard.device.slice(-12)}, pages ${updates.version}.`));
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
