import { describe, expect, it } from 'vitest';
import { median } from '../../core/statistics/centre.ts';
import { correctedMad, medianAbsoluteDeviation } from '../../core/statistics/spread.ts';

function factorAt(count: number): number {
  const values = Array.from({ length: count }, (_, i) => i * i);
  return correctedMad(values)! / medianAbsoluteDeviation(values)!;
}

describe('median and median absolute deviation', () => {
  // Published: worked example in a lecture note on the MAD method for finding outliers.
  const values = [145, 157, 183, 151, 143, 147, 153, 163, 130, 148];

  it('give the 149.5 and 5.5 of the worked example', () => {
    expect(median(values)).toBe(149.5);
    expect(medianAbsoluteDeviation(values)).toBe(5.5);
  });
});

describe('the small-sample factor of the spread', () => {
  // Published: Park, Kim & Wang, arXiv 1908.00462, table A2, as quoted by Akinshin, arXiv 2207.12005 (2022).
  // Over 30 throws ours is Hayes' formula (2014), and the table is the check on it.
  it.each([
    [5, 1.80392665369503], [6, 1.76378751746339], [7, 1.68681303345622], [8, 1.67184278443567], [9, 1.63294016075791],
    [10, 1.6246810650484], [15, 1.56633918102495], [20, 1.54570532943888], [25, 1.53051736024408], [30, 1.52303123494021],
    [31, 1.52073214384098], [40, 1.51241802749973], [61, 1.50161096150621], [100, 1.49419929692878],
  ])('at %i throws is that of Park, Kim and Wang', (count, published) => {
    expect(Math.abs(factorAt(count) - published)).toBeLessThan(count <= 30 ? 6e-6 : 4e-4);
  });

  // Published: Akinshin, arXiv 2207.12005 (2022), simulation for the sample median; a second, larger simulation. Table and
  // formula are themselves fits to simulations: 4 in 10,000 apart at most, nothing a coach could see.
  it.each([
    [5, 1.8039773124173566], [6, 1.763719118260416], [7, 1.6871327640932143], [8, 1.6714899329273087], [10, 1.62452533060846],
    [16, 1.5637221779558526], [23, 1.5351559695060182], [30, 1.523349992800337], [31, 1.5211888964281282],
    [50, 1.5067416392579631], [100, 1.4944073868839285],
  ])('at %i throws agrees with the simulation of Akinshin', (count, published) => {
    expect(Math.abs(factorAt(count) / published - 1)).toBeLessThan(4e-4);
  });
});
