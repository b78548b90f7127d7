import '@fontsource-variable/hanken-grotesk/index.css';
import '../../web/theme.css';
import '../../web/charts/charts.css';
import '../../web/charts/gap-line.css';
import '../../web/charts/plate-view.css';
import '../../web/charts/seam-map.css';
import '../../web/words/of-pictures.ts';
import type { Language } from '../../web/words/language.ts';
import { speechIn, type Units } from '../../web/words/speech.ts';
import { GAP_SCENES, GRASPED_SCENES, PLANE_SCENES, PLATE_SCENES, SEAM_SCENES } from '../../web/gallery/hard-places.ts';
import type { Room } from '../../web/gallery/scene.ts';

const SCENES = { ...SEAM_SCENES, ...GAP_SCENES, ...PLANE_SCENES, ...PLATE_SCENES, ...GRASPED_SCENES };

/** Draws one scene alone on the page, again into the same picture if it is there. Gives what it is made of. */
export function drawScene(name: string, language: Language, units: Units, room: Room): string {
  let svg = document.querySelector('svg');
  if (svg === null) {
    document.body.style.margin = '20px';
    svg = document.body.appendChild(document.createElementNS('http://www.w3.org/2000/svg', 'svg'));
  }
  SCENES[name]!(svg, speechIn(language, units), room);
  return svg.outerHTML;
}
