/** Up and towards +x, m: a movement on the plane that faces the plate. */
export interface PlaneVector {
  readonly verticalM: number;
  readonly horizontalM: number;
}

/** Covariance of a `PlaneVector`, m²: variance of vertical, covariance, variance of horizontal. */
export type PlaneCovariance = readonly [vertical: number, both: number, horizontal: number];

export function minus(a: PlaneVector, b: PlaneVector): PlaneVector {
  return { verticalM: a.verticalM - b.verticalM, horizontalM: a.horizontalM - b.horizontalM };
}

export function middle(a: PlaneVector, b: PlaneVector): PlaneVector {
  return { verticalM: (a.verticalM + b.verticalM) / 2, horizontalM: (a.horizontalM + b.horizontalM) / 2 };
}

export function size({ verticalM, horizontalM }: PlaneVector): number {
  return Math.hypot(verticalM, horizontalM);
}

/** The covariance of a movement that is `times` standard normal lengths along one vector. */
export function covarianceAlong({ verticalM, horizontalM }: PlaneVector, times = 1): PlaneCovariance {
  const factor = times * times;
  return [factor * verticalM * verticalM, factor * verticalM * horizontalM, factor * horizontalM * horizontalM];
}

/** The covariance of a sum of independent parts. */
export function sumOf(parts: readonly PlaneCovariance[]): PlaneCovariance {
  return parts.reduce(([vv, vh, hh], part): PlaneCovariance => [vv + part[0], vh + part[1], hh + part[2]], [0, 0, 0]);
}
