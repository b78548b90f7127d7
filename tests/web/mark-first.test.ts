import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { MoundView } from '../../core/facts/views.ts';
import { UNLINKED, type LinkState } from '../../web/live/link.ts';
import { markFirst } from '../../web/live/mark-first.ts';
import { liveMound } from './invented-mound.ts';

const BEFORE = liveMound().view();
const THROWN = liveMound().throws([7, 14, 83]).view();
const TWICE = liveMound().throws([7, 14, 83], [6, 13, 82]).view();
const ANSWERED = liveMound().say({ kind: 'intent-set', session: BEFORE.session!.id, intent: 'four-seam' }).view();

let frames: (() => void)[] = [];
const frame = (): void => {
  for (const callback of frames.splice(0)) callback();
};
const page = { hidden: false };

beforeEach(() => {
  frames = [];
  page.hidden = false;
  vi.stubGlobal('document', page);
  vi.stubGlobal('requestAnimationFrame', (callback: () => void) => frames.push(callback));
});
afterEach(() => vi.unstubAllGlobals());

/** What is told of these views, one after the other from a first one on; each by its place. */
function telling() {
  const said: string[] = [];
  const tell = markFirst(({ view, behindPulses }: LinkState) => void said.push(`all of ${view?.place}${behindPulses > 0 ? ', behind' : ''}`), ({ place }: MoundView) => void said.push(`mark of ${place}`));
  tell({ ...UNLINKED, view: BEFORE });
  said.length = 0;
  return { said, tell };
}

test('of a throw the mark is told at once, and all that is said of it in the frame behind that which paints it', () => {
  const { said, tell } = telling();
  tell({ ...UNLINKED, view: THROWN });
  expect(said).toEqual([`mark of ${THROWN.place}`]);
  frame();
  expect(said).toHaveLength(1);
  frame();
  expect(said).toEqual([`mark of ${THROWN.place}`, `all of ${THROWN.place}`]);
});

test('of two throws between two frames each mark is told, and all of the newest once', () => {
  const { said, tell } = telling();
  tell({ ...UNLINKED, view: THROWN });
  frame();
  tell({ ...UNLINKED, view: TWICE });
  frame();
  frame();
  expect(said).toEqual([`mark of ${THROWN.place}`, `mark of ${TWICE.place}`, `all of ${TWICE.place}`]);
});

test('what is not a throw is told at once, and whatever waited with it', () => {
  const { said, tell } = telling();
  tell({ ...UNLINKED, view: ANSWERED });
  expect(said).toEqual([`all of ${ANSWERED.place}`]);
  const thrown = { ...THROWN, place: ANSWERED.place + 1 };
  tell({ ...UNLINKED, view: thrown });
  tell({ ...UNLINKED, view: { ...thrown, place: thrown.place + 1 } });
  expect(said.slice(1)).toEqual([`mark of ${thrown.place}`, `all of ${thrown.place + 1}`]);
  frame();
  frame();
  expect(said).toHaveLength(3);
});

test('a pulse between a throw and its frame does not bring all that is said of it forward', () => {
  const { said, tell } = telling();
  tell({ ...UNLINKED, view: THROWN });
  tell({ ...UNLINKED, view: THROWN, behindPulses: 1 });
  expect(said).toHaveLength(1);
  frame();
  frame();
  expect(said.slice(1)).toEqual([`all of ${THROWN.place}, behind`]);
  tell({ ...UNLINKED, view: THROWN });
  expect(said).toHaveLength(3);
});

test('a page that nobody sees is told everything at once', () => {
  const { said, tell } = telling();
  page.hidden = true;
  tell({ ...UNLINKED, view: THROWN });
  expect(said).toEqual([`all of ${THROWN.place}`]);
});

test('the throws of another session are not one more throw', () => {
  const { said, tell } = telling();
  tell({ ...UNLINKED, view: { ...THROWN, session: { ...THROWN.session!, id: 'another' } } });
  expect(said).toEqual([`all of ${THROWN.place}`]);
});
