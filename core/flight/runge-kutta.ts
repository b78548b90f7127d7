/** Writes d(state)/dt into `rate`. Must not keep either array. */
export type Derivative = (timeS: number, state: Float64Array, rate: Float64Array) => void;

/** Takes `from` at `timeS` one step of `stepS` on, into `to`. */
export type Step = (timeS: number, stepS: number, from: Float64Array, to: Float64Array) => void;

/**
 * The classical fourth-order Runge–Kutta step for `size` unknowns. The work space is allocated once, here;
 * a step allocates nothing. `from` and `to` may be the same array. One stepper must not be used re-entrantly.
 */
export function rungeKutta4(size: number, derivative: Derivative): Step {
  const k1 = new Float64Array(size);
  const k2 = new Float64Array(size);
  const k3 = new Float64Array(size);
  const k4 = new Float64Array(size);
  const probe = new Float64Array(size);
  const shift = (from: Float64Array, rate: Float64Array, by: number): void => {
    for (let i = 0; i < size; i += 1) probe[i] = from[i]! + by * rate[i]!;
  };
  return (timeS, stepS, from, to) => {
    derivative(timeS, from, k1);
    shift(from, k1, stepS / 2);
    derivative(timeS + stepS / 2, probe, k2);
    shift(from, k2, stepS / 2);
    derivative(timeS + stepS / 2, probe, k3);
    shift(from, k3, stepS);
    derivative(timeS + stepS, probe, k4);
    for (let i = 0; i < size; i += 1) {
      to[i] = from[i]! + (stepS / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
    }
  };
}
