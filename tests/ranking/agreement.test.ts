import { describe, expect, it } from 'vitest';
import { best } from '../../src/ranking/solve/solve.ts';
import { asked, exchanged, isInstalled } from './exchange.ts';
import { generated, networkOf, type Shape } from './generated.ts';

const shapes: Shape[] = Array.from({ length: 24 }, (_, seed) => ({
  parts: 5 + (seed % 4),
  candidates: 8 + (seed % 3) * 8,
  graph: (['car', 'fan', 'full'] as const)[seed % 3]!,
  unary: (['strong', 'mid', 'weak'] as const)[(seed >> 1) % 3]!,
  withGlobals: seed % 2 === 0,
  seed,
}));

// Oracle: toulbar2, an independent exact solver of cost function networks (a Debian package).
describe.skipIf(!isInstalled())('the best of a cost network, where toulbar2 is installed', () => {
  it.each(shapes)('is the optimum that toulbar2 proves: %o', (shape) => {
    const instance = generated(shape);
    const network = networkOf(instance);
    const [found] = best(network, { count: 1, tolerance: 0.9 }).best;
    const { optimum, hasNone } = asked(exchanged(instance, network));
    expect(found?.cost).toBe(optimum);
    expect(optimum === undefined).toBe(hasNone);
  });
});
