import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

let known: string | null = null;

/** Names the program that makes states of facts: a hash over core and over what keeps its states, so that nobody has to remember to count a version up. */
export function codeOfCore(): string {
  return (known ??= hashed());
}

function hashed(): string {
  const hash = createHash('sha256');
  for (const folder of ['../core/', './']) {
    const place = fileURLToPath(new URL(folder, import.meta.url));
    const files = readdirSync(place, { recursive: folder === '../core/', withFileTypes: true }).filter((entry) => entry.isFile() && /\.[jt]s$/.test(entry.name));
    for (const file of files.map((entry) => path.join(entry.parentPath, entry.name)).sort()) hash.update(`${path.relative(place, file)}\n`).update(readFileSync(file));
  }
  return hash.digest('hex');
}
