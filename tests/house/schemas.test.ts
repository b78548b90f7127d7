import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as frames from '../../core/facts/frames.ts';
import { schemaDocuments } from '../../scripts/schemas/documents.mjs';

const FOLDER = new URL('../../docs/device-schemas/', import.meta.url);

test('the schemas that a device maker reads are the ones that the device door checks with; npm run schemas writes them', () => {
  const documents = schemaDocuments(frames);
  expect(readdirSync(FOLDER).toSorted()).toEqual([...documents.keys()].toSorted());
  for (const [name, text] of documents) {
    expect(readFileSync(new URL(name, FOLDER), 'utf8')).toBe(text);
  }
});
