import { inBoth } from './in-both.ts';

/** The tick list of what a coach sees and no device measures. */
export const observed = inBoth(
  {
    title: (letter: string) => `Seen on trial ${letter}`,
    what: {
      'loose-wrist-and-forearm': 'Wrist and forearm loose',
      'forced-turn': 'Hand forced over',
      'slight-cut': 'Slight cut',
      'straight-behind': 'From straight behind the ball',
    },
    speaks: { for: (family: string) => `speaks for ${family}`, against: (family: string) => `speaks against ${family}`, nothing: 'moves no ranking' },
    noFamily: 'moves no ranking while the trial has no family',
    why: 'What a coach sees is no measure. It stands among the reasons on Plan today; how much it weighs is a house rule.',
  },
  {
    title: (letter) => `Visto en el ensayo ${letter}`,
    what: {
      'loose-wrist-and-forearm': 'Muñeca y antebrazo sueltos',
      'forced-turn': 'Mano forzada a girar',
      'slight-cut': 'Leve corte',
      'straight-behind': 'Desde justo detrás de la bola',
    },
    speaks: { for: (family) => `habla a favor de ${family}`, against: (family) => `habla en contra de ${family}`, nothing: 'no mueve el orden' },
    noFamily: 'no mueve el orden mientras el ensayo no tenga familia',
    why: 'Lo que ve un entrenador no es una medida. Hoy está entre las razones de Plan; cuánto pesa es regla de la casa.',
  },
);
