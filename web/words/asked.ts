import { inBoth } from './in-both.ts';

/** The two pictures that Wall and Playback show on request. */
export const asked = inBoth(
  {
    seamMap: {
      title: 'Seam map',
      show: 'Show seam map',
      hide: 'Hide seam map',
      axisMissing: (why: string) => `spin axis ${why}`,
      axis: 'spin axis',
      axisTurning: (spin: string) => `axis, ${spin}`,
      farSide: 'far side',
      seams: (count: number) => (count === 1 ? '1 seam a turn' : `${count} seams a turn`),
      axisAlone: 'axis alone: this device does not tell where the seams are',
      description: (said: string) => `The ball of the last throw unrolled round its spin axis, which is in the middle and comes towards the reader. ${said}`,
      turns: 'The ball turns anticlockwise.',
      passing: (seams: string) => `Its equator meets ${seams}.`,
      unexplained: (amount: string) => `${amount} unexplained`,
      unsure: (amount: string) => `${amount} unexplained, ±\u00a0unknown`,
      unexplainedMissing: (why: string) => `unexplained: ${why}`,
      hiddenBecause: {
        'spin-only': 'It did not see the path of the ball.',
        'axis-inferred': 'It worked the axis out from the path, so whatever a seam did is already in the axis.',
        'no-axis': 'It does not know the spin axis.',
      },
    },
    gapLine: {
      title: 'Gap to fastball',
      show: 'Show gap line',
      hide: 'Hide gap line',
      widths: (count: string) => (count === '1.0' ? '1.0 ball width' : `${count} ball widths`),
      decision: 'at decision',
      plate: 'at the plate',
      pathMissing: (why: string) => `path of the ball ${why}`,
      afterRelease: 'after release',
      basis: { 'same-time': 'at the same time', 'same-distance': 'at the same distance' },
      description: (decision: string, before: string, plate: string, basis: string) =>
        `How far the last throw is from the fastball aimed at the same place, ${basis}: ${decision} at the decision point, ${before} before the fastball arrives, and ${plate} when the first of the two is at the plate.`,
    },
  },
  {
    seamMap: {
      title: 'Mapa de costuras',
      show: 'Mostrar mapa de costuras',
      hide: 'Ocultar mapa de costuras',
      axisMissing: (why) => `eje de giro: ${why}`,
      axis: 'eje de giro',
      axisTurning: (spin) => `eje, ${spin}`,
      farSide: 'lado opuesto',
      seams: (count) => (count === 1 ? '1 costura/vuelta' : `${count} costuras/vuelta`),
      axisAlone: 'solo el eje: este equipo no dice dónde están las costuras',
      description: (said) => `La bola del último tiro desplegada alrededor de su eje de giro, que está en el centro y viene hacia el lector. ${said}`,
      turns: 'La bola gira en sentido contrario al reloj.',
      passing: (seams) => `Su ecuador encuentra ${seams}.`,
      unexplained: (amount) => `${amount} sin explicar`,
      unsure: (amount) => `${amount} sin explicar, ±\u00a0desconocido`,
      unexplainedMissing: (why) => `sin explicar: ${why}`,
      hiddenBecause: {
        'spin-only': 'No vio la trayectoria de la bola.',
        'axis-inferred': 'Dedujo el eje de la trayectoria: lo que hizo una costura ya está en el eje.',
        'no-axis': 'No conoce el eje de giro.',
      },
    },
    gapLine: {
      title: 'Distancia a la recta',
      show: 'Mostrar línea de distancia',
      hide: 'Ocultar línea de distancia',
      widths: (count) => `${count} anchos de bola`,
      decision: 'al decidir',
      plate: 'en home',
      pathMissing: (why) => `trayectoria: ${why}`,
      afterRelease: 'desde la salida',
      basis: { 'same-time': 'al mismo tiempo', 'same-distance': 'a la misma distancia' },
      description: (decision, before, plate, basis) =>
        `Qué tan lejos está el último tiro de la recta dirigida al mismo lugar, ${basis}: ${decision} en el punto de decisión, ${before} antes de que llegue la recta, y ${plate} cuando la primera de las dos está en home.`,
    },
  },
);
