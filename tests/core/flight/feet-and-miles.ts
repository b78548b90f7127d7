/** Exact conversions for check values printed in the trade's units. */
export const footM = 0.3048;
export const inchM = 0.0254;
export const mphMps = 0.44704;
export const degreeRad = Math.PI / 180;
