import { inBoth } from './in-both.ts';

export const start = inBoth(
  {
    job: 'How far from your fastball, and is that where you want it?',
    mounds: 'Mounds',
    noMounds: 'No device has been heard yet. Connect one to /device, or name a mound below to open its Bench.',
    screens: { wall: 'Wall', bench: 'Bench', glance: 'Glance', plan: 'Plan', playback: 'Playback' },
    forWhom: { wall: 'for the big screen', bench: 'for the coach', glance: 'for the athlete', plan: 'for the coach, before the first trial' },
    trialsOf: 'Trials of',
    recorded: 'Recorded sessions',
    unreachable: 'The server did not answer. Is it running?',
    nowhere: (pathname: string) => `There is no screen at ${pathname}.`,
    home: 'All mounds and screens',
    openSession: (name: string) => `${name} is throwing`,
    other: 'Another mound',
    open: 'Open',
  },
  {
    job: '¿Qué tan lejos de tu recta, y es ahí donde lo quieres?',
    mounds: 'Montículos',
    noMounds: 'Aún no se oye ningún equipo. Conecte uno a /device, o nombre abajo un montículo para abrir su Banca.',
    screens: { wall: 'Muro', bench: 'Banca', glance: 'Vistazo', plan: 'Plan', playback: 'Repetición' },
    forWhom: { wall: 'para la pantalla grande', bench: 'para el entrenador', glance: 'para el atleta', plan: 'para el entrenador, antes del primer ensayo' },
    trialsOf: 'Ensayos de',
    recorded: 'Sesiones grabadas',
    unreachable: 'El servidor no respondió. ¿Está encendido?',
    nowhere: (pathname) => `No hay pantalla en ${pathname}.`,
    home: 'Todos los montículos y pantallas',
    openSession: (name) => `${name} está lanzando`,
    other: 'Otro montículo',
    open: 'Abrir',
  },
);
