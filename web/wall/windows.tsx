import { createMemo, For, Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { drawTrend } from '../charts/trend.ts';
import { useSpeech } from '../words/use-words.tsx';
import { Drawn } from './drawn.tsx';
import { windowOf, windowThrows, windowTrends } from './window-words.ts';

const SHOWN_THROWS = 10;

/** The windows of the current trial as small trends: each says what it measures, the newest full window, and draws the throws behind it. */
export function Windows(props: { readonly view: MoundView; readonly textPx: number; readonly withoutSpeed: boolean }) {
  const speech = useSpeech();
  const trends = createMemo(() => windowTrends(props.view, speech()).filter(({ key }) => !props.withoutSpeed || key !== 'pace'));
  const of = createMemo(() => windowOf(props.view, speech()));
  const hits = createMemo(() => windowThrows(props.view).slice(-SHOWN_THROWS));
  return (
    <section class="wall-windows" aria-label={speech().words.wall.windows.title}>
      <p class="wall-window-of"><span>{of().last}</span> <span class="quiet">{of().trial}</span><Show when={windowThrows(props.view).some(({ inferred }) => inferred)}> <span class="quiet wall-window-inferred">{speech().words.trade.inferred}</span></Show></p>
      <For each={trends().map(({ key }) => key)}>
        {(key) => {
          const now = () => trends().find((trend) => trend.key === key)!;
          return (
            <div class="wall-window" data-window={key}>
              <p class="quiet">{now().title}</p>
              <p class="wall-window-value">{now().value}</p>
              <Show when={now().trend} fallback={<ol class="wall-hits" aria-hidden="true"><For each={hits()}>{(thrown) => <li data-on-target={thrown.miss?.onTarget === true ? 'yes' : 'no'} />}</For></ol>}>
                {(trend) => <Drawn class="wall-trend" draw={(svg, { width, height }) => drawTrend(svg, trend(), { width, height, throws: SHOWN_THROWS, markPx: Math.max(4, props.textPx * 0.17) })} />}
              </Show>
            </div>
          );
        }}
      </For>
    </section>
  );
}
