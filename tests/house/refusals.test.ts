import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { NO_ANSWER } from '../../web/live/say.ts';
import { IN_SPANISH, refusalSaid } from '../../web/words/refusals.ts';

/** Where what reaches a screen is refused; devices are answered in English, by the protocol. */
const REFUSING = ['core/session', 'core/imports', 'server/files-in', 'server/access', 'server/api', 'server/viewers', 'server/log', 'web/live'];
const CODES = [/\bcode: ('[a-z-]+'(?: \| '[a-z-]+')*)/g, /\brefuse\(\w+, \d+, '([a-z-]+)'/g, /type (?:ConflictCode|LayoutLack) = (.*);/g];

function codesIn(source: string): string[] {
  return CODES.flatMap((code) => [...source.matchAll(code)].flatMap(([, found]) => [...found!.matchAll(/[a-z-]+/g)].map(([one]) => one)));
}

function sources(folder: string): string[] {
  const here = new URL(`../../${folder}/`, import.meta.url);
  return readdirSync(here).filter((name) => name.endsWith('.ts')).map((name) => readFileSync(new URL(name, here), 'utf8'));
}

describe('what the server refuses', () => {
  const codes = new Set([...REFUSING.flatMap(sources).flatMap(codesIn), NO_ANSWER]);

  test('is found in the source by its code', () => {
    expect(codes.size).toBeGreaterThan(20);
    expect(codesIn("return { code: 'one-thing', path: '' }; refuse(response, 404, 'another', '', 'x'); type ConflictCode = 'a' | 'b-c';")).toEqual(['one-thing', 'another', 'a', 'b-c']);
  });

  test('has a text in Spanish for every code', () => {
    expect([...codes].filter((code) => IN_SPANISH[code] === undefined).sort()).toEqual([]);
  });

  test('has no text for a code that nobody gives', () => {
    expect(Object.keys(IN_SPANISH).filter((code) => !codes.has(code))).toEqual([]);
  });

  const SENTENCE = 'There is no session s-9.';
  test('is said in Spanish with the sentence of the server beside it', () => {
    expect(refusalSaid({ code: 'unknown-session', sentence: SENTENCE }, 'es')).toEqual({ said: IN_SPANISH['unknown-session'], inEnglish: SENTENCE });
  });
  test('is said by the sentence of the server in English, and where no text is known', () => {
    expect(refusalSaid({ code: 'unknown-session', sentence: SENTENCE }, 'en')).toEqual({ said: SENTENCE, inEnglish: null });
    expect(refusalSaid({ code: 'of-tomorrow', sentence: SENTENCE }, 'es')).toEqual({ said: SENTENCE, inEnglish: null });
  });
});
