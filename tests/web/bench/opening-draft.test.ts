import { describe, expect, test } from 'vitest';
import { coachSaysSchema, type Athlete } from '../../../core/facts/coach.ts';
import { idSchema } from '../../../core/facts/spelling.ts';
import { athleteFrom, draftOf, emptyDraft, idOf } from '../../../web/bench/opening/draft.ts';

const FRESH = '0123456789abcdef01234567';
const FULL = { ...emptyDraft('imperial', 'en'), name: ' Ana Lucía Berríos ', hand: 'left', birthYear: '2006' } as const;

describe('somebody who throws for the first time', () => {
  test('is asked for a name, a hand and a birth year, one after the other', () => {
    expect(athleteFrom(emptyDraft('imperial', 'en'), FRESH, 2026)).toEqual({ missing: 'name' });
    expect(athleteFrom({ ...FULL, hand: null }, FRESH, 2026)).toEqual({ missing: 'hand' });
    for (const birthYear of ['', '06', '1929', '2023', '2006.5', 'May']) expect(athleteFrom({ ...FULL, birthYear }, FRESH, 2026)).toEqual({ missing: 'birthYear' });
  });

  test('gets an id that can stand in an address, and that a namesake does not share', () => {
    const made = athleteFrom(FULL, FRESH, 2026) as { athlete: Athlete };
    const says = { kind: 'session-opened', session: 's', athlete: made.athlete, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.44, effort: 'full' };
    expect(coachSaysSchema.safeParse(says).error).toBeUndefined();
    expect(made.athlete).toMatchObject({ id: 'ana-lucia-berrios-01234567', name: 'Ana Lucía Berríos', birthYear: 2006 });
    expect(idOf('Ana Lucía Berríos', `f${FRESH}`)).not.toBe(made.athlete.id);
  });

  test.each(['山本', '—', 'O’Neil, J. R.', 'x'.repeat(60)])('may be called %s', (name) => {
    expect(idSchema.safeParse(idOf(name, FRESH)).error).toBeUndefined();
  });
});

test('a known athlete whose details are corrected stays the same athlete', () => {
  const known: Athlete = { id: 'wren', name: 'Wren Abelow', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' };
  expect(athleteFrom(draftOf(known), FRESH, 2026)).toEqual({ athlete: known });
  expect(athleteFrom({ ...draftOf(known), units: 'metric' }, FRESH, 2026)).toEqual({ athlete: { ...known, units: 'metric' } });
});
