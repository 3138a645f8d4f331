// One field of the sheet: label, what is typed, what it was understood as or what is wrong with it, and a choice where two
// people typed different texts.
import { button, fill, h } from './dom.js';
import { textOf } from './fold.js';
import { t } from './words.js';

let count = 0;

/**
 * @param {import('./page.js').Page} page
 * @param {string} path
 * @param {{label: string, hint?: string, unit?: string, mode?: string, choices?: [string, string][], lines?: number, short?: string}} about
 */
export function field(page, path, about) {
  const stands = page.fold.fields.get(path);
  if (stands?.conflict) return conflict(page, path, about, stands);
  const id = 'field-' + ++count;
  const say = h('div.say', { id: id + '-say', data: { say: path } });
  const control = about.choices ? choice(page, path, about, id) : typed(page, path, about, id);
  const block = h('div.field' + (about.narrow ? '.narrow' : ''), null,
    h('label', { for: id }, about.label, about.unit ? h('span.unit', null, ' ' + about.unit) : null),
    about.hint ? h('p.hint', { id: id + '-hint' }, about.hint) : null, control, say);
  page.onAnswer(answer => tell(page, path, say, control, answer));
  if (page.answer) tell(page, path, say, control, page.answer);
  return block;
}

function typed(page, path, about, id) {
  const props = {
    id,
    value: textOf(page.fold, path),
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    enterkeyhint: 'next',
    'aria-describedby': `${about.hint ? id + '-hint ' : ''}${id}-say`,
    data: { path },
    on: {
      input: event => page.type(path, event.target.value, about.label),
      change: () => page.settle(path),
      blur: () => page.settle(path),
    },
  };
  return about.lines
    ? h('textarea', { ...props, rows: about.lines })
    : h('input', { ...props, type: about.mode === 'date' ? 'date' : 'text', inputmode: about.mode === 'date' ? null : about.mode ?? 'decimal' });
}

function choice(page, path, about, id) {
  const now = textOf(page.fold, path);
  const known = about.choices.some(([value]) => value === now);
  return h('select', {
    id, data: { path }, 'aria-describedby': `${about.hint ? id + '-hint ' : ''}${id}-say`,
    on: { change: event => page.set(path, event.target.value, about.label) },
  },
  h('option', { value: '', selected: now === '' }, t('choose')),
  known || now === '' ? null : h('option', { value: now, selected: true }, now),
  about.choices.map(([value, text]) => h('option', { value, selected: value === now }, text)));
}

// Beside the field: what a number was understood as, or what is wrong with it and what to do.
function tell(page, path, say, control, answer) {
  const about = answer.fields[path];
  const problem = about?.problem;
  const grave = problem && problem.severity === 'stop';
  say.classList.toggle('wrong', Boolean(grave));
  if (grave) control.setAttribute('aria-invalid', 'true');
  else control.removeAttribute('aria-invalid');
  if (problem) {
    fill(say, h('p', null, h('strong', null, grave ? t('Stop: ') : t('Note: ')), problem.message, ' ', problem.action),
      problem.choices.map(choice => button(choice, () => page.set(path, choice, choice).then(() => page.redraw()), 'quiet')));
  } else if (about?.echo && about.echo !== textOf(page.fold, path)) fill(say, h('p', null, '= ', about.echo));
  else fill(say);
}

// Two people, or one on two devices, typed different texts: both are shown, a person chooses.
function conflict(page, path, about, stands) {
  return h('fieldset.field.conflict', null,
    h('legend', null, t`${about.label}: two different values`),
    h('p.hint', null, t('Both are kept. Choose the one that holds, or clear both and weigh again.')),
    stands.heads.map(head => button(
      `${head.text === '' ? t('nothing') : head.text} (${head.entry.person}, ${clock(head.entry.at)})`,
      () => page.set(path, head.text, about.label, 'chosen of two', false), 'quiet')));
}

/** A time of day for people. */
export function clock(at) {
  const date = new Date(at);
  const two = number => String(number).padStart(2, '0');
  const day = date.toDateString() === new Date().toDateString() ? '' : `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} `;
  return `${day}${two(date.getHours())}:${two(date.getMinutes())}`;
}
