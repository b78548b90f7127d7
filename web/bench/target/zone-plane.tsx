import { createMemo, Show } from 'solid-js';
import type { TargetZone } from '../../../core/facts/coach.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { drawSeparationPlane } from '../../charts/separation-plane.ts';
import { assumedWords } from '../../reach/assumed-words.ts';
import { withReach } from '../../reach/behind.ts';
import { Drawn } from '../../wall/drawn.tsx';
import { unexplainedWords } from '../../wall/asked/unexplained-of.ts';
import { withArrow } from '../../wall/asked/with-arrow.ts';
import { planeOf } from '../../wall/plane-of.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';
import { reachBehind } from './reach-behind.ts';

const TEXT_PX = 15;

/**
 * The Wall's plane with a zone that can be moved; without `onZone` it stands still. While it moves, the old miss is not drawn: it belongs to the zone that was.
 * The zone is not named in the picture, where its handles are: the heading above names it. Behind it lies what spin alone can
 * reach; what the last throw's spin does not explain is an arrow. What is assumed or cannot be seen is said below.
 */
export function ZonePlane(props: { readonly session: SessionView; readonly zone: TargetZone | null; readonly onZone: ((zone: TargetZone, letGo: boolean) => void) | null }) {
  const desk = useDesk();
  const speech = useSpeech();
  const reach = createMemo(() => reachBehind(desk.view(), props.session));
  const data = createMemo(() => {
    const wall = withReach(withArrow(planeOf(desk.view(), speech()), desk.view(), speech(), 'named'), reach()?.region ?? null, speech());
    const plane = props.onZone === null ? wall : { ...wall, texts: { ...wall.texts, target: '' } };
    return props.zone === props.session.zone ? plane : { ...plane, zone: props.zone, miss: null };
  });
  const handles = () => {
    const { onZone } = props;
    return onZone === null ? {} : { handleTexts: speech().words.wall.resize, onZone };
  };
  /** What cannot be seen, and what was not measured. */
  const notes = () => {
    const reading = desk.view().throws.at(-1)?.unexplained;
    const hidden = reading?.kind === 'not-visible' ? `${unexplainedWords(reading, speech())}.` : null;
    return [hidden, assumedWords(reach()?.assumed ?? [], speech())].filter((note) => note !== null).join(' ');
  };
  /** What no longer needs saying keeps its room, so that the fields below stay under the finger. */
  const noted = createMemo<string>((before) => (notes() === '' ? before : notes()), '');
  return (
    <>
      <Drawn class="zone-plane" draw={(svg, { width, height }) => drawSeparationPlane(svg, data(), {
        width, height, textPx: TEXT_PX, letters: 'newest', ...handles(),
      })} />
      <Show when={noted() !== ''}><p class="quiet small" classList={{ 'left-out': notes() === '' }}>{noted()}</p></Show>
    </>
  );
}
