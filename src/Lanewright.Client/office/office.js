// @ts-check
// Sorting and filtering of the office's tables. Without this script the tables are complete, in the server's order.

// French and Finnish pages write a decimal comma and thin spaces between thousands, English ones a point and commas.
const isComma = /^(fr|fi)/.test(document.documentElement.lang);

/** @param {string} text */
const plain = (text) => isComma ? text.replace(/(?<=\d)[\u202f\u00a0](?=\d{3})/g, '').replace(',', '.') : text.replace(/,/g, '');

/** @param {string} text */
const sortKey = (text) => {
  const trimmed = text.trim();
  const number = plain(trimmed.replace(/^± /, '')).match(/^-?\d+(\.\d+)?/);
  return number && !/^\d{4}-\d\d/.test(trimmed) ? Number(number[0]) : trimmed.toLowerCase();
};

/** @param {string | number} a @param {string | number} b */
const compare = (a, b) =>
  typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b), undefined, { numeric: true });

/** @param {HTMLTableElement} table @param {number} column @param {HTMLTableCellElement} heading */
function sort(table, column, heading) {
  const descending = heading.getAttribute('aria-sort') === 'ascending';
  for (const other of table.querySelectorAll('thead th')) other.removeAttribute('aria-sort');
  heading.setAttribute('aria-sort', descending ? 'descending' : 'ascending');
  const body = table.tBodies[0];
  const rows = [...body.rows].map((row) => ({ row, key: sortKey(row.cells[column].textContent ?? '') }));
  rows.sort((a, b) => (descending ? -1 : 1) * compare(a.key, b.key));
  body.append(...rows.map((one) => one.row));
}

for (const table of /** @type {NodeListOf<HTMLTableElement>} */ (document.querySelectorAll('table[data-sortable]'))) {
  [...table.tHead?.rows[0].cells ?? []].forEach((heading, column) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = heading.textContent;
    button.addEventListener('click', () => sort(table, column, heading));
    heading.replaceChildren(button);
  });
}

for (const part of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-needs-script]'))) part.hidden = false;

for (const input of /** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll('input[data-filter]'))) {
  const table = /** @type {HTMLTableElement | null} */ (document.getElementById(input.dataset.filter ?? ''));
  input.addEventListener('input', () => {
    const words = input.value.toLowerCase().split(/\s+/).filter(Boolean);
    for (const row of table?.tBodies[0].rows ?? []) {
      const text = (row.textContent ?? '').toLowerCase();
      row.hidden = !words.every((word) => text.includes(word));
    }
  });
}
