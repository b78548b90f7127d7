import { createMemo, Show } from 'solid-js';
import type { TargetZone } from '../../core/facts/coach.ts';
import type { BaselineView, MoundView, SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { drawPlateView } from '../charts/plate-view.ts';
import { drawTiltClock } from '../charts/tilt-clock.ts';
import { Drawn } from '../wall/drawn.tsx';
import { useSpeech } from '../words/use-words.tsx';
import { aimOf } from './aim-of.ts';
import { aimedPlate, clockOf } from './aim-pictures.ts';
import { aimSentences, plateAimWords, tiltAimWords, withinWords } from './aim-words.ts';
import '../charts/plate-view.css';
import './aims.css';

const TEXT_PX = 13;

/** Where a family's changeup is aimed for a zone: by tilt on the clock, and at the plate, with what that rests on. */
export function Aims(props: { readonly view: MoundView; readonly session: SessionView; readonly baseline: BaselineView; readonly family: Family; readonly zone: TargetZone }) {
  const speech = useSpeech();
  const say = () => speech().words.aims;
  const aim = createMemo(() => aimOf(props.view, props.session, props.baseline, props.family, props.zone, speech()));
  const clock = () => clockOf(aim(), speech());
  const plate = () => aimedPlate(aim(), props.session, speech());
  return (
    <section class="aims" aria-labelledby="aims-title">
      <h3 id="aims-title">{say().title}</h3>
      <dl class="aim-words">
        <div><dt>{say().tilt}</dt><dd>{tiltAimWords(aim().tilt, props.family, speech())}</dd><SoFar said={withinWords(aim(), aim().tiltsWithin, speech())} /></div>
        <div><dt>{say().plate}</dt><dd>{plateAimWords(aim().plate, speech())}</dd><SoFar said={withinWords(aim(), aim().placesWithin, speech())} /></div>
      </dl>
      <Show when={clock() !== null || plate() !== null}>
        <div class="aim-pictures">
          <Show when={clock()}>{(data) => <Drawn class="aim-clock" draw={(svg, { width, height }) => drawTiltClock(svg, data(), { width, height, textPx: TEXT_PX })} />}</Show>
          <Show when={plate()}>{(data) => <Drawn class="aim-plate" draw={(svg, { width, height }) => drawPlateView(svg, data(), { width, height, textPx: TEXT_PX })} />}</Show>
        </div>
      </Show>
      <p class="quiet small">{aimSentences(aim(), speech()).join(' ')}</p>
    </section>
  );
}

function SoFar(props: { readonly said: string | null }) {
  return <Show when={props.said}>{(said) => <dd class="so-far">{said()}</dd>}</Show>;
}
