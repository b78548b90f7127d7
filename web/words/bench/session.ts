import { inBoth } from '../in-both.ts';

/** The session itself: stage, notes, closing, and what the tool is not. */
export const session = inBoth(
  {
    since: (hour: string) => `open since ${hour}`,
    stageNow: 'Stage now',
    feedback: 'Feedback on Glance',
    askFirst: 'The athlete says first where it went',
    askFirsts: { no: 'no', yes: 'yes' },
    notes: 'Notes',
    noNotes: 'No note yet.',
    writeNote: 'Note on the session',
    saveNote: 'Save note',
    close: 'Close session',
    closeAsk: (name: string) => `Close the session of ${name}? Its throws stay; new ones need a new session.`,
    closeYes: 'Yes, close it',
    another: 'Open another session',
    care: 'Arm care',
    careText: 'Offpace is a practice tool, not medical advice. Pain in shoulder, elbow or forearm, numbness, or command lost with fatigue: stop now, and see a licensed medical professional before throwing again. League and local rules come first.',
  },
  {
    since: (hour) => `abierta desde ${hour}`,
    stageNow: 'Etapa ahora',
    feedback: 'Comentarios en Vistazo',
    askFirst: 'El atleta dice primero a dónde fue',
    askFirsts: { no: 'no', yes: 'sí' },
    notes: 'Notas',
    noNotes: 'Aún sin notas.',
    writeNote: 'Nota de la sesión',
    saveNote: 'Guardar nota',
    close: 'Cerrar sesión',
    closeAsk: (name) => `¿Cerrar la sesión de ${name}? Sus tiros quedan; los nuevos necesitan otra sesión.`,
    closeYes: 'Sí, cerrarla',
    another: 'Abrir otra sesión',
    care: 'Cuidado del brazo',
    careText: 'Offpace es una herramienta de práctica, no un consejo médico. Dolor en hombro, codo o antebrazo, entumecimiento, o control perdido por cansancio: pare ya y vea a un profesional médico con licencia antes de volver a lanzar. Las reglas de la liga y del lugar van primero.',
  },
);
