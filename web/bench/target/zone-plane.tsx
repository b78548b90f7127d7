import { createMemo, Show } from 'solid-js';
import type { TargetZone } from '../../../core/facts/coach.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { drawSeparationPlane } from '../../charts/separation-plane.ts';
import { Drawn } from '../../wall/drawn.tsx';
import { unexplainedWords } from '../../wall/asked/unexplained-of.ts';
import { planeOf } from '../../wall/plane-of.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { useDesk } from '../desk.ts';

const TEXT_PX = 15;

/**
 * The Wall's plane with a zone that can be moved. While it moves, the old miss is not drawn: it belongs to the zone that was.
 * The zone is not named in the picture, where its handles are: the heading above names it. What the last throw's spin does not
 * explain is an arrow; a device that cannot see it has that said below.
 */
export function ZonePlane(props: { readonly session: SessionView; readonly zone: TargetZone | null; readonly onZone: (zone: TargetZone, letGo: boolean) => void }) {
  const desk = useDesk();
  const speech = useSpeech();
  const data = createMemo(() => {
    const wall = planeOf(desk.view(), speech(), { arrow: 'named' });
    const plane = { ...wall, texts: { ...wall.texts, target: '' } };
    return props.zone === props.session.zone ? plane : { ...plane, zone: props.zone, miss: null };
  });
  const hidden = () => {
    const reading = desk.view().throws.at(-1)?.unexplained;
    return reading?.kind === 'not-visible' ? unexplainedWords(reading, speech()) : null;
  };
  return (
    <>
      <Drawn class="zone-plane" draw={(svg, { width, height }) => drawSeparationPlane(svg, data(), {
        width, height, textPx: TEXT_PX, letters: 'newest', handleTexts: speech().words.wall.plane.resize, onZone: (zone, letGo) => props.onZone(zone, letGo),
      })} />
      <Show when={hidden()}>{(words) => <p class="quiet">{words()}</p>}</Show>
    </>
  );
}
