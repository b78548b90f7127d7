import { inBoth } from './in-both.ts';

/** Whether what is shown is now, was, or is on its way. */
export const standing = inBoth(
  {
    live: 'Live',
    connecting: 'Connecting',
    catchingUp: (have: number, of: number) => `Catching up ${have} of ${of}`,
    serverSilent: (since: string) => `Stale since ${since}`,
    serverSilentWhy: 'The server is silent.',
    deviceSilent: (since: string) => `Device silent since ${since}`,
    deviceUnknown: 'No device heard yet',
    closed: (at: string) => `Closed ${at}`,
    closedTitle: 'Session closed',
    waiting: 'No session',
    waitingSession: 'Waiting for a session',
    playedBack: (at: string) => `Played back ${at}`,
    behindLive: (by: string) => `Behind live by ${by}`,
    backToLive: 'Back to live',
    refused: 'This screen was refused',
  },
  {
    live: 'En vivo',
    connecting: 'Conectando',
    catchingUp: (have, of) => `Poniéndose al día ${have} de ${of}`,
    serverSilent: (since) => `Sin datos desde ${since}`,
    serverSilentWhy: 'El servidor no responde.',
    deviceSilent: (since) => `Equipo callado desde ${since}`,
    deviceUnknown: 'Aún sin equipo',
    closed: (at) => `Cerrada ${at}`,
    closedTitle: 'Sesión cerrada',
    waiting: 'Sin sesión',
    waitingSession: 'Esperando una sesión',
    playedBack: (at) => `Grabación ${at}`,
    behindLive: (by) => `${by} detrás del vivo`,
    backToLive: 'Volver al vivo',
    refused: 'Esta pantalla fue rechazada',
  },
);
