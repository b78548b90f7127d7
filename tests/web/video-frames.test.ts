import { describe, expect, test } from 'vitest';
import { frameAt, frameFromRelease, fromReleaseS, middleOf, playedFps, slowness } from '../../web/playback/video/frames.ts';
import { seekingOf, soughtAgain } from '../../web/playback/video/seeking.ts';

/** A phone's: 25 a second, but unevenly. */
const TIMES = [0, 0.04, 0.08, 0.16, 0.2, 0.24];

describe('the frames of a video', () => {
  test('are found by their times, each from its beginning until the next', () => {
    expect([-1, 0, 0.039, 0.04, 0.15, 0.16, 9].map((timeS) => frameAt(TIMES, timeS))).toEqual([0, 0, 0, 1, 2, 3, 5]);
    for (const [index] of TIMES.entries()) expect(frameAt(TIMES, middleOf(TIMES, index))).toBe(index);
  });

  test('are counted from release in the time of the ball, not of the film', () => {
    expect(playedFps(TIMES)).toBeCloseTo(25, 9);
    expect(slowness(TIMES, 250)).toBeCloseTo(0.1, 9);
    expect(fromReleaseS(TIMES, 3, { releaseS: 0.08, filmedFps: null })).toBeCloseTo(0.08, 9);
    expect(fromReleaseS(TIMES, 3, { releaseS: 0.08, filmedFps: 250 })).toBeCloseTo(0.008, 9);
    expect(fromReleaseS(TIMES, 3, { releaseS: null, filmedFps: 250 })).toBeNull();
    expect(frameFromRelease(TIMES, 0.008, { releaseS: 0.08, filmedFps: 250 })).toBe(3);
    expect(frameFromRelease(TIMES, -1, { releaseS: 0.08, filmedFps: null })).toBe(0);
  });

  test('of which a browser shows a neighbour are asked for again, nearer and nearer, but not for ever', () => {
    /** A browser that thinks every frame lasts 60 ms and shows the first that has not ended. */
    const shows = (atS: number): number => TIMES.findIndex((begins) => begins + 0.06 > atS);
    for (const frame of [1, 2, 4]) {
      let seeking = seekingOf(TIMES, frame);
      for (let next = soughtAgain(seeking, shows(seeking.atS)); next !== null; next = soughtAgain(seeking, shows(seeking.atS))) seeking = next;
      expect(shows(seeking.atS)).toBe(frame);
    }
    let tries = 0;
    for (let next = soughtAgain(seekingOf(TIMES, 3), 0); next !== null; next = soughtAgain(next, 0)) tries += 1;
    expect(tries).toBe(12);
  });
});
