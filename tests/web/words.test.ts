import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { learn, WORDS } from '../../web/words/language.ts';

const WEB = fileURLToPath(new URL('../../web/', import.meta.url));

/** What a text is called and how it is said: `start.nowhere`. A text made from what it is about is asked with stand-ins. */
function saidIn(texts: object, name = ''): Map<string, string> {
  const found = new Map<string, string>();
  for (const [key, value] of Object.entries(texts)) {
    const at = name === '' ? key : `${name}.${key}`;
    if (typeof value === 'object' && value !== null) for (const [inner, said] of saidIn(value, at)) found.set(inner, said);
    else found.set(at, typeof value === 'function' ? 'said of what it is about' : String(value));
  }
  return found;
}

/** Names that one language has and the other has not, and texts that say nothing. */
function faults(en: object, es: object): string[] {
  const [english, spanish] = [saidIn(en), saidIn(es)];
  return [
    ...[...english.keys()].filter((name) => !spanish.has(name)).map((name) => `${name} has no Spanish`),
    ...[...spanish.keys()].filter((name) => !english.has(name)).map((name) => `${name} has no English`),
    ...[...english, ...spanish].filter(([, said]) => said.trim() === '' || said === 'undefined').map(([name]) => `${name} says nothing`),
  ];
}

/** The files that a file of ours brings with it, itself first. */
function broughtBy(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const imported = /^(?:import|export) (?!type )(?:[^;']*? from )?'(\.[^']*\.tsx?)';/gm;
  for (const [, to] of readFileSync(file, 'utf8').matchAll(imported)) broughtBy(path.resolve(path.dirname(file), to!), seen);
  return seen;
}

/** Texts that a screen would ask for without having loaded them. */
function unlearned(screen: string, parts: readonly string[]): string[] {
  const asks = new RegExp(String.raw`words(?:\(\))?\.(${parts.join('|')})\b|\{[^}=]*\b(${parts.join('|')})\b[^}=]*\}(?:: Words| = (?:speech(?:\(\))?\.)?words)`);
  return [...broughtBy(path.join(WEB, screen))].flatMap((file) => {
    const found = asks.exec(readFileSync(file, 'utf8'));
    return found === null ? [] : [`${path.relative(WEB, file)} asks for ${found[1] ?? found[2]}`];
  });
}

describe('every text a person reads', () => {
  test('is there in English and in Spanish, and says something', () => {
    expect(saidIn(WORDS.en).size).toBeGreaterThan(400);
    expect(faults(WORDS.en, WORDS.es)).toEqual([]);
  });

  test('is missed where one language lacks it or says nothing', () => {
    expect(faults({ a: 'one', b: { c: 'two', d: () => 'three' } }, { a: ' ', b: { c: 'dos' }, e: 'más' }))
      .toEqual(['b.d has no Spanish', 'e has no English', 'a says nothing']);
  });

  test('is loaded with the screen that says it', () => {
    const late = ['bench', 'plan', 'playback', 'report', 'throwNumbers', 'trials'];
    expect(broughtBy(path.join(WEB, 'glance/glance.tsx')).size).toBeGreaterThan(30);
    expect(unlearned('glance/glance.tsx', [...late, 'asked', 'start'])).toEqual([]);
    expect(unlearned('wall/wall.tsx', [...late, 'glance', 'start'])).toEqual([]);
    expect(unlearned('start/start.tsx', [...late, 'asked', 'glance'])).toEqual([]);
    expect(unlearned('bench/bench.tsx', ['bench'])).not.toEqual([]);
  });

  test('is added in both languages at once', () => {
    const { start } = { start: { en: WORDS.en.start, es: WORDS.es.start } };
    learn({ start: { en: { ...start.en, home: 'Home again' }, es: start.es } });
    expect([WORDS.en.start.home, WORDS.es.start.home]).toEqual(['Home again', start.es.home]);
    learn({ start });
  });
});
