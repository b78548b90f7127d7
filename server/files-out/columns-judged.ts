import type { GapView, SeparationView } from '../../core/facts/views.ts';
import type { Cell, Column, ThrowKnown } from './column.ts';
import type { Quantity } from './units.ts';

const separation = (name: string, quantity: Quantity, meaning: string, of: Exclude<keyof SeparationView, 'baseline'>): Column =>
  ({ name, type: 'number', quantity, meaning, of: ({ view }) => view.separation?.[of] ?? null });

const gap = (of: (gap: GapView) => Cell) => ({ view }: ThrowKnown): Cell => (view.gap === null || typeof view.gap === 'string' ? view.gap : of(view.gap));

/** The throw held against the fastball baseline and the target zone of its own stage. */
export const JUDGED: readonly Column[] = [
  { name: 'baseline', type: 'integer', meaning: 'Number of the fastball baseline that the separation is from; empty without one.', of: ({ view }) => view.separation?.baseline ?? null },
  separation('separation_speed', 'speed', 'Speed gap: the throw minus the baseline; slower is negative.', 'speedMps'),
  separation('separation_vertical', 'movement', 'Vertical separation; lower is negative.', 'verticalM'),
  separation('separation_arm_side', 'movement', 'Horizontal separation; arm side positive.', 'armSideM'),
  separation('separation_arrival', 'time', 'Arrival gap: how much later it is at the plate.', 'arrivalS'),
  separation('release_shift', 'movement', 'How far the release lies from that of the baseline.', 'releaseShiftM'),
  { name: 'on_target', type: 'truth', meaning: 'Vertical and horizontal separation lie in the target zone; empty without zone, and for fastballs.', of: ({ view }) => view.miss?.onTarget ?? null },
  { name: 'miss', type: 'number', unit: '1', meaning: 'Signed distance to the edge of the zone, each axis divided by 2 in, the smallest difference that matters; negative inside.', of: ({ view }) => view.miss?.size ?? null },
  { name: 'to_edge_vertical', type: 'number', quantity: 'movement', meaning: 'From the throw to the nearest point of the edge: what was lacking.', of: ({ view }) => view.miss?.toEdgeVerticalM ?? null },
  { name: 'to_edge_arm_side', type: 'number', quantity: 'movement', meaning: 'The same, towards the arm side.', of: ({ view }) => view.miss?.toEdgeArmSideM ?? null },
  { name: 'pace_on_target', type: 'truth', meaning: 'The speed gap lies in its band; empty without band or speed.', of: ({ view }) => view.miss?.paceOnTarget ?? null },
  { name: 'aimed_arrival', type: 'number', quantity: 'time', meaning: 'How much later it arrives than the fastball baseline aimed at the same place.', of: gap((one) => one.aimedArrivalS) },
  { name: 'decision_gap', type: 'number', unit: 'ball widths', meaning: 'Gap to that fastball at the decision point.', of: gap((one) => one.decisionWidths) },
  { name: 'decision_before', type: 'number', quantity: 'time', meaning: 'How long before the fastball arrives the decision point lies.', of: gap((one) => one.decisionBeforeS) },
  { name: 'decision_basis', type: 'text', meaning: 'Whether both balls are seen at the same-time or at the same-distance.', of: ({ view }) => (view.gap === null || typeof view.gap === 'string' ? null : view.gap.decisionBasis) },
  { name: 'plate_gap', type: 'number', unit: 'ball widths', meaning: 'Gap when the first of the two is at the plate.', of: gap((one) => one.plateWidths) },
];
