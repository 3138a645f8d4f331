// What a screen of the yard must keep: sizes of targets, contrast, no scrolling sideways, keyboards for numbers.
() => {
  const wrong = [];
  const visible = element => element.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true }) && element.getBoundingClientRect().width > 0;
  const name = element => `${element.tagName.toLowerCase()} "${(element.getAttribute('aria-label') || element.innerText || element.id || '').trim().slice(0, 40)}"`;
  const inText = element => element.tagName === 'A' && getComputedStyle(element).display === 'inline'
    && [...element.parentElement.childNodes].some(node => node.nodeType === 3 && node.textContent.trim());

  for (const element of document.querySelectorAll('a[href], button, input, select, textarea, summary')) {
    if (!visible(element) || element.closest('.skip') || inText(element)) continue;
    // A box to tick is as large as the label around it.
    const target = ['checkbox', 'radio'].includes(element.type) ? element.closest('label') ?? element : element;
    const box = target.getBoundingClientRect();
    if (box.width < 55.5 || box.height < 55.5) wrong.push(`target ${name(target)} is ${Math.round(box.width)} x ${Math.round(box.height)}`);
    if (element.matches('[data-path*=".gross"], [data-path*=".tare"], [data-path$="pulses"], [data-path$=".time"], [data-path$=".filled"]')
      && !['decimal', 'numeric'].includes(element.inputMode)) wrong.push(`no keyboard of numbers for ${name(element)}`);
  }

  const parse = text => {
    const parts = text.match(/[\d.]+/g)?.map(Number) ?? [0, 0, 0, 0];
    return { r: parts[0], g: parts[1], b: parts[2], a: parts[3] ?? 1 };
  };
  const ground = element => {
    for (let at = element; at; at = at.parentElement) {
      const colour = parse(getComputedStyle(at).backgroundColor);
      if (colour.a > 0) return colour;
    }
    return { r: 255, g: 255, b: 255 };
  };
  const light = ({ r, g, b }) => {
    const [x, y, z] = [r, g, b].map(part => part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4);
    return 0.2126 * x + 0.7152 * y + 0.0722 * z;
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const seen = new Set();
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement;
    if (!walker.currentNode.textContent.trim() || seen.has(element) || element.closest('script, style, desc, title, .skip, option') || !visible(element)) continue;
    seen.add(element);
    const style = getComputedStyle(element);
    const ink = parse(element.closest('svg') ? style.fill : style.color);
    const [a, b] = [light(ink), light(ground(element))];
    const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    if (contrast < 7) wrong.push(`contrast ${contrast.toFixed(1)} of ${name(element)}`);
  }

  if (document.documentElement.scrollWidth > innerWidth) wrong.push(`scrolls sideways: ${document.documentElement.scrollWidth} of ${innerWidth}`);
  return wrong;
}
