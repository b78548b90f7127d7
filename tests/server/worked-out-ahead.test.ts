import path from 'node:path';
import { expect, test } from 'vitest';
import type { Fact, Said } from '../../core/facts/fact.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import { followLedgers } from '../../server/ledgers.ts';
import type { FactLog } from '../../server/log/fact-log.ts';
import { openSqliteLog } from '../../server/log/sqlite-log.ts';
import { fiveFastballs, Story, summary, ZONE } from '../core/session/story.ts';
import { folderForTest } from './folder.ts';

type ThrowSaid = Extract<Said, { kind: 'throw-measured' }>;

const trouble = (error: unknown): never => expect.unreachable(String(error));

function logIn(folder: string): FactLog {
  let nowMs = 1_790_000_000_000;
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => (nowMs += 1000), newId: () => 'log-a', onTrouble: trouble });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  return opened.log;
}

function evening(): Story {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null }).intent('s1', 'changeup');
  for (const fall of [8, 7, 9]) story.throw(82, fall, -10);
  return story;
}

/** A log that is followed. */
async function followed() {
  const folder = folderForTest();
  const log = logIn(folder);
  const ledgers = await followLedgers(log, path.join(folder, 'ledgers.db'), trouble, { nowMs: () => 0 });
  return {
    log, ledgers,
    end: () => {
      ledgers.close();
      log.close();
    },
  };
}

const folded = (facts: Iterable<Fact>) => moundView([...facts].reduce(foldFact, emptyLedger('north-1')), null);

test('a fact that goes to the disk by itself is told of on its way; several that go together, and one that is there already, are not', async () => {
  const log = logIn(folderForTest());
  const told: string[] = [];
  log.onUnderWay(({ place }) => void told.push(`${place} under way`));
  log.onAppended(({ place }) => void told.push(`${place} there`));
  const [opened, first, second, third] = evening().facts.filter(({ said }) => said.kind === 'session-opened' || said.kind === 'throw-measured') as [Fact, Fact, Fact, Fact];
  await log.append(opened);
  await Promise.all([first, second].map((fact) => log.append(fact)));
  await log.append(third);
  await log.append(third);
  expect(told).toEqual(['1 under way', '1 there', '2 there', '3 there', '4 under way', '4 there']);
  log.close();
});

test('a mound whose throws were worked out on their way stands as its log says', async () => {
  const { log, ledgers, end } = await followed();
  ledgers.states('north-1').subscribe();
  // oxlint-disable-next-line no-await-in-loop -- each by itself
  for (const fact of evening().facts) await log.append(fact);
  const view = moundView(ledgers.of('north-1'), null);
  expect(view.session?.counts.all).toBe(8);
  expect(view.throws.at(-1)?.miss).not.toBeNull();
  expect(view).toEqual(folded(log.read('north-1', 0)));
  end();
});

test('the state that a throw will bring is told while the disk works, to whoever follows both, and is the very one that comes', async () => {
  const { log, ledgers, end } = await followed();
  const { facts } = evening();
  log.appendAll(facts.slice(0, -1));
  const told: { readonly kind: 'coming' | 'there'; readonly ledger: Ledger }[] = [];
  ledgers.coming('north-1').subscribe((ledger) => void told.push({ kind: 'coming', ledger }));
  ledgers.states('north-1').subscribe((ledger) => void told.push({ kind: 'there', ledger }));
  // The answer of the disk may be there first: then nothing more is coming.
  for (let throws = 0; !told.some(({ kind }) => kind === 'coming'); throws += 1) {
    expect(throws).toBeLessThan(200);
    const { said, ...last } = facts.at(-1)!;
    // oxlint-disable-next-line no-await-in-loop -- each by itself
    await log.append({ ...last, said: { ...said, source: { ...(said as ThrowSaid).source, sequence: 100 + throws } } as ThrowSaid });
  }
  const [coming, there] = told.slice(-2);
  expect([coming?.kind, there?.kind]).toEqual(['coming', 'there']);
  expect(there?.ledger).toBe(coming?.ledger);
  end();
});

test('of a throw that was on its way and never came to be nothing is left', async () => {
  const folder = folderForTest();
  const log = logIn(folder);
  const listeners: { underWay?: (fact: Fact) => void; appended?: (fact: Fact) => void } = {};
  const inHand: FactLog = Object.assign(Object.create(log) as FactLog, {
    onUnderWay: (listener: (fact: Fact) => void) => ((listeners.underWay = listener), () => {}),
    onAppended: (listener: (fact: Fact) => void) => ((listeners.appended = listener), () => {}),
  });
  const ledgers = await followLedgers(inHand, path.join(folder, 'ledgers.db'), trouble, { nowMs: () => 0 });
  ledgers.states('north-1').subscribe();
  const { facts } = evening();
  for (const fact of facts) listeners.appended!(fact);
  const lost = evening();
  lost.throw(70, -30, 20);
  listeners.underWay!(lost.facts.at(-1)!);
  expect(moundView(ledgers.of('north-1'), null)).toEqual(folded(facts));
  const came: Fact = { ...lost.facts.at(-1)!, said: { ...lost.facts.at(-1)!.said, body: summary(81, 8, -9) } as Fact['said'] };
  listeners.appended!(came);
  expect(moundView(ledgers.of('north-1'), null)).toEqual(folded([...facts, came]));
  ledgers.close();
  log.close();
});
