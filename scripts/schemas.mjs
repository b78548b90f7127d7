// Writes docs/device-schemas from the schemas that the device door checks with; `npm run schemas` builds them first.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { inRoot } from './prepare/places.mjs';
import { schemaDocuments } from './schemas/documents.mjs';

const frames = await import(pathToFileURL(inRoot('dist', 'node', 'core', 'facts', 'frames.js')).href);
const folder = inRoot('docs', 'device-schemas');
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
for (const [name, text] of schemaDocuments(frames, readFileSync(inRoot('docs', 'device-protocol.md'), 'utf8'))) {
  writeFileSync(path.join(folder, name), text);
  console.log(`docs/device-schemas/${name}`);
}
