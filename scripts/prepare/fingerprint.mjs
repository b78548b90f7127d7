import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';

/**
 * One hash over the names and contents of files, so that what has not changed is not done again.
 * Contents rather than times: a fresh clone and a switch of branches touch every time.
 * @param {string} root
 * @param {string[]} places files and folders below root; what is absent counts as absent
 * @returns {string}
 */
export function fingerprint(root, places) {
  const hash = createHash('sha256');
  for (const place of places) addPlace(hash, root, place);
  return hash.digest('hex');
}

function addPlace(hash, root, place) {
  const full = path.join(root, place);
  const stat = statSync(full, { throwIfNoEntry: false });
  if (stat === undefined) {
    hash.update(`absent ${place}\n`);
  } else if (stat.isDirectory()) {
    for (const name of readdirSync(full).sort()) addPlace(hash, root, `${place}/${name}`);
  } else {
    hash.update(`${place} ${stat.size}\n`);
    hash.update(readFileSync(full));
  }
}

/** @param {string} file @returns {string | null} the stamp left by the last success, or null */
export function readStamp(file) {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    return null;
  }
}
