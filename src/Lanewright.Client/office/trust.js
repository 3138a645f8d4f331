// @ts-check
// Says whether this browser can keep the pages for work without a network.

const secure = window.isSecureContext;
const worker = 'serviceWorker' in navigator;
const store = 'indexedDB' in window;
const ready = /** @type {HTMLElement} */ (document.getElementById('ready'));
const why = /** @type {HTMLElement} */ (document.getElementById('why'));

/** @param {string} text */
const say = (text) => {
  const item = document.createElement('li');
  item.textContent = text;
  why.append(item);
};

ready.textContent = secure && worker && store ? 'Offline ready: yes' : 'Offline ready: no';
if (!secure) say('The connection is not trusted. Open the address that begins with https, and install the certificate first.');
if (secure && !worker) say('This browser keeps no pages. Private windows and some built-in browsers do not; open it in Safari or Chrome.');
if (!store) say('This browser keeps no data. Leave the private window.');
if (secure && worker && store) {
  // A browser that let somebody click through a certificate warning still refuses to keep pages; only trying tells.
  navigator.serviceWorker.getRegistration('/yard/').then(
    (found) => say(found ? 'The pages are kept on this device.' : 'The pages are kept as soon as the yard has been opened once.'),
    () => { ready.textContent = 'Offline ready: no'; say('The browser does not trust the certificate. Install it first.'); });
}
