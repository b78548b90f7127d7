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

  /** Of a browser that takes every frame to last so long, and shows the first that has not ended, if it has begun. */
  const shownBy = (times: readonly number[], lastsS: number) => (atS: number): number => {
    const first = times.findIndex((begins) => begins + lastsS > atS);
    return first === -1 ? times.length - 1 : Math.max(0, times[first]! > atS ? first - 1 : first);
  };

  test('of which a browser shows another are asked for again, later and later and then in between, but not for ever', () => {
    // As a browser on a busy machine films: it then shows the frame of 0.365 s from 0.433 to 0.445 s.
    const jerky = [0, 0.04, 0.34, 0.353, 0.365, 0.378, 0.418, 0.431, 0.632];
    for (const [times, lastsS] of [[TIMES, 0.06], [TIMES, 0.08], [jerky, 0.08], [jerky, 0.02], [jerky, 0.3]] as const) {
      const shows = shownBy(times, lastsS);
      for (const frame of times.keys()) {
        let seeking = seekingOf(times, frame);
        for (let next = soughtAgain(seeking, shows(seeking.atS)); next !== null; next = soughtAgain(seeking, shows(seeking.atS))) seeking = next;
        expect(shows(seeking.atS), `frame ${frame} where each is taken to last ${lastsS} s`).toBe(frame);
      }
    }
    let tries = 0;
    for (let next = soughtAgain(seekingOf(TIMES, 3), 0); next !== null; next = soughtAgain(next, 0)) tries += 1;
    expect(tries).toBe(24);
  });

  test('are found too where the browser tells late what it shows', () => {
    const shows = shownBy(TIMES, 0.06);
    let seeking = seekingOf(TIMES, 3);
    let told = 0;
    for (let late = 0; late < 4; late += 1) {
      const now = shows(seeking.atS);
      seeking = soughtAgain(seeking, told) ?? seeking;
      told = now;
    }
    for (let next = soughtAgain(seeking, shows(seeking.atS)); next !== null; next = soughtAgain(seeking, shows(seeking.atS))) seeking = next;
    expect(shows(seeking.atS)).toBe(3);
  });
});
