import { inBoth } from './in-both.ts';

/** How an arm is spoken of on every screen. Nothing here says that an arm is fine: nobody here can know that. */
export const arm = inBoth(
  {
    area: { shoulder: 'shoulder', elbow: 'elbow', forearm: 'forearm', hand: 'hand', back: 'back', other: 'elsewhere' },
    said: { nothing: 'nothing to report', tired: 'tired', sore: 'sore', pain: 'pain', numb: 'numbness' },
    saidWhere: (said: string, areas: readonly string[]) => (areas.length === 0 ? said : `${said} in ${areas.join(', ')}`),
    stop: 'Stop throwing',
    /** Read from six metres: few words. */
    stopFar: 'Pain reported. See a licensed medical professional before throwing again.',
    stopStays: 'The coach answers this on Bench. No screen can clear an arm.',
    speedHidden: 'speed hidden, V shows it',
    showSpeed: 'Show speed',
    hideSpeed: 'Hide speed',
    reported: (said: string, by: string, when: string) => `Said by ${by}, ${when}: ${said}.`,
    by: { bench: 'the coach', glance: 'the athlete' },
  },
  {
    area: { shoulder: 'hombro', elbow: 'codo', forearm: 'antebrazo', hand: 'mano', back: 'espalda', other: 'otra parte' },
    said: { nothing: 'nada que reportar', tired: 'cansancio', sore: 'molestia', pain: 'dolor', numb: 'entumecimiento' },
    saidWhere: (said, areas) => (areas.length === 0 ? said : `${said} en ${areas.join(', ')}`),
    stop: 'Deje de lanzar',
    stopFar: 'Dolor reportado. Vea a un profesional médico con licencia antes de volver a lanzar.',
    stopStays: 'El entrenador responde en Banca. Ninguna pantalla da el visto bueno a un brazo.',
    speedHidden: 'velocidad oculta, V la muestra',
    showSpeed: 'Mostrar velocidad',
    hideSpeed: 'Ocultar velocidad',
    reported: (said, by, when) => `Dicho por ${by}, ${when}: ${said}.`,
    by: { bench: 'el entrenador', glance: 'el atleta' },
  },
);
