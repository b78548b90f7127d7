import { createMemo, createSignal, Show, type JSX } from 'solid-js';
import { StandingFrame } from '../standing/frame.tsx';
import type { Standing } from '../standing/standing.ts';
import { useSpeech } from '../words/use-words.tsx';
import { numberText } from '../words/numbers.ts';
import { measured, type Size } from './drawn.tsx';
import { screenSize } from './screen-size.ts';
import { wallSizes, type WallSizes } from './sizes.ts';
import './wall.css';

/** A picture that sizes its text for the diagonal and distance of its screen. */
export function WallRoom(props: {
  readonly standing: Standing;
  readonly windows: boolean;
  /** Whether a picture stands where the pace rail does otherwise. */
  readonly asked: boolean;
  /** Whether it is one of several on the screen; else it counts as the whole of it. */
  readonly tile?: boolean;
  readonly place?: number;
  readonly generation?: number;
  readonly children: (sizes: () => WallSizes) => JSX.Element;
}) {
  const whole = (): Size => ({ width: innerWidth, height: innerHeight });
  const [size, setSize] = createSignal<Size>(whole());
  const sizes = createMemo(() => wallSizes(size(), screenSize(), props.tile === true ? whole() : size()));
  return (
    <div
      ref={(room) => measured(room, setSize)} class="mound-picture" classList={{ stacked: sizes().stacked, windowed: props.windows && !sizes().low, asked: props.asked, tile: props.tile === true, low: sizes().low, [sizes().holds]: true }}
      style={{ '--text': `${sizes().textPx}px`, '--lead': `${sizes().leadPx}px`, '--frame': `${sizes().textPx * 0.22}px` }}
      data-place={props.place} data-generation={props.generation}
    >
      <StandingFrame standing={props.standing}>{props.children(sizes)}</StandingFrame>
      <Show when={sizes().readableWithinM}>{(within) => <TooFar withinM={within()} />}</Show>
    </div>
  );
}

/** The sizes that were asked for do not fit this screen: from how near it can be read is said, never hidden. */
function TooFar(props: { readonly withinM: number }) {
  const speech = useSpeech();
  return <p class="wall-too-far" role="note">{speech().words.wall.readWithin(`${numberText(Math.floor(props.withinM * 10) / 10, 1, speech().language)} m`)}</p>;
}
