// The pages on this device: kept by the service worker, so that they open without a network, and renewed as a whole.
import { t } from './words.js';

export const updates = {
  version: '',
  /** Whether the pages open without a network, and why not. */ offline: false,
  why: t('not known yet'),
  /** Whether newer pages wait. */ ready: false,
  use: () => {},
};

/** The version of these pages. */
export async function readVersion() {
  updates.version = await fetch('/pages.json').then(answer => answer.json()).then(pages => pages.version, () => 'unknown');
  return updates.version;
}

/** Registers the service worker, which fetches the pages to keep, and looks for newer ones. */
export async function startUpdates(tell) {
  if (!('serviceWorker' in navigator)) {
    updates.why = isSecureContext ? t('this browser cannot.') : t('the address is neither localhost nor https with a trusted certificate.');
    tell();
    return;
  }
  navigator.serviceWorker.addEventListener('message', ({ data }) => {
    if (data.pages === 'newer') {
      updates.ready = true;
      updates.use = () => navigator.serviceWorker.controller?.postMessage('use');
    }
    if (data.pages === 'used') location.reload();
    tell();
  });
  try {
    await navigator.serviceWorker.register('/yard/service.js', { scope: '/yard/' });
    const registration = await navigator.serviceWorker.ready;
    updates.offline = true;
    registration.active?.postMessage('look');
    addEventListener('online', () => registration.active?.postMessage('look'));
  } catch (wrong) {
    updates.why = t`the browser refused: ${wrong.message}`;
  }
  tell();
}
