import { createMemo } from 'solid-js';
import type { TargetZone } from '../../core/facts/coach.ts';
import type { SessionView } from '../../core/facts/views.ts';
import type { ReachRegion } from '../../core/flight/reach.ts';
import { useDesk } from '../desk/desk.ts';
import type { PlaneData } from '../charts/plane-data.ts';
import { drawSeparationPlane } from '../charts/separation-plane.ts';
import { withReach } from '../reach/behind.ts';
import { Drawn } from '../wall/drawn.tsx';
import { planeOf } from '../wall/plane-of.ts';
import { useSpeech } from '../words/use-words.tsx';

const TEXT_PX = 15;

/** The Wall's plane with what the arm can reach behind the zone. Without `onZone` the zone stands still. */
export function ReachPlane(props: { readonly session: SessionView; readonly zone: TargetZone | null; readonly reach: ReachRegion | null; readonly onZone: ((zone: TargetZone) => void) | null }) {
  const desk = useDesk();
  const speech = useSpeech();
  const data = createMemo((): PlaneData => {
    const wall = withReach(planeOf(desk.view(), speech()), props.reach, speech());
    // The zone is named above; the miss of the last throw belongs to the zone that is set, not to the one that is planned.
    return { ...wall, zone: props.zone, miss: null, texts: { ...wall.texts, target: '' } };
  });
  const handles = () => {
    const onZone = props.onZone;
    return onZone === null ? {} : { handleTexts: speech().words.wall.resize, onZone: (zone: TargetZone) => onZone(zone) };
  };
  return <Drawn class="plan-plane" draw={(svg, { width, height }) => drawSeparationPlane(svg, data(), { width, height, textPx: TEXT_PX, letters: 'newest', ...handles() })} />;
}
