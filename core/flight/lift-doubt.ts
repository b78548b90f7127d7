import { separationBySpin, type Arm, type ArmThrow } from './arm.ts';
import { publishedLaws } from './lift-laws.ts';

/**
 * How far, ± m, it is open where spin alone takes a throw, because the published lift laws differ: 1.96 roots of their second
 * moment about the default, each as likely, which holds each of them. The fastball it is held against was measured, and so is
 * no part of it. Null when the ball does not get to the plate by each of them.
 */
export function liftDoubtM(arm: Arm, thrown: ArmThrow): number | null {
  const [byDefault, ...others] = publishedLaws.map((law) => separationBySpin(arm, thrown, law));
  let squares = 0;
  for (const other of others) {
    if (!byDefault || other === null) return null;
    squares += (other.verticalM - byDefault.verticalM) ** 2 + (other.armSideM - byDefault.armSideM) ** 2;
  }
  return 1.96 * Math.sqrt(squares / publishedLaws.length);
}
