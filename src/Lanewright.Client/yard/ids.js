// Identities that sort by time.

const hex = [...Array(256)].map((_, i) => i.toString(16).padStart(2, '0'));

/** A UUID of version 7 (RFC 9562): 48 bits of milliseconds, the rest random. */
export function newId(now = Date.now()) {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (let i = 0; i < 6; i++) bytes[i] = Math.floor(now / 2 ** (8 * (5 - i))) % 256;
  bytes[6] = 0x70 | (bytes[6] & 0x0f);
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  const text = [...bytes].map(byte => hex[byte]).join('');
  return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join('-');
}
