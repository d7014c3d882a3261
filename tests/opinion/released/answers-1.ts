/**
 * The answers that stand in `replies-1.txt`, in its order: typed here first, then written as
 * replies by the version that released this form. Neither file is ever changed; a new form of
 * replies gets files of its own.
 */
import type { Answer } from '../../../src/opinion/answer.ts';

/** Answers to the round whose link is the first line of `replies-1.txt`. */
export const answers1: readonly Answer[] = [
  { letter: 'A', parts: {}, pairs: [], words: '' },
  { letter: 'B', parts: {}, pairs: [], words: 'Marigold on the mirrors, please!' },
  {
    letter: 'C',
    parts: { stripes: 'A', badges: 'B' },
    pairs: [],
    words: 'But "quietly": no marigold near the grille — it\'s a dragonfly, not a wasp 🐝',
  },
  {
    letter: 'B',
    parts: { stripes: 'B', mirrors: 'A', 'seat-piping': 'C', dashboard: 'B', badges: 'A' },
    pairs: [],
    words: '',
  },
  {
    letter: 'C',
    parts: {},
    pairs: [
      { chosen: 'B', over: 'A' },
      { chosen: 'C', over: 'B' },
    ],
    words: 'by pairs',
  },
  {
    letter: 'A',
    parts: { mirrors: 'C' },
    pairs: [{ chosen: 'A', over: 'C' }],
    words: 'المرايا الذهبية أجمل',
  },
  { letter: 'B', parts: {}, pairs: [], words: 'as [7QKP/B/M] said, & <b>louder</b>' },
  // A few more of every letter, so that codes with padding are among them.
  ...['A', 'B', 'C'].flatMap((letter) =>
    ['A', 'B', 'C'].map((badges) => ({ letter, parts: { badges }, pairs: [], words: '' })),
  ),
];
