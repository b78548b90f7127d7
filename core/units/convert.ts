/**
 * The only conversions between what people and devices say and what core computes with.
 * Factors are exact by definition: inch 0.0254 m, foot 0.3048 m, mile 1609.344 m
 * (international yard and pound agreement, 1959).
 */
const METRES_PER_INCH = 0.0254;
const METRES_PER_FOOT = 0.3048;
const MPS_PER_MPH = 0.44704;
const MPS_PER_KMH = 1 / 3.6;

export const inchesToM = (inches: number): number => inches * METRES_PER_INCH;
export const mToInches = (metres: number): number => metres / METRES_PER_INCH;
export const feetToM = (feet: number): number => feet * METRES_PER_FOOT;
export const mToFeet = (metres: number): number => metres / METRES_PER_FOOT;
export const mphToMps = (mph: number): number => mph * MPS_PER_MPH;
export const mpsToMph = (mps: number): number => mps / MPS_PER_MPH;
export const kmhToMps = (kmh: number): number => kmh * MPS_PER_KMH;
export const mpsToKmh = (mps: number): number => mps / MPS_PER_KMH;
export const degToRad = (degrees: number): number => (degrees * Math.PI) / 180;
export const radToDeg = (radians: number): number => (radians * 180) / Math.PI;
export const rpmToRadps = (rpm: number): number => (rpm * Math.PI) / 30;
export const radpsToRpm = (radps: number): number => (radps * 30) / Math.PI;
