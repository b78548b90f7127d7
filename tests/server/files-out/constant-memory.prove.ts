import { Writable } from 'node:stream';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { exportFacts, exportThrows } from '../../../server/files-out/export.ts';
import type { ReadableLog } from '../../../server/files-out/readable-log.ts';

/** Of throws, so that what is kept of each session counts too. */
const IN_A_SESSION = 100;
const FACTS_OF_ONE = IN_A_SESSION + 3;
const MANY = 1_000_000;
const FEW = 20_000;

/** A log of so many throws that holds none of them: every fact is made when it is read. */
function longLog(throws: number): ReadableLog {
  const last = (throws / IN_A_SESSION) * FACTS_OF_ONE;
  return {
    id: 'log-1',
    mounds: () => ['north-1'],
    *read(_, after) {
      for (let place = after + 1; place <= last; place += 1) yield factAt(place);
    },
  };
}

function factAt(place: number): Fact {
  const [number, inIt] = [Math.floor((place - 1) / FACTS_OF_ONE), (place - 1) % FACTS_OF_ONE];
  const session = `s-${number}`;
  const fact = (said: Fact['said']): Fact => ({ place, mound: 'north-1', atMs: 1_700_000_000_000 + place * 15_000, by: 'coach', version: 1, said });
  if (inIt === 0) return fact({ kind: 'session-opened', session, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.44, effort: 'full', athlete: { id: `athlete-${number % 20}`, name: `Invented ${number % 20}`, hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' } });
  if (inIt === 1) return fact({ kind: 'intent-set', session, intent: 'four-seam' });
  if (inIt === FACTS_OF_ONE - 1) return fact({ kind: 'session-closed', session });
  return fact({
    kind: 'throw-measured',
    source: { device: 'eye-1', run: 'r', sequence: place, time: place, sight: 'full-flight', axis: 'none', units: { distance: 'm', speed: 'm/s', movement: 'm' } },
    body: { summary: { releaseSpeed: 38 + (place % 7) / 10, verticalBreak: 0.4 + (place % 5) / 100, horizontalBreak: -0.15 }, spin: { rate: 2200 } },
  });
}

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** The most that is in memory once what is no longer needed is gone, in MB, looked at every so many bytes; and how much was written. */
async function most(write: (out: Writable) => Promise<unknown>): Promise<{ readonly mostMB: number; readonly bytes: number }> {
  let [bytes, mostMB, nextLook] = [0, 0, 0];
  await write(new Writable({
    write(chunk: Buffer, _, done) {
      bytes += chunk.length;
      if (bytes >= nextLook) {
        nextLook = bytes + 8_000_000;
        collect();
        const { heapUsed, arrayBuffers } = process.memoryUsage();
        mostMB = Math.max(mostMB, (heapUsed + arrayBuffers) / 1e6);
      }
      done();
    },
  }));
  return { mostMB, bytes };
}

const WRITERS = {
  csv: (throws: number) => (out: Writable) => exportThrows(longLog(throws), { of: { kind: 'all' }, names: true }, { format: 'csv', units: 'imperial' }, out),
  parquet: (throws: number) => (out: Writable) => exportThrows(longLog(throws), { of: { kind: 'all' }, names: true }, { format: 'parquet', units: 'si' }, out),
  facts: (throws: number) => (out: Writable) => exportFacts(longLog(throws), { kind: 'all' }, out),
} as const;

test.each(Object.entries(WRITERS))('a million throws as %s need no more memory than twenty thousand, but for a note on each session', async (name, writer) => {
  const few = await most(writer(FEW));
  const many = await most(writer(MANY));
  console.log(`${name}: ${FEW} throws ${few.mostMB.toFixed(1)} MB, ${MANY} throws ${many.mostMB.toFixed(1)} MB, ${(many.bytes / 1e6).toFixed(0)} MB written`);
  // Ten thousand sessions leave a place each, and a Parquet file its table of contents.
  expect(many.mostMB).toBeLessThan(few.mostMB + 40);
});
