import { inBoth } from './in-both.ts';

/** Taking throws and pictures out. */
export const takingOut = inBoth(
  {
    title: 'Take out',
    pictures: 'Pictures, as they are now',
    save: (picture: string, as: string) => `Save as ${as}: ${picture}`,
    notDrawn: 'This browser could not draw the picture as PNG; save it as SVG.',
    science: (version: number) => `science version ${version}`,
    throws: { all: 'All throws of all athletes', athlete: 'Throws of this athlete', session: 'Throws of this session' },
    facts: 'Facts (JSON Lines)',
    names: 'Tables with names',
    keep: 'Files hold personal data: keep them where only those who need them can read them. Facts always hold names.',
  },
  {
    title: 'Llevarse datos',
    pictures: 'Imágenes, como están ahora',
    save: (picture, as) => `Guardar como ${as}: ${picture}`,
    notDrawn: 'Este navegador no pudo dibujar la imagen como PNG; guárdela como SVG.',
    science: (version) => `versión de las fórmulas ${version}`,
    throws: { all: 'Todos los tiros de todos los atletas', athlete: 'Tiros de este atleta', session: 'Tiros de esta sesión' },
    facts: 'Hechos (JSON Lines)',
    names: 'Tablas con nombres',
    keep: 'Los archivos contienen datos personales: guárdelos donde solo los lea quien los necesite. Los hechos siempre llevan nombres.',
  },
);
