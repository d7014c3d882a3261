/** What a tab remembers of a comparison across a reload. Derived: each by hand. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { offOf, rememberOff } from '../../src/app/leftOff.ts';

describe('the alternatives left off the stage', () => {
  let kept: Map<string, string>;
  beforeEach(() => {
    kept = new Map();
    vi.stubGlobal('sessionStorage', {
      getItem: (place: string) => kept.get(place) ?? null,
      setItem: (place: string, text: string) => void kept.set(place, text),
      removeItem: (place: string) => void kept.delete(place),
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  it('are remembered for each build by itself', () => {
    rememberOff('one', ['b', 'c']);
    rememberOff('two', ['a']);
    expect(offOf('one')).toEqual(['b', 'c']);
    expect(offOf('two')).toEqual(['a']);
    expect(offOf('three')).toEqual([]);
  });

  it('leave nothing behind once all are back', () => {
    rememberOff('one', ['b']);
    rememberOff('one', []);
    expect(offOf('one')).toEqual([]);
    expect(kept.size).toBe(0);
  });

  it('are none where what was kept is spoilt', () => {
    rememberOff('one', ['b']);
    for (const spoilt of ['{"b": true}', '["b", 3', '7', 'null']) {
      for (const place of kept.keys()) kept.set(place, spoilt);
      expect(offOf('one'), spoilt).toEqual([]);
    }
  });

  it('are none where the browser stores nothing, and nothing breaks', () => {
    vi.stubGlobal('sessionStorage', undefined);
    rememberOff('one', ['b']);
    expect(offOf('one')).toEqual([]);
  });
});
