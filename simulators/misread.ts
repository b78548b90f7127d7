import type { ThrowBody } from '../core/facts/frames.ts';
import type { Random } from './random.ts';

/** By how much a misread speed is too low. */
const SPEED_SHARE = 0.86;

/** What a device makes of a throw that it sees badly: the spin counted twice, or the speed far too low. Possible, so the server cannot refuse it. */
export function misread(body: ThrowBody, random: Random): ThrowBody {
  const spinTwice = random.uniform() < 0.5;
  return spinTwice && body.spin !== undefined && body.spin.rate < 2400 ? { ...body, spin: { ...body.spin, rate: 2 * body.spin.rate } } : slower(body);
}

function slower(body: ThrowBody): ThrowBody {
  if (body.path !== undefined) {
    return { ...body, path: body.path.map(([timeS, x, y, z]) => [Number((timeS / SPEED_SHARE).toFixed(6)), x, y, z]) };
  }
  if (body.constant !== undefined) {
    const [x, y, z] = body.constant.velocity;
    return { ...body, constant: { ...body.constant, velocity: [x, Number((y * SPEED_SHARE).toFixed(4)), z] } };
  }
  const summary = body.summary!;
  return { ...body, summary: { ...summary, releaseSpeed: Number((summary.releaseSpeed * SPEED_SHARE).toFixed(1)) } };
}
