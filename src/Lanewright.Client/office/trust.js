// @ts-check
// Says whether this browser can keep the pages for work without a network. The page holds the words, in its language.

const secure = window.isSecureContext;
const worker = 'serviceWorker' in navigator;
const store = 'indexedDB' in window;
const ready = /** @type {HTMLElement} */ (document.getElementById('ready'));
const why = /** @type {HTMLElement} */ (document.getElementById('why'));

/** @param {string} name */
const say = (name) => {
  const item = document.createElement('li');
  item.textContent = why.dataset[name] ?? '';
  why.append(item);
};

ready.textContent = (secure && worker && store ? ready.dataset.yes : ready.dataset.no) ?? '';
if (!secure) say('untrusted');
if (secure && !worker) say('noPages');
if (!store) say('noStore');
if (secure && worker && store) {
  // A browser that let somebody click through a certificate warning still refuses to keep pages; only trying tells.
  navigator.serviceWorker.getRegistration('/yard/').then(
    (found) => say(found ? 'kept' : 'later'),
    () => { ready.textContent = ready.dataset.no ?? ''; say('refused'); });
}
