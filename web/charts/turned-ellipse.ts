import type { PlaneScale } from './plane-scale.ts';

/** An ellipse on the plane; its angle is from the arm-side axis towards up. */
export interface TurnedEllipse {
  readonly semiMajorM: number;
  readonly semiMinorM: number;
  readonly angleRad: number;
}

/** Half the height and half the width of the box round it. */
export function halfBoxM({ semiMajorM, semiMinorM, angleRad }: TurnedEllipse): { readonly tallM: number; readonly wideM: number } {
  return {
    tallM: Math.hypot(semiMajorM * Math.sin(angleRad), semiMinorM * Math.cos(angleRad)),
    wideM: Math.hypot(semiMajorM * Math.cos(angleRad), semiMinorM * Math.sin(angleRad)),
  };
}

/** What puts an ellipse that lies along the x axis at a place of the picture, turned as on the plane. */
export function turnedAt(x: number, y: number, angleRad: number, { armSign }: PlaneScale): string {
  return `translate(${x},${y}) rotate(${(-armSign * angleRad * 180) / Math.PI})`;
}
