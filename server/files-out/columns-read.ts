import type { ReadingWithError } from '../../core/facts/views.ts';
import type { Cell, Column, ThrowKnown } from './column.ts';
import type { Quantity } from './units.ts';

const reading = (name: string, quantity: Quantity, meaning: string, of: Column['of']): Column => ({ name, type: 'number', quantity, meaning, of });

/** Of the unexplained movement, where the device shows one. */
const unexplained = (part: 'verticalM' | 'armSideM' | 'spinVerticalM' | 'spinArmSideM' | 'acrossM') => ({ view }: ThrowKnown): Cell =>
  (view.unexplained.kind === 'unexplained' ? view.unexplained[part] : view.unexplained.kind);

/** What was read from the measurement of the throw alone. */
const READINGS: readonly Column[] = [
  reading('speed', 'speed', 'Speed at release.', ({ view }) => view.speedMps),
  reading('vertical_break', 'movement', 'Induced vertical break, release to front of plate, drag kept; up is positive.', ({ view }) => view.verticalM),
  reading('arm_side_break', 'movement', 'Induced horizontal break; arm side positive for either hand.', ({ view }) => view.armSideM),
  reading('flight_time', 'time', 'From release to the front of the plate.', ({ view }) => view.flightTimeS),
  { name: 'flight_time_from', type: 'text', meaning: 'What that rests on: path, device, spin or speed.', of: ({ view }) => view.flightTimeFrom },
  reading('release_height', 'length', 'Height of the release over the ground.', ({ view }) => view.releaseHeightM),
  reading('release_arm_side', 'length', 'Release beside the middle of the rubber; arm side positive.', ({ view }) => view.releaseArmSideM),
  reading('extension', 'length', 'How far in front of the rubber the ball leaves the hand.', ({ view }) => view.extensionM),
  reading('plate_height', 'length', 'Height at the front of the plate.', ({ view }) => view.plateHeightM),
  reading('plate_right', 'length', 'Beside the middle of the plate, towards the catcher’s right for either hand.', ({ view }) => view.plateRightM),
  reading('plate_speed', 'speed', 'Speed at the front of the plate.', ({ view }) => view.plateSpeedMps),
  reading('vertical_approach', 'angle', 'Against the ground at the front of the plate; falling is negative.', ({ view }) => view.verticalApproachRad),
  reading('horizontal_approach', 'angle', 'Across the plate there; towards the arm side positive.', ({ view }) => view.horizontalApproachRad),
  { name: 'spin', type: 'number', unit: 'rpm', meaning: 'Total spin.', of: ({ view }) => view.spinRpm },
  reading('tilt', 'angle', 'Where the spin pushes the ball, on the clock that the pitcher sees: 0 is 12:00, clockwise, not mirrored.', ({ view }) => view.tiltRad),
  { name: 'spin_efficiency', type: 'number', unit: '1', meaning: 'Share of the spin across the direction of flight.', of: ({ view }) => view.efficiency },
  reading('gyro', 'angle', 'Angle of the spin axis out of the plane across the flight; positive turns clockwise for the pitcher.', ({ view }) => view.gyroRad),
  { name: 'spin_from', type: 'text', meaning: 'How tilt, efficiency and gyro came to be known: measured or inferred.', of: ({ view }) => view.spinFrom },
  { name: 'seam_latitude', type: 'number', unit: 'deg', meaning: 'Where the spin axis leaves the ball on the map of the seams.', of: ({ view }) => view.seamAxis?.latitudeDeg ?? null },
  { name: 'seam_longitude', type: 'number', unit: 'deg', meaning: 'The same, its longitude.', of: ({ view }) => view.seamAxis?.longitudeDeg ?? null },
  reading('spin_explained_vertical', 'movement', 'Vertical break that the measured spin accounts for.', unexplained('spinVerticalM')),
  reading('spin_explained_arm_side', 'movement', 'Arm-side break that it accounts for.', unexplained('spinArmSideM')),
  reading('unexplained_vertical', 'movement', 'Vertical break that is left.', unexplained('verticalM')),
  reading('unexplained_arm_side', 'movement', 'Arm-side break that is left.', unexplained('armSideM')),
  reading('unexplained_across', 'movement', 'The part of it across the push of the spin, from 12:00 towards the arm side: the evidence of a seam effect.', unexplained('acrossM')),
];

const ERRORS: readonly (readonly [ReadingWithError, of: string, Quantity])[] = [
  ['speedMps', 'speed', 'speed'], ['verticalM', 'vertical_break', 'movement'], ['armSideM', 'arm_side_break', 'movement'], ['flightTimeS', 'flight_time', 'time'],
  ['releaseHeightM', 'release_height', 'length'], ['releaseArmSideM', 'release_arm_side', 'length'], ['plateHeightM', 'plate_height', 'length'], ['plateRightM', 'plate_right', 'length'],
  ['plateSpeedMps', 'plate_speed', 'speed'], ['verticalApproachRad', 'vertical_approach', 'angle'], ['horizontalApproachRad', 'horizontal_approach', 'angle'],
];

/** Of a reading that is not there, its error says nothing. */
const standardErrors = ERRORS.map(([measure, of, quantity]) => reading(`${of}_se`, quantity, `One standard error of ${of}, where the measurement gives it: a path of samples does.`, ({ view }) =>
  (typeof view[measure] === 'number' ? (view.standardErrors?.[measure] ?? null) : null)));

export const READ: readonly Column[] = [...READINGS, ...standardErrors];
