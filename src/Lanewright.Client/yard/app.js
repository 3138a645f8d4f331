// Starts the page: store first, then the screen, then Core and the network, which nothing waits for.
import { answer, strip } from './answer.js';
import { begin } from './begin.js';
import { calibrationAnswer, isCalibration, sheet } from './calibration.js';
import { coreSettled, onCore, startCore } from './core.js';
import { decide } from './decide.js';
import { add, button, fill, h } from './dom.js';
import { drop, runInHand } from './drop.js';
import { home } from './home.js';
import { Page } from './page.js';
import { practice } from './practice.js';
import { prepare } from './prepare.js';
import { settings, who } from './settings.js';
import { fetchTest, onSync, run as sendNow, startSync, sync } from './sync.js';
import { readVersion, startUpdates, updates } from './update.js';
import { weigh } from './weigh.js';
import { isFull, onChange, openYard, yard } from './yard.js';
import { textOf } from './fold.js';
import { t } from './words.js';

const STEPS = [['prepare', t('Prepare')], ['drop', t('Drop')], ['weigh', t('Weigh')], ['answer', t('Answer')], ['decide', t('Decide')]];
const OTHER_STEPS = [['sheet', t('Sheet')], ['answer', t('Answer')], ['decide', t('Decide')]];
const stepsOf = fold => fold && isCalibration(fold) ? OTHER_STEPS : STEPS;
const main = document.getElementById('main');
const top = document.getElementById('top');
let page = null;
let drawn = '';

const go = address => {
  if (location.hash === address) draw();
  else location.hash = address;
};

// A press and its release must meet the same element, or the click is lost: what would be drawn in between waits.
let pressed = false;
const late = new Set();
addEventListener('pointerdown', event => { pressed = !event.target.closest?.('select'); }, true);
for (const end of ['pointerup', 'pointercancel']) addEventListener(end, () => setTimeout(release), true);

function release() {
  pressed = false;
  const waiting = [...late];
  late.clear();
  for (const one of waiting) one();
}

// Of several drawings begun, the latest is the one that shows.
let turns = 0;

/** Draws what the address names. What is typed is kept, and the field that had the focus has it again. */
async function draw() {
  if (pressed) return late.add(draw);
  const turn = ++turns;
  const [, place = '', id = '', step = 'prepare', run] = (location.hash || '#/').slice(1).split('/');
  drawTop();
  if (!yard.person && place !== 'settings') return show('who', who(go));
  if (place !== 'test') {
    page?.close();
    page = null;
    if (place === 'new') return show('new', begin(go));
    if (place === 'settings') return show('settings', settings(go));
    if (place === 'practice') {
      const content = await practice(go);
      return turn === turns ? show('practice', content) : null;
    }
    const content = await home(go);
    return turn === turns ? show('home', content) : null;
  }
  if (page?.id !== id) {
    page?.close();
    const opened = await new Page(id, () => draw()).open();
    if (turn !== turns) return opened.close();
    page = opened;
    page.onTrouble = wrong => trouble(wrong);
    page.onTyping = () => tellSent();
    if (!page.fold.begun && await fetchTest(id).catch(() => false)) await page?.reopen();
    if (turn !== turns) return null;
  }
  if (!page.fold.begun && page.fold.fields.size === 0) {
    return show('missing', [h('h1', null, t('This test is not on this device')),
      h('p', null, t('It comes when the server can be reached.')), button(t('Back'), () => go('#/'), 'plain')]);
  }
  const n = runInHand(page, run === undefined ? null : Number(run));
  drawTop();
  page.forget();
  const steps = stepsOf(page.fold);
  const content = steps === OTHER_STEPS ? { answer: calibrationAnswer, decide: p => decide(p, go) }[step] ?? sheet : { prepare, drop: p => drop(p, n, go), weigh: p => weigh(p, n, go), answer: p => answer(p, go), decide: p => decide(p, go) }[step] ?? prepare;
  const at = Math.max(0, steps.findIndex(([key]) => key === step));
  show(`${id}/${step}/${n}`, [
    h('h1', null, h('small', null, `${textOf(page.fold, 'spreader.id') || t('Spreader not named')} `), steps[at][1]),
    step === 'answer' || step === 'prepare' ? null : strip(page),
    page.fold.conflicts ? h('p.say.wrong', { role: 'status' }, t`${page.fold.conflicts} field has two different values; there is no certain answer until one is chosen.|${page.fold.conflicts} fields have two different values; there is no certain answer until one is chosen.`, ...conflictLinks()) : null,
    content(page, go),
    h('div.bar', null,
      at > 0 ? button(t('Back'), () => go(stepAddress(id, steps[at - 1][0])), 'plain') : button(t('All tests'), () => go('#/'), 'plain'),
      page.undo.length ? button(t`Undo ${shortened(page.undo.at(-1).label)}`, () => page.takeBack(), "plain undo") : null,
      at < steps.length - 1 ? button(steps[at + 1][1], () => go(stepAddress(id, steps[at + 1][0])), 'main') : null),
  ]);
}

// The steps that show one run name it, so that going from one to the other, or a reload, stays with the run in hand.
const stepAddress = (id, step) =>
  `#/test/${id}/${step}${(step === 'drop' || step === 'weigh') && page?.id === id && page.run !== undefined ? '/' + page.run : ''}`;

const shortened = text => text.length > 18 ? text.slice(0, 17) + '…' : text;

// Where a conflict waits that this step does not show.
function conflictLinks() {
  const links = new Map();
  for (const field of page.fold.fields.values()) {
    if (!field.conflict) continue;
    const run = /^runs\[(\d+)\]\.(\w+)/.exec(field.path);
    const step = isCalibration(page.fold) ? 'sheet' : !run ? 'prepare' : ['filled', 'containers', 'whole', 'truck', 'counted'].includes(run[2]) ? 'weigh' : 'drop';
    links.set(run && step !== 'sheet' ? `${step}/${run[1]}` : step, run ? `${step === 'weigh' ? t('Weigh') : t('Drop')}, ${t`Run ${Number(run[1]) + 1}`}` : t('Prepare'));
  }
  return [...links].map(([place, text]) => [' ', h('a', { href: `#/test/${page.id}/${place}` }, text)]);
}

function show(name, content) {
  const focus = document.activeElement;
  const kept = focus?.dataset?.path ? { path: focus.dataset.path, from: focus.selectionStart, to: focus.selectionEnd } : focus?.id && name === drawn ? { id: focus.id } : null;
  const scroll = scrollY;
  if (page) page.drawing = true;
  fill(main, content);
  if (name !== drawn) {
    scrollTo(0, 0);
    // A screen reader begins with the new screen, not in the middle of the old one.
    if (drawn) main.focus({ preventScroll: true });
    document.title = `${main.querySelector('h1')?.textContent ?? 'Lanewright'}, Lanewright`;
  } else {
    scrollTo(0, scroll);
    const again = kept?.path ? main.querySelector(`[data-path="${CSS.escape(kept.path)}"]`) : kept?.id ? document.getElementById(kept.id) : null;
    again?.focus({ preventScroll: true });
    if (kept?.path && again?.setSelectionRange && kept.from !== null && kept.from !== undefined) {
      try { again.setSelectionRange(kept.from, kept.to); } catch { /* a select has no selection */ }
    }
  }
  if (page) {
    page.drawing = false;
    if (kept?.path && document.activeElement?.dataset?.path !== kept.path) page.settle(kept.path);
  }
  drawn = name;
}

function drawTop() {
  if (pressed) return late.add(drawTop);
  const [, place, id, step] = location.hash.split('/');
  fill(top,
    h('p.mark', null, h('a', { href: '#/' }, 'Lanewright')),
    h('p.sent', { role: 'status' }, h('a', { href: '#/settings' }, sentText())),
    yard.store.lasting ? null : h('p.alarm', null, t('This browser stores nothing: what is not sent is lost when the page closes. '), yard.store.trouble),
    isSignedOut() ? h('p.alarm', { role: 'status' }, t('Nobody is signed in: everything is kept here, nothing is sent. '), h('a', { href: '/sign-in?return=/yard/' }, t('Sign in'))) : null,
    updates.ready ? h('p.alarm', null, t('Newer pages are here. '), button(t('Use them'), () => updates.use(), 'quiet')) : null,
    place === 'test' && yard.person ? h('nav.steps', { 'aria-label': t('Steps') }, h('ol', null, stepsOf(page?.id === id ? page.fold : null).map(([key, name]) => h('li', null,
      h('a', { href: stepAddress(id, key), 'aria-current': key === (step ?? (page && isCalibration(page.fold) ? 'sheet' : 'prepare')) ? 'step' : null }, name))))) : null);
  showStep();
}

const isSignedOut = () => yard.mode === 'accounts' && sync.online && !yard.signedIn && Boolean(yard.person);

// With large letters the list of steps is wider than the phone: the step in hand is always in view.
function showStep() {
  const list = top.querySelector('.steps');
  const now = list?.querySelector('[aria-current]');
  if (now) list.scrollLeft = now.offsetLeft - (list.clientWidth - now.offsetWidth) / 2;
}

/** How much the server does not have; the one line that is always in view. */
function sentText() {
  // What is being typed in this moment is not sent either.
  const parts = [t`not yet sent: ${yard.unsent + (page?.typing ?? 0)}`];
  if (yard.waiting) parts.push(t`waiting: ${yard.waiting}`);
  if (yard.refused) parts.push(t`not taken: ${yard.refused}`);
  parts.push(!sync.online ? t('offline') : sync.problem && yard.unsent ? t('not sent: see why') : t('online'));
  return parts.join(' · ');
}

// Only the text, so that a screen reader hears it when it changes and not at every key.
function tellSent() {
  const link = top.querySelector('.sent a');
  if (link && link.textContent !== sentText()) link.textContent = sentText();
}

function trouble(wrong, what = t('the last text'), again = t('type it again')) {
  const text = isFull(wrong)
    ? t`This device is full: ${what} was not kept. Free some space, then ${again}.`
    : t`Not kept on this device: ${what}. ${wrong?.message ?? wrong}`;
  document.getElementById('trouble')?.remove();
  add(document.body, [h('p.alarm', { id: 'trouble', role: 'alert' }, text, ' ', button(t('Close'), () => document.getElementById('trouble').remove(), 'quiet'))]);
}

// What nobody waited for, such as a remembered choice.
addEventListener('unhandledrejection', event => {
  if (!isFull(event.reason)) return;
  event.preventDefault();
  trouble(event.reason, t('the last choice'), t('go on'));
});
await openYard();
document.documentElement.dataset.look = yard.settings.look;
addEventListener('hashchange', draw);
// Going away is the last chance to make entries of what was typed; the drafts are kept in any case.
addEventListener('pagehide', () => page?.settleAll());
document.addEventListener('visibilitychange', () => { if (document.hidden) page?.settleAll(); });
onChange(subject => {
  drawTop();
  document.documentElement.dataset.look = yard.settings.look;
  // A name half typed is not drawn over.
  if (drawn === 'home' || (!subject && drawn === 'who' && (yard.person || !document.getElementById('person')?.value))) draw();
});
onSync(() => {
  drawTop();
  // Only the server says whether people sign in here; a name is asked for no longer than that is unknown.
  if (drawn === 'who' && yard.mode === 'accounts' && !document.getElementById('sign-in')) draw();
});
onCore(() => { if (drawn === 'settings') draw(); });
await draw();
startCore();
navigator.storage?.persist?.().then(kept => yard.store.setFact('persisted', kept)).catch(() => {});
startSync(await readVersion());
// Keeping the pages comes last: on a first visit it would compete with Core for a slow line.
await Promise.race([coreSettled(), new Promise(done => setTimeout(done, 8000))]);
startUpdates(() => { drawTop(); if (drawn === 'settings') draw(); });
globalThis.lanewright = { yard, sync, sendNow };
