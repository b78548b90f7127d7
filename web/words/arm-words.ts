import type { ArmReport, IsoDay } from '../../core/facts/care-view.ts';
import { dateText, hourText } from './moments.ts';
import type { Speech } from './speech.ts';

/** "pain in elbow, forearm". */
function armSaidWords({ said, areas }: Pick<ArmReport, 'said' | 'areas'>, { words: { arm } }: Speech): string {
  return arm.saidWhere(arm.said[said], areas.map((area) => arm.area[area]));
}

/** Who said what about the arm, and when: of another day with its date. */
export function reportWords(report: ArmReport, { timeZone, armCare: { day } }: { readonly timeZone: string; readonly armCare: { readonly day: IsoDay } }, speech: Speech): string {
  const { arm } = speech.words;
  const hour = hourText(report.atMs, timeZone, speech.language);
  const when = report.day === day ? hour : `${dateText(report.atMs, timeZone, speech.language)}, ${hour}`;
  return arm.reported(armSaidWords(report, speech), arm.by[report.from], when);
}
