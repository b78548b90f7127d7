import { identity, Subject } from 'rxjs';
import { expect, test } from 'vitest';
import type { ViewMessage } from '../../../core/facts/wire.ts';
import { emptyLedger, type Ledger } from '../../../core/session/ledger.ts';
import { Channel } from '../../../server/viewers/channel.ts';
import type { Viewer } from '../../../server/viewers/line.ts';

const viewer = (id: string, hangs: boolean): Viewer => ({ id, hangs, isSlow: () => false, pulse: () => {} });

test('what hangs on a wall is sent a view before what is held in a hand, whoever came first; all of them get the same message', () => {
  const states$ = new Subject<Ledger>();
  const sent: { readonly to: readonly string[]; readonly message: ViewMessage }[] = [];
  const start = emptyLedger('north-1');
  const channel = new Channel({
    log: 'log-1', session: null, ledger: () => start, shown: identity, states$, spaced: identity,
    deliver: (viewers, message) => void sent.push({ to: viewers.map(({ id }) => id), message }),
    onTrouble: (error) => expect.unreachable(String(error)),
  });
  for (const [id, hangs] of [['phone-1', false], ['phone-2', false], ['wall', true], ['phone-3', false]] as const) channel.watch(viewer(id, hangs), null, null);
  sent.length = 0;

  states$.next({ ...start, place: 1, atMs: 1_790_000_000_000 });
  expect(sent.map(({ to }) => to)).toEqual([['wall', 'phone-1', 'phone-2', 'phone-3']]);
  expect(sent[0]!.message).toEqual({ kind: 'change', log: 'log-1', from: 0, skipped: 0, head: { place: 1, atMs: 1_790_000_000_000 }, throws: [], gone: [], unclaimed: [] });
});
