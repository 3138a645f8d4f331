// Decide: adopt the value, reject it or repeat the test; the value keyed in is typed and read back.
import { ask } from './core.js';
import { button, fill, h } from './dom.js';
import { clock } from './field.js';
import { write, yard } from './yard.js';
import { t } from './words.js';

export const VERDICTS = [
  ['adopt', t('Adopt'), t('It holds and is used.')],
  ['repeat', t('Repeat'), t('Not good enough yet, or something was wrong.')],
  ['reject', t('Reject'), t('It does not hold; the old value stays.')],
];
const WORDS = { adopt: t('Adopted'), repeat: t('To be repeated'), reject: t('Rejected') };

/** The screen. */
export function decide(page, go) {
  const made = page.fold.decisions;
  const key = `decision ${page.id}`;
  const form = h('form.decision', { on: { submit: event => event.preventDefault() } });
  let asked = null;
  const draw = async () => {
    // Whether a value is keyed in is known with the answer; the drawing changes at most once.
    const isKeyed = page.answer?.keyedIn ?? true;
    if (asked === isKeyed) return;
    asked = isKeyed;
    fill(form, content(page, go, key, await yard.store.fact(key) ?? {}, isKeyed));
  };
  page.onAnswer(draw);
  draw();
  return [made.length ? taken(page, made) : null, notTaken(page), mayNot(), form];
}

function taken(page, made) {
  return h('section', null, h('h2', null, made.length > 1 ? t('Two decisions stand') : t('Decided')),
    made.length > 1 ? h('p.say.wrong', null, t('Two people decided differently. A new decision settles it.')) : null,
    h('ul', null, made.map(one => h('li', null, h('strong', null, WORDS[one.payload.verdict] ?? one.payload.verdict),
      t` by ${one.person}, ${clock(one.at)}. `, one.payload.keyed ? t`Keyed in: ${one.payload.keyed}. ` : null,
      one.payload.readBack ? t`Read back: ${one.payload.readBack}. ` : null, one.payload.why))),
    h('p.hint', null, t('A new decision below replaces it and says why.')));
}

// A decision that the server refused holds nowhere; it is shown as long as it stays on this device.
const notTaken = page => page.fold.notTaken.length ? h('section', null, h('h2', null, t('Not taken by the server')),
  h('ul', null, page.fold.notTaken.map(({ entry, reason }) => h('li', null, h('strong', null, WORDS[entry.payload.verdict] ?? entry.payload.verdict),
    t` by ${entry.person}, ${clock(entry.at)}. `, entry.payload.keyed ? t`Keyed in: ${entry.payload.keyed}. ` : null, entry.payload.why, ' ', h('span.wrong', null, reason))))) : null;

/** Why the person signed in may not decide, said before anything is typed; null when they may, or nobody knows. */
const mayNot = () => yard.mode === 'accounts' && (yard.role === 'viewer' || yard.role === 'operator')
  ? h('p.say.wrong', { role: 'status' }, t`${yard.signedIn} is signed in to read and type, not to decide. A technician or supervisor decides, on this device or another.`) : null;

const resultOf = page => page.answer?.results?.length === 1 ? page.answer.results[0] : null;

// What is typed here is kept on the device until it is decided.
function content(page, go, key, kept, isKeyed) {
  const keep = change => {
    Object.assign(kept, change);
    yard.store.setFact(key, kept);
  };
  const say = h('p.say.wrong', { role: 'alert' });
  const text = (id, label, hint, props = {}) => h('div.field', null, h('label', { for: id }, label),
    hint ? h('p.hint', { id: id + '-hint' }, hint) : null,
    h('input', {
      id, autocomplete: 'off', value: kept[id] ?? '', 'aria-describedby': hint ? id + '-hint' : null,
      on: { input: event => { keep({ [id]: event.target.value }); compare(); } }, ...props,
    }));
  const note = h('p.say', { role: 'status' });
  // Core compares, since only it knows how a number may be written.
  const compare = async () => {
    if (!isKeyed) return;
    const result = resultOf(page);
    const answer = await ask('Keyed', {
      ...page.question(), advised: result?.keyIn?.text ?? '', unit: result?.unit ?? '', keyed: kept.keyed ?? '', readBack: kept.readBack ?? '',
    });
    if (answer) note.textContent = answer.say.join(' ');
  };
  // After a reload the answer comes later than the screen.
  const advice = h('div');
  const advise = () => {
    const advised = resultOf(page)?.keyIn;
    fill(advice, advised ? h('p', null, t('To key in: '), h('strong', null, advised.text)) : null,
      page.answer && !page.answer.usable ? h('p.say.wrong', null, t('The answer is not good enough to adopt yet; the Answer step says why.')) : null);
    compare();
  };
  page.onAnswer(advise);
  advise();
  return [
    h('fieldset', null, h('legend', null, t('What is decided?')), VERDICTS.map(([value, name, doc]) => h('label.choice', null,
      h('input', { type: 'radio', name: 'verdict', value, checked: kept.verdict === value, on: { change: () => { keep({ verdict: value }); compare(); } } }),
      h('span', null, h('strong', null, name), ' ', doc)))),
    advice,
    isKeyed ? [
      text('keyed', t('Value keyed in'), t('As it was typed into the controller.'), { inputmode: 'decimal' }),
      text('readBack', t('Read back from the controller'), t('A second person reads it from the display.'), { inputmode: 'decimal' }),
      note,
    ] : null,
    h('div.field', null, h('label', { for: 'why' }, t('Why')), h('textarea', {
      id: 'why', rows: 2, on: { input: event => keep({ why: event.target.value }) },
    }, kept.why ?? '')),
    say,
    button(t('Write the decision down'), async () => {
      const made = page.fold.decisions;
      if (!kept.verdict) { say.textContent = t('Choose adopt, repeat or reject.'); return; }
      if (isKeyed && kept.verdict === 'adopt' && !kept.keyed?.trim()) { say.textContent = t('Adopt needs the value that was keyed in.'); return; }
      if (kept.verdict === 'adopt' && page.answer && !page.answer.usable && !kept.why?.trim()) { say.textContent = t('The answer says not to key it in: say why it is adopted all the same.'); return; }
      if (made.length && !kept.why?.trim()) { say.textContent = t('It was decided before: say why it changes.'); return; }
      await write('test.decision', page.id, {
        verdict: kept.verdict, why: kept.why?.trim() ?? '', keyed: kept.keyed?.trim() || null, readBack: kept.readBack?.trim() || null,
        ...(made.length > 1 ? { over: made.slice(0, -1).map(one => one.id) } : {}),
      }, { parent: made.at(-1)?.id ?? null, why: made.length ? kept.why.trim() : null });
      await yard.store.setFact(key, null);
      go('#/');
    }, 'main'),
  ];
}
