/**
 * The working ball, 5.125 oz and 9.125 in round (A. M. Nathan, University of Illinois), the middle of
 * what Official Baseball Rules 3.01 allows (5–5¼ oz, 9–9¼ in).
 */
export const ball = {
  massKg: 5.125 * 0.028349523125, // 0.145291306 kg
  radiusM: (9.125 * 0.0254) / (2 * Math.PI), // 0.036888137 m
} as const;

/** Standard gravity, 3rd CGPM (1901). */
export const standardGravityMps2 = 9.80665;

/** Home plate (Official Baseball Rules 2): 17 in deep and wide; y = 0 is its rear point. */
export const plate = { frontYM: 0.4318, widthM: 0.4318 } as const;

/** The pitcher's rubber (Official Baseball Rules 2): front edge 60 ft 6 in from the rear point of the plate, 10 in above it. */
export const rubber = { yM: 18.4404, heightM: 0.254 } as const;
