import { createEffect, createMemo, createSignal, For, on, onCleanup, Show, type JSX } from 'solid-js';
import { keepAwake, type Awake } from '../live/keep-awake.ts';
import { StandingWord } from '../standing/frame.tsx';
import { timeText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import type { Hung } from './hung.ts';
import { restMinutesIn } from './kiosk.ts';
import { createRest } from './rest.ts';
import { shiftAt, STEP_EVERY_MS } from './spared.ts';

/** A note on the screen's own state is read once, not all day. */
const NOTE_FOR_MS = 30_000;

/** A screen that hangs in a bullpen day and night: kept awake, its panel spared, resting while nobody throws. */
export function Hanging(props: { readonly hung: readonly Hung[]; readonly kiosk: boolean; readonly children: JSX.Element }) {
  const places = createMemo(() => props.hung.map(({ live }) => live.view()?.place ?? '').join(' '));
  const resting = createRest(places, restMinutesIn(location.search));
  const step = createSteps(places);
  const awake = props.kiosk ? keepAwake(() => true) : () => 'not-asked' as const;
  if (props.kiosk) hidePointer();
  return (
    <main class="wall" data-step={step()} style={{ '--right': String(shiftAt(step()).right), '--down': String(shiftAt(step()).down) }}>
      <div class="wall-shifted" classList={{ 'wall-asleep': resting() !== null }}>{props.children}</div>
      <Show when={resting()}>{(rest) => <RestingFace hung={props.hung} sinceMs={rest().sinceMs} step={step()} />}</Show>
      <DrowsyNote drowsy={drowsyIn(awake())} />
    </main>
  );
}

/** Counts on every half minute; for who wants less motion only when a fact changes the picture anyway. */
function createSteps(places: () => string): () => number {
  const [step, setStep] = createSignal(0);
  const next = (): void => void setStep((now) => now + 1);
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
    createEffect(on(places, next, { defer: true }));
    return step;
  }
  const going = setInterval(next, STEP_EVERY_MS);
  onCleanup(() => clearInterval(going));
  return step;
}

function hidePointer(): void {
  document.documentElement.classList.add('without-pointer');
  onCleanup(() => document.documentElement.classList.remove('without-pointer'));
}

/** Few dark words that wander over the panel. Whether the server and the devices are heard is said here too. */
function RestingFace(props: { readonly hung: readonly Hung[]; readonly sinceMs: number; readonly step: number }) {
  const speech = useSpeech();
  const zone = () => props.hung.map(({ live }) => live.view()?.session?.timeZone).find((known) => known !== undefined) ?? null;
  return (
    <div class="wall-resting" style={{ '--column': String(((props.step * 2) % 5) / 4), '--row': String(((props.step * 3) % 7) / 6) }}>
      <div class="wall-resting-words">
        <p>{speech().words.wall.restingSince(timeText(props.sinceMs, zone(), speech().language).replace(/:\d\d$/, ''))}</p>
        <For each={props.hung}>{({ mound, standing }) => <div class="wall-resting-mound"><span>{mound}</span> <StandingWord standing={standing()} timeZone={zone()} /></div>}</For>
      </div>
    </div>
  );
}

/** Why the browser may let this screen go dark; null while it keeps it awake. */
type Drowsy = 'not-secure' | 'not-supported' | 'refused' | null;

function drowsyIn(awake: Awake): Drowsy {
  switch (awake) {
    case 'cannot': return isSecureContext ? 'not-supported' : 'not-secure';
    case 'refused': return 'refused';
    case 'awake':
    case 'not-asked': return null;
  }
}

/** Says it for the first half minute. */
function DrowsyNote(props: { readonly drowsy: Drowsy }) {
  const speech = useSpeech();
  const [shown, setShown] = createSignal(true);
  const over = setTimeout(() => setShown(false), NOTE_FOR_MS);
  onCleanup(() => clearTimeout(over));
  return <Show when={shown() && props.drowsy}>{(why) => <p class="wall-note" role="status">{speech().words.wall.drowsy[why()]}</p>}</Show>;
}
