import { createMemo, Match, Show, Switch } from 'solid-js';
import type { MoundView } from '../../../core/facts/views.ts';
import { drawGapLine } from '../../charts/gap-line.ts';
import { drawPlateView } from '../../charts/plate-view.ts';
import { drawSeamMap } from '../../charts/seam-map.ts';
import '../../charts/gap-line.css';
import '../../charts/plate-view.css';
import '../../charts/seam-map.css';
import { seamEffectWords } from '../../words/seam-effect-words.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Drawn, type Size } from '../drawn.tsx';
import { unbroken } from '../unbroken.ts';
import { askedWords } from './asked-words.ts';
import type { Asked } from './asked.ts';
import { gapOf } from './gap-of.ts';
import { plateOf } from './plate-of.ts';
import { seamsOf } from './seams-of.ts';
import type { Shown } from './shown.ts';

/** The picture of the last throw that was asked for, beside the plane; or, in its place, why there is none. */
export function AskedPicture(props: { readonly view: MoundView; readonly asked: Asked; readonly textPx: number }) {
  const speech = useSpeech();
  const title = () => askedWords(props.asked, speech().words).title;
  return (
    <section class="wall-picture" aria-label={title()} data-picture={props.asked}>
      <p class="quiet">{title()}</p>
      <Switch>
        <Match when={props.asked === 'seam-map'}><OrWords shown={seamsOf(props.view, speech())} draw={(svg, data, size) => drawSeamMap(svg, data, { ...size, textPx: props.textPx })} /></Match>
        <Match when={props.asked === 'gap-line'}><OrWords shown={gapOf(props.view, speech())} draw={(svg, data, size) => drawGapLine(svg, data, { ...size, textPx: props.textPx })} /></Match>
        <Match when={props.asked === 'plate'}><OrWords shown={plateOf(props.view, speech())} draw={(svg, data, size) => drawPlateView(svg, data, { ...size, textPx: props.textPx })} /></Match>
      </Switch>
      <Show when={props.asked === 'seam-map' && props.view.session?.trial}>
        {(trial) => <p class="wall-seam-effect" data-seam-effect={trial().seamEffect.kind}>{unbroken(speech().words.asked.seamEffect.ofTrial(trial().letter, seamEffectWords(trial().seamEffect, speech())))}</p>}
      </Show>
    </section>
  );
}

/** What is shown is worked out here, once a view, so that a picture nobody asked for is not. */
function OrWords<T>(props: { readonly shown: Shown<T>; readonly draw: (svg: SVGSVGElement, data: T, size: Size) => void }) {
  const shown = createMemo(() => props.shown);
  const data = () => {
    const now = shown();
    return now.kind === 'picture' ? now.data : null;
  };
  const words = () => {
    const now = shown();
    return now.kind === 'words' ? now.words : '';
  };
  return (
    <Show when={data() !== null} fallback={<p class="wall-picture-words">{words()}</p>}>
      <Drawn class="wall-picture-room" draw={(svg, size) => { const now = data(); if (now !== null) props.draw(svg, now, size); }} />
    </Show>
  );
}
