import { For, Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import type { Place } from '../places.ts';
import { hand } from '../screen/hand.ts';
import { ActList } from '../acts/act-list.tsx';
import { Acts } from './acts.tsx';
import { Intents } from './intents.tsx';
import { NextBlockOffer } from './next-block.tsx';
import { NextThrow } from './next-throw.tsx';
import type { OneTap } from './one-tap.ts';
import type { OpenSheet } from './open-sheet.ts';
import { PassMound } from './pass-mound.tsx';
import { OpenedSheet } from './sheets/sheet.tsx';
import { Unsent } from './unsent.tsx';

/** Acts listed beside the next throw, where there is room. */
const ACTS_READ = 3;

interface DockProps {
  readonly session: SessionView;
  readonly oneTap: OneTap;
  readonly sheet: OpenSheet;
  readonly places: readonly Place[];
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  readonly onOpen: () => void;
}

/** Under the thumb at all times: what the next throw is meant to be, everything that is said between two throws, and the places of Bench. */
export function Dock(props: DockProps) {
  const words = useWords();
  const say = () => words().bench.frame;
  const open = () => props.session.closedAtMs === null;
  /** To the place of the trial, at its form and not at the list above it. */
  const toGrip = () => {
    props.onPlace('trial');
    document.querySelector('.trial-form')?.scrollIntoView();
  };
  return (
    <footer class="dock" data-hand={hand()} data-sheet={props.sheet.sheet() ?? 'none'}>
      <div class="dock-read">
        <Show when={props.oneTap.mayGoOn()} fallback={<p class="next-throw">{open() ? words().bench.arm.noThrow : say().closedNow}</p>}><NextThrow session={props.session} /></Show>
        <Answer corner="intent" />
        <Answer corner="mound" />
        <Unsent />
        <Show when={props.sheet.sheet() !== 'acts'}><div class="acts-read" role="group" tabIndex={0} aria-label={words().bench.acts.title}><Answer corner="acts" /><ActList most={ACTS_READ} /></div></Show>
      </div>
      <div class="dock-tap">
        <div class="turns">
          <NextBlockOffer session={props.session} oneTap={props.oneTap} />
          <PassMound />
          <Show when={!open()}><button type="button" class="main" onClick={() => props.onOpen()}>{words().bench.session.another}</button></Show>
        </div>
        <Show when={props.sheet.sheet()}>{(sheet) => <OpenedSheet sheet={sheet()} session={props.session} open={props.sheet} oneTap={props.oneTap} onGrip={toGrip} />}</Show>
        <Show when={props.oneTap.mayGoOn()}><Intents session={props.session} oneTap={props.oneTap} /></Show>
        <Acts open={props.sheet} oneTap={props.oneTap} />
        <Show when={props.places.length > 1}>
          <nav class="places" aria-label={say().places}>
            <For each={props.places}>
              {(place) => <button type="button" class="place" aria-current={props.place === place ? 'true' : undefined} onClick={() => props.onPlace(place)}>{say().place[place]}</button>}
            </For>
          </nav>
        </Show>
      </div>
    </footer>
  );
}
