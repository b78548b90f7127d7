import type { ArmReport } from '../../core/facts/care-view.ts';
import { hourText } from './moments.ts';
import type { Speech } from './speech.ts';

/** "pain in elbow, forearm". */
export function armSaidWords({ said, areas }: Pick<ArmReport, 'said' | 'areas'>, { words: { arm } }: Speech): string {
  return arm.saidWhere(arm.said[said], areas.map((area) => arm.area[area]));
}

/** Who said what about the arm, and when. */
export function reportWords(report: ArmReport, timeZone: string, speech: Speech): string {
  const { arm } = speech.words;
  return arm.reported(armSaidWords(report, speech), arm.by[report.from], hourText(report.atMs, timeZone, speech.language));
}
