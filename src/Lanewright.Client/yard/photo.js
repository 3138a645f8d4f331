// Pictures: made smaller, kept as an entry with the hash of the bytes, sent after everything else.
import { write } from './yard.js';
import { t } from './words.js';

const LONGEST_SIDE = 1600;
const MOST_BYTES = 8_000_000;

/** The pictures whose place begins like this. */
export const photosOf = (fold, place) => fold.photos.filter(photo => String(photo.payload.slot).startsWith(place));

/** Keeps a picture. */
export async function addPhoto(fold, slot, file) {
  if (!crypto.subtle) throw new Error(t('Pictures need a page opened as localhost or by https. Everything else works.'));
  const blob = await smaller(file);
  if (blob.size > MOST_BYTES) throw new Error(t('This picture is larger than 8 MB and could not be made smaller. Take it with less detail.'));
  const digest = await crypto.subtle.digest('SHA-256', await blob.arrayBuffer());
  const sha256 = [...new Uint8Array(digest)].map(byte => byte.toString(16).padStart(2, '0')).join('');
  const name = String(file.name || 'picture').replace(/[\u0000-\u001f\u007f]/g, '').slice(0, 100) || 'picture';
  return write('test.photo', fold.id, { slot, name, mime: blob.type, bytes: blob.size, sha256 }, { photo: blob });
}

async function smaller(file) {
  let picture;
  try {
    picture = await createImageBitmap(file);
  } catch {
    throw new Error(t('This file is not a picture that the browser can read. Choose a JPEG or PNG.'));
  }
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise(done => canvas.toBlob(done, 'image/jpeg', 0.82));
  if (!blob) throw new Error(t('The browser could not make the picture smaller. Nothing was kept of it.'));
  return blob;
}
