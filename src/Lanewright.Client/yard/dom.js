// Makes elements. Texts are always set as texts, never as markup.

/**
 * @param {string} tag Name of the element, with classes after dots: "p.note".
 * @param {Record<string, any>|null} [props] Attributes; `on` holds listeners, `data` data attributes.
 * @param {...any} children Elements, texts, lists of them; null and false are left out.
 * @returns {HTMLElement}
 */
export function h(tag, props, ...children) {
  const [name, ...classes] = tag.split('.');
  const element = document.createElement(name);
  if (classes.length) element.className = classes.join(' ');
  for (const [key, value] of Object.entries(props ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (key === 'on') for (const [event, listen] of Object.entries(value)) element.addEventListener(event, listen);
    else if (key === 'data') for (const [data, text] of Object.entries(value)) element.dataset[data] = text;
    else if (key === 'value') element.value = value;
    else element.setAttribute(key, value === true ? '' : String(value));
  }
  add(element, children);
  return element;
}

/** Adds children, lists flattened, nothing for null and false. */
export function add(parent, children) {
  for (const child of children.flat(Infinity)) {
    if (child === null || child === undefined || child === false) continue;
    parent.append(child instanceof Node ? child : document.createTextNode(String(child)));
  }
}

/** Puts new children in the place of the old ones. */
export function fill(parent, ...children) {
  parent.replaceChildren();
  add(parent, children);
  return parent;
}

/** A picture that Core made; an empty list when there is none. */
export function picture(svg, label) {
  if (!svg) return [];
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  return parsed.nodeName === 'svg' ? [h('figure', { 'aria-label': label }, document.importNode(parsed, true))] : [];
}

/** Makes a button. */
export function button(text, act, kind = '', more = {}) {
  return h('button' + (kind ? '.' + kind : ''), { type: 'button', on: { click: act }, ...more }, text);
}

/** The names of the parts that a person unfolded; they stay so when the screen is drawn anew. */ const unfolded = new Set();

/** A part that is folded away until somebody asks for it. */
export function folded(name, controls, key = name) {
  const keep = open => { if (open) unfolded.add(key); else unfolded.delete(key); };
  const part = h('details', {
    open: unfolded.has(key),
    // The browser opens it by other ways as well, and says so later; a part that was drawn over has no say any more.
    on: { toggle: () => { if (part.isConnected) keep(part.open); } },
  }, h('summary', { on: { click: () => keep(!part.open) } }, name), controls);
  return part;
}
