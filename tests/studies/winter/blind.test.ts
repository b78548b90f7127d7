import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = path.resolve(import.meta.dirname, '../../..');
const WINTER = 'studies/winter';
/** What a coach of the study may know: the log, the screens' advice, and an athlete who throws what is asked for. */
const COACHES = ['advised-families.ts', 'advised-ideas.ts', 'naive-coach.ts'];
/** What is true. */
const TRUTH = ['parameters.ts', 'drawn-athlete.ts', 'hand.ts', 'true-arm.ts', 'true-miss.ts', 'flown.ts', 'device.ts'].map((file) => `${WINTER}/${file}`);

/** Everything that a file imports, itself and through others, as paths from the root; types as well. */
function reached(file: string, known = new Set<string>()): Set<string> {
  const source = readFileSync(path.join(ROOT, file), 'utf8');
  for (const [, where] of source.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']+)'/g)) {
    const found = path.relative(ROOT, path.resolve(ROOT, path.dirname(file), where!)).split(path.sep).join('/');
    if (known.has(found)) continue;
    known.add(found);
    reached(found, known);
  }
  return known;
}

describe('the coaches of the simulated winter', () => {
  it.each(COACHES)('%s knows device frames and advice, and neither what is true nor who simulates it', (coach) => {
    const files = [...reached(`${WINTER}/${coach}`)];
    expect(files.filter((file) => TRUTH.includes(file) || file.startsWith('simulators/'))).toEqual([]);
    expect(files).toContain('core/session/fold.ts');
  });

  it('would be caught: what plays the winter reaches all of the truth', () => {
    const files = reached(`${WINTER}/winter.ts`);
    expect(TRUTH.filter((file) => !files.has(file))).toEqual([]);
  });

  it('no file of core that they ask reaches out of core', () => {
    const asked = COACHES.flatMap((coach) => [...reached(`${WINTER}/${coach}`)]).filter((file) => file.startsWith('core/'));
    const files = asked.reduce((known, file) => (known.has(file) ? known : new Set([...known, file, ...reached(file)])), new Set<string>());
    expect(files.size).toBeGreaterThan(40);
    expect([...files].filter((file) => !file.startsWith('core/'))).toEqual([]);
  });
});
