import { inBoth } from './in-both.ts';

/** The code that lets the athlete's phone in, on the Wall. */
export const glanceCode = inBoth(
  {
    show: 'Show Glance code',
    title: (athlete: string) => `Glance for ${athlete}`,
    how: 'Point the camera of the phone at it.',
    good: (until: string) => `Opens once, on one phone, until ${until}. It shows this session alone and ends with it.`,
    drawn: (athlete: string) => `QR code that opens Glance for ${athlete}`,
    thisMachine: 'Only this machine reaches the server now, so no phone can open this. docs/security.md says how to let phones in.',
    asking: 'Asking for a code …',
    used: 'Opened on a phone.',
    over: 'This code is over.',
    closed: 'The session is closed, and Glance with it.',
    notYours: 'Only a coach who is signed in can ask for a code.',
    silent: 'The server did not answer, so there is no code.',
    again: 'New code',
    close: 'Close',
  },
  {
    show: 'Mostrar código de Vistazo',
    title: (athlete) => `Vistazo de ${athlete}`,
    how: 'Apunta la cámara del teléfono.',
    good: (until) => `Se abre una vez, en un teléfono, hasta las ${until}. Muestra solo esta sesión y termina con ella.`,
    drawn: (athlete) => `Código QR que abre el Vistazo de ${athlete}`,
    thisMachine: 'Ahora solo esta máquina llega al servidor: ningún teléfono puede abrirlo. docs/security.md dice cómo dejar entrar teléfonos.',
    asking: 'Pidiendo un código …',
    used: 'Abierto en un teléfono.',
    over: 'Este código venció.',
    closed: 'La sesión está cerrada, y con ella el Vistazo.',
    notYours: 'Solo un entrenador que haya entrado puede pedir un código.',
    silent: 'El servidor no respondió: no hay código.',
    again: 'Código nuevo',
    close: 'Cerrar',
  },
);
