/** When each frame of a video is shown, in seconds on the clock of the file, in order. */
export type FrameTimes = readonly number[];

/** Reads them from the file itself, so that a step is a frame also where a phone has filmed at a rate that varies. Empty where none can be read. */
export async function frameTimesOf(file: Blob): Promise<FrameTimes> {
  const { ALL_FORMATS, BlobSource, EncodedPacketSink, Input } = await import('mediabunny');
  try {
    const track = await new Input({ formats: ALL_FORMATS, source: new BlobSource(file) }).getPrimaryVideoTrack();
    if (track === null) return [];
    const times: number[] = [];
    for await (const { timestamp } of new EncodedPacketSink(track).packets(undefined, undefined, { metadataOnly: true })) times.push(timestamp);
    return [...new Set(times)].sort((a, b) => a - b);
  } catch {
    return [];
  }
}

/** The frame that is shown at a time: the last that has begun. */
export function frameAt(times: FrameTimes, timeS: number): number {
  // Times are rounded by container and browser; a frame begins a hair before it says.
  const after = times.findIndex((begins) => begins > timeS + 1e-4);
  return Math.max(0, (after === -1 ? times.length : after) - 1);
}

/** A time in the middle of a frame: seeking to its edge may show its neighbour. */
export function middleOf(times: FrameTimes, frame: number): number {
  const begins = times[frame] ?? 0;
  return begins + Math.max(0, (times[frame + 1] ?? begins + ordinaryStepS(times)) - begins) / 2;
}

/** Frames a second as the file plays: by the middle one of its steps. 0 for less than two frames. */
export function playedFps(times: FrameTimes): number {
  return times.length < 2 ? 0 : 1 / ordinaryStepS(times);
}

function ordinaryStepS(times: FrameTimes): number {
  const steps = times.slice(1).map((timeS, index) => timeS - times[index]!).sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 1 / 30;
}

/** Real seconds that pass while one second of the file is played. */
export function slowness(times: FrameTimes, filmedFps: number | null): number {
  const played = playedFps(times);
  return filmedFps === null || played === 0 ? 1 : played / filmedFps;
}

/** Real seconds from release to the beginning of a frame; null where nobody has said when release was. */
export function fromReleaseS(times: FrameTimes, frame: number, { releaseS, filmedFps }: { readonly releaseS: number | null; readonly filmedFps: number | null }): number | null {
  return releaseS === null ? null : ((times[frame] ?? 0) - releaseS) * slowness(times, filmedFps);
}

/** The frame that begins nearest to so many real seconds from release. */
export function frameFromRelease(times: FrameTimes, realS: number, { releaseS, filmedFps }: { readonly releaseS: number; readonly filmedFps: number | null }): number {
  const wantedS = releaseS + realS / slowness(times, filmedFps);
  return times.reduce((best, timeS, index) => (Math.abs(timeS - wantedS) < Math.abs(times[best]! - wantedS) ? index : best), 0);
}
