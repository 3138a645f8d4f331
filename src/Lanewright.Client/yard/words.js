// The words of the pages in the person's language. English is the key, as in Core; the table is Core's own, kept with the
// pages. English waits for nothing; another language loads its table beside the modules that need it.

export const LANGUAGES = [['en', 'English'], ['fr', 'Français'], ['fi', 'Suomi']];
const KEY = 'lanewright-language';

const known = code => LANGUAGES.some(([one]) => one === code);

// A browser may refuse this store; then its own language holds.
function remembered() {
  try { return localStorage.getItem(KEY); } catch { return null; }
}

/** The language: as chosen on this device, else the browser's own, else English. */
export const language = [remembered(), (navigator.language ?? '').slice(0, 2).toLowerCase()].find(known) ?? 'en';

const table = language === 'en' ? {} : await fetch(`/yard/words/${language}.json`).then(answer => answer.ok ? answer.json() : {}, () => ({}));
document.documentElement.lang = language;

/** Chooses the language of this device; the pages are opened anew, since every text is made of it. */
export function choose(code) {
  try { localStorage.setItem(KEY, code); } catch { return; }
  location.reload();
}

/**
 * A text in the language, plain or as a template with values, whose key has {0}, {1} in their places. Two forms parted by |
 * are for one and for more, by the first whole number.
 * @param {string|TemplateStringsArray} text
 * @param {...any} values
 * @returns {string}
 */
export function t(text, ...values) {
  if (typeof text === 'string') return table[text] ?? text;
  let next = 0;
  let key = text[0];
  for (let i = 1; i < text.length; i++) {
    if (text[i - 1].includes('|')) next = 0;
    key += `{${next++}}${text[i]}`;
  }
  const forms = (table[key] ?? key).split('|');
  const count = values.find(Number.isInteger);
  const one = count === 1 || (count === 0 && language === 'fr');
  return (forms.length > 1 && count !== undefined ? forms[one ? 0 : 1] : forms.join('|'))
    .replace(/\{(\d+)\}/g, (_, place) => String(values[place]));
}
