import '../words/of-desk.ts';
import { createEffect, For } from 'solid-js';
import { galleryWords } from '../words/gallery.ts';
import { Speaking, useSpeech } from '../words/use-words.tsx';
import { Drawn } from '../wall/drawn.tsx';
import { GAP_SCENES, GRASPED_SCENES, PLANE_SCENES, PLATE_SCENES, SEAM_SCENES } from './hard-places.ts';
import { CLOCKS, DIFFERENCES, EFFICIENCIES, PAIRS, RAILS, STRIPS, TRENDS } from './measures.ts';
import { LETTERED_PLANES, PLANES } from './planes.ts';
import type { Scene, Scenes } from './scene.ts';
import '../charts/gap-line.css';
import '../charts/gap-pair.css';
import '../charts/plate-view.css';
import '../charts/seam-map.css';
import '../charts/session-strip.css';
import '../charts/trials.css';
import '../aims/aims.css';
import '../plan/plan.css';
import '../wall/wall.css';
import './gallery.css';

const TEXT_PX = 17;

/** Every chart with its states. */
const CHARTS = {
  plane: PLANES, 'plane-hard': PLANE_SCENES, 'plane-grasped': GRASPED_SCENES, lettered: LETTERED_PLANES, rail: RAILS, trend: TRENDS, strip: STRIPS,
  plate: PLATE_SCENES, seams: SEAM_SCENES, gap: GAP_SCENES, pair: PAIRS, difference: DIFFERENCES, efficiency: EFFICIENCIES, clock: CLOCKS,
} as const satisfies Readonly<Record<string, Scenes>>;
type Chart = keyof typeof CHARTS;

/** All pictures of Offpace in all their states, from invented throws: to look at, to compare, and for the picture tests. */
export default function Gallery() {
  return <Speaking athlete={null}><Charts /></Speaking>;
}

function Charts() {
  const speech = useSpeech();
  const say = () => galleryWords(speech().language);
  createEffect(() => {
    document.title = `Offpace · ${say().title}`;
  });
  return (
    <main class="gallery">
      <p><a href="/">{speech().words.start.home}</a></p>
      <h1>{say().title}</h1>
      <p class="quiet">{say().invented}</p>
      <For each={Object.keys(CHARTS) as Chart[]}>
        {(chart) => (
          <section aria-labelledby={`chart-${chart}`} data-chart={chart}>
            <h2 id={`chart-${chart}`}>{say().charts[chart]}</h2>
            <div class="gallery-states"><For each={Object.entries(CHARTS[chart] as Scenes)}>{([name, scene]) => <State name={name} said={say().state(name)} scene={scene} />}</For></div>
          </section>
        )}
      </For>
    </main>
  );
}

/** A picture that may no longer be so is dimmed, as on the Wall. */
function State(props: { readonly name: string; readonly said: string; readonly scene: Scene }) {
  const speech = useSpeech();
  return (
    <figure data-state={props.name} data-dimmed={props.name === 'stale' ? 'yes' : 'no'}>
      <div class="wall-plane"><Drawn class="gallery-room" draw={(svg, { width, height }) => props.scene(svg, speech(), { width, height, textPx: TEXT_PX })} /></div>
      <figcaption>{props.said}</figcaption>
    </figure>
  );
}
