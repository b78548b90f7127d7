import { inBoth } from './in-both.ts';

export const glance = inBoth(
  {
    title: (mound: string) => `Glance at mound ${mound}`,
    against: (measures: string) => `Against your fastball: ${measures}.`,
    leftOut: 'Your coach left this throw out.',
    notMeasured: 'This throw could not be measured.',
    noZone: 'No target zone yet, so nothing says whether this was on target.',
    movement: (why: string) => `Movement: ${why}.`,
    giveOrTake: (amount: string) => `Measured give or take ${amount}.`,
    speedHidden: 'Speed is not shown to athletes under 18.',
    unclaimedWhy: 'Thrown while nobody had the mound. Your coach can claim it.',
    feedback: 'Feedback: after every throw',
    caution: 'Pain or numbness: stop now and tell your coach; see a licensed medical professional.',
  },
  {
    title: (mound) => `Vistazo al montículo ${mound}`,
    against: (measures) => `Frente a tu recta: ${measures}.`,
    leftOut: 'Tu entrenador dejó fuera este tiro.',
    notMeasured: 'Este tiro no se pudo medir.',
    noZone: 'Aún sin zona de blanco: nada dice si fue al blanco.',
    movement: (why) => `Movimiento: ${why}.`,
    giveOrTake: (amount) => `Medido con un margen de ${amount}.`,
    speedHidden: 'La velocidad no se muestra a menores de 18 años.',
    unclaimedWhy: 'Lanzado cuando nadie tenía el montículo. Tu entrenador puede asignarlo.',
    feedback: 'Comentarios: después de cada tiro',
    caution: 'Dolor o entumecimiento: para ya y avisa a tu entrenador; consulta a un profesional médico con licencia.',
  },
);
