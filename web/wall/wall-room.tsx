import { createMemo, createSignal, type JSX } from 'solid-js';
import { settingsIn } from '../settings.ts';
import { StandingFrame } from '../standing/frame.tsx';
import type { Standing } from '../standing/standing.ts';
import { measured, type Size } from './drawn.tsx';
import { wallSizes, type WallSizes } from './sizes.ts';
import './wall.css';

/** A picture that sizes its text by its own extent, as if it filled a screen of the diagonal and distance in the address. */
export function WallRoom(props: {
  readonly standing: Standing;
  readonly windows: boolean;
  /** Whether a picture stands where the pace rail does otherwise. */
  readonly asked: boolean;
  readonly place?: number;
  readonly generation?: number;
  readonly children: (sizes: () => WallSizes) => JSX.Element;
}) {
  const [size, setSize] = createSignal<Size>({ width: innerWidth, height: innerHeight });
  const sizes = createMemo(() => wallSizes(size().width, size().height, settingsIn(location.search)));
  return (
    <div
      ref={(room) => measured(room, setSize)} class="mound-picture" classList={{ stacked: sizes().stacked, windowed: props.windows, asked: props.asked }}
      style={{ '--text': `${sizes().textPx}px`, '--lead': `${sizes().leadPx}px`, '--frame': `${sizes().textPx * 0.22}px` }}
      data-place={props.place} data-generation={props.generation}
    >
      <StandingFrame standing={props.standing}>{props.children(sizes)}</StandingFrame>
    </div>
  );
}
